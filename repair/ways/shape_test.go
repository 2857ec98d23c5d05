package ways

import (
	"fmt"
	"testing"
	"time"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/demo"
	"scarfwright/repair/job"
)

func TestShapes(t *testing.T) {
	for i, f := range []func(d *job.Description){
		func(d *job.Description) { d.Damage.At = job.Point{X: si.MM(40), Y: si.MM(10)} },
		func(d *job.Description) { d.Damage.Dead = &job.Outline{Rectangle: []si.Length{si.MM(300), si.MM(200)}} },
		func(d *job.Description) {
			d.Damage.Dead = &job.Outline{Rectangle: []si.Length{si.MM(300), si.MM(200)}}
			d.Damage.At = job.Point{X: si.MM(40), Y: si.MM(10)}
		},
		func(d *job.Description) {
			d.Damage.Seen = nil
			d.Damage.Dead = &job.Outline{Points: []job.Point{{X: si.MM(-150), Y: si.MM(-80)}, {X: si.MM(120), Y: si.MM(-100)}, {X: si.MM(150), Y: si.MM(20)}, {X: 0, Y: si.MM(100)}, {X: si.MM(-120), Y: si.MM(60)}}}
		},
	} {
		d, _ := demo.Parse("day-launch")
		f(&d)
		start := time.Now()
		r, err := Compare(d, catalog.Default(), nil)
		fmt.Println("==", i, time.Since(start), err, r.Reason)
		for _, w := range r.Ways {
			fmt.Printf("   %-44s %v %.3f %.3f %s\n", w.Name, w.Fits, w.Strength, w.Pressure, w.Why)
			if w.Ratio == 12 && i == 2 {
				for _, x := range w.Cases {
					fmt.Printf("%+v\n", x)
				}
			}
		}
	}
}
