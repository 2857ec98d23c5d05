package demo_test

import (
	"bytes"
	"fmt"
	"testing"

	"scarfwright/repair/demo"
	"scarfwright/repair/job"
)

func TestEveryDemoJobParsesClean(t *testing.T) {
	jobs := demo.Jobs()
	if len(jobs) != 6 {
		t.Fatalf("got %d demo jobs, want 6", len(jobs))
	}
	hashes := map[string]string{}
	for _, j := range jobs {
		d, err := job.Parse(j.File, j.Data)
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		h := job.Hash(d)
		if other, twice := hashes[h]; twice {
			t.Errorf("%s and %s have the same hash %s", j.File, other, h)
		}
		hashes[h] = j.File
	}
}

// Export -> import -> export gives the same bytes.
func TestExportImportExport(t *testing.T) {
	for _, j := range demo.Jobs() {
		d, err := job.Parse(j.File, j.Data)
		if err != nil {
			t.Fatal(err)
		}
		first, err := job.Marshal(d)
		if err != nil {
			t.Fatal(err)
		}
		again, err := job.Parse(j.File, first)
		if err != nil {
			t.Fatalf("%s: the export does not parse: %v\n%s", j.File, err, first)
		}
		second, err := job.Marshal(again)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(first, second) {
			t.Errorf("%s: got another export the second time\nfirst:\n%s\nsecond:\n%s", j.File, first, second)
		}
		if job.Hash(d) != job.Hash(again) {
			t.Errorf("%s: the hash changed on the way out and in", j.File)
		}
	}
}

// The price each case of the demo set was worked out at by hand: hours x rate +
// materials with markup + extras. It shows that the files hold all its numbers.
// (Independent computation, by hand; rounded there to 5.)
func TestQuotesAddUp(t *testing.T) {
	want := map[string]float64{
		"day-launch": 1895, "sloop": 3480, "rib-console": 1014, "trawler-yacht": 9390, "work-skiff": 1717,
	}
	for name, quote := range want {
		d, err := demo.Parse(name)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		hours := 0.0
		for _, h := range d.Crew.Hours {
			hours += h
		}
		got := hours*d.Crew.Rate + d.Shelf.Materials*(1+float64(d.Shelf.Markup))
		for _, x := range d.Shelf.Extras {
			got += x
		}
		if got < quote-5 || got > quote+5 {
			t.Errorf("%s: got %.0f, want %.0f within 5", name, got, quote)
		}
	}
}

func TestNoSuchDemo(t *testing.T) {
	if _, err := demo.Parse("submarine"); err == nil {
		t.Error("got a job that does not exist")
	}
}

func ExampleParse() {
	d, err := demo.Parse("day-launch")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: %d plies, dead area %.0f x %.0f mm\n", d.Job.Title,
		len(d.Laminate.Plies), d.Damage.Dead.Ellipse[0].MM(), d.Damage.Dead.Ellipse[1].MM())
	// Output: Ledge strike, port bottom, both faces in reach: 6 plies, dead area 300 x 200 mm
}

func BenchmarkParse(b *testing.B) {
	j := demo.Jobs()[0]
	for b.Loop() {
		if _, err := job.Parse(j.File, j.Data); err != nil {
			b.Fatal(err)
		}
	}
}
