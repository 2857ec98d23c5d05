package view

import (
	"fmt"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/present/drawing"
	"scarfwright/repair"
	"scarfwright/repair/curing"
	"scarfwright/repair/mixing"
)

// estimateWords stands at the foot of the heat charts.
const estimateWords = "Reckoned in one dimension at the middle of the repair, with a cure law fitted to the resin's data sheet. " +
	"An upper estimate: a small patch loses heat sideways too. Where a thermometer on the work reads otherwise, go by it."

// EstimateWords is what paper that is Told says once of its heat charts.
const EstimateWords = estimateWords

// Cures returns the chart of temperature and cure against time of every session,
// nil where none was followed.
func Cures(r repair.Result, room Room) []*drawing.Scene {
	if r.Curing == nil {
		return nil
	}
	var out []*drawing.Scene
	for _, s := range r.Curing.Sessions {
		c := CureChart{
			Paper: chartPaper(r, room, fmt.Sprintf("Heat and cure, %s", s.Name), estimateWords),
			Clock: s.Day > 0, Mixed: si.Hours(24*float64(max(s.Day-1, 0)) + s.Hour),
			Limits: []TempLimit{{over(s), s.Limit}}, Mark: TempAt{s.OwnAfter, s.Own},
		}
		for _, v := range s.Curves {
			t := TempCurve{Name: strings.Replace(v.Name, "behind it", "where it meets the "+behind(s), 1)}
			for i := range v.Time {
				t.Points = append(t.Points, TempAt{v.Time[i], v.Temp[i]})
			}
			c.Temps = append(c.Temps, t)
		}
		d := CureCurve{Name: "cure"}
		for i := range s.Degree.Time {
			d.Points = append(d.Points, CureAt{s.Degree.Time[i], s.Degree.Degree[i]})
		}
		c.Cures = []CureCurve{d}
		if s.RecoatTo > 0 {
			c.Windows = append(c.Windows, ChartWindow{"next session without sanding", s.RecoatFrom, s.RecoatTo})
		}
		c.Windows = append(c.Windows, ChartWindow{"sandable", s.Sand, 0})
		out = append(out, c.Scene())
	}
	return out
}

// Profile returns temperature through the stack at the peak of the session that
// gets hottest, nil where none was followed.
func Profile(r repair.Result, room Room) *drawing.Scene {
	if r.Curing == nil || len(r.Curing.Sessions) == 0 {
		return nil
	}
	s := r.Curing.Sessions[Hottest(r)]
	c := ProfileChart{
		Paper: chartPaper(r, room, "Through the thickness at the peak, "+s.Name, estimateWords),
		Faces: [2]string{"worked face", "air behind"}, Limits: []LayerLimit{{Name: over(s), Temp: s.Limit}},
	}
	for _, l := range s.Layers {
		kind := OldLayer
		switch {
		case l.New:
			kind = NewLayer
		case l.Name == curing.CoreName:
			kind = CoreLayer
		}
		c.Layers = append(c.Layers, ProfileLayer{l.Name, l.Thickness, kind})
	}
	v := ProfileCurve{Name: CureChart{}.when(s.OwnAfter.Hours()) + " after mixing"}
	for _, x := range s.Profile {
		v.Points = append(v.Points, TempDeep{x.Depth, x.Temp})
	}
	c.Profiles = []ProfileCurve{v}
	return c.Scene()
}

// PotLife returns the chart of working time against mass for the wall, nil where
// the resin's sheet was not fitted.
func PotLife(r repair.Result, room Room) *drawing.Scene {
	if r.Curing == nil || r.Mixing == nil {
		return nil
	}
	note := fmt.Sprintf("Fitted to the sheet's own figures, for %s, all of it as warm as the air.", r.Curing.Vessel)
	if r.Mixing.Catalysed {
		note += " " + mixing.PolyesterNote
	}
	c := PotChart{
		Paper:    chartPaper(r, room, "", note),
		Material: r.Mixing.Name, Criterion: "end of working time",
	}
	for _, l := range r.Curing.Pots {
		line := PotLine{Temp: l.At}
		for _, p := range l.Points {
			line.Points = append(line.Points, PotAt{Mass: p.Mass, Low: p.Low, Time: p.Likely, High: p.High, Beyond: p.Beyond})
		}
		c.Lines = append(c.Lines, line)
	}
	return c.Scene()
}

// over says what sets a session's limit.
func over(s curing.Session) string {
	return "over the " + behind(s)
}

// behind names what a session is laid against.
func behind(s curing.Session) string {
	what, _, _ := strings.Cut(s.What, ",")
	return what
}

// Hottest returns the number, from 0, of the session that gets hottest by its own
// heat; the sessions are there.
func Hottest(r repair.Result) int {
	at := 0
	for i, s := range r.Curing.Sessions {
		if s.Own > r.Curing.Sessions[at].Own {
			at = i
		}
	}
	return at
}

func chartPaper(r repair.Result, room Room, title, note string) Paper {
	p := Paper{Room: room, US: r.Job.Choices.System() == si.US, Title: title}
	if !room.Told {
		p.Held, p.Caution, p.Note = Held(r), r.Caution, note
	}
	return p
}
