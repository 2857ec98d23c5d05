package job_test

import (
	"bytes"
	"crypto/sha256"
	"encoding"
	"encoding/hex"
	"fmt"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/si"
	"scarfwright/repair/job"
)

// Property: Parse(Marshal(d)) equals d, bit for bit, for every description that
// Validate accepts; Marshal of that gives the same bytes, and the hash is theirs.
func TestMarshalAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := description(t)
		if problems := job.Validate(d); len(problems) > 0 {
			t.Fatalf("the generator made a bad description: %+v", problems)
		}
		first, err := job.Marshal(d)
		if err != nil {
			t.Fatal(err)
		}
		back, err := job.Parse("d", first)
		if err != nil {
			t.Fatalf("%v\n%s", err, first)
		}
		if !reflect.DeepEqual(back, d) {
			t.Fatalf("got\n%+v\nwant\n%+v\nfrom\n%s", back, d, first)
		}
		second, err := job.Marshal(back)
		if err != nil || !bytes.Equal(first, second) {
			t.Fatalf("got another file the second time (%v):\n%s", err, second)
		}
		sum := sha256.Sum256(first)
		if got, want := job.Hash(back), hex.EncodeToString(sum[:])[:12]; got != want {
			t.Fatalf("got hash %s, want %s", got, want)
		}
	})
}

// The hash is of the meaning: remarks, the order of names and the spelling of a
// unit leave it; a value changes it.
func TestHashIsOfTheMeaning(t *testing.T) {
	hash := func(text string) string {
		d, err := job.Parse("x", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		return job.Hash(d)
	}
	want := hash(good)
	for _, same := range []string{
		"# a remark\n" + good,
		spoil(t, "  long: 600 mm\n  short: 400 mm", "  short: 400 mm\n  long: 600 mm"),
		spoil(t, "  length: 6 m", "  length: 600 cm"),
		spoil(t, "  cloth:\n    - csm300\n    - csm450", "  cloth: [csm300, 'csm450']"),
	} {
		if got := hash(same); got != want {
			t.Errorf("got %s, want %s for\n%s", got, want, same)
		}
	}
	if got := hash(spoil(t, "  short: 400 mm", "  short: 401 mm")); got == want {
		t.Error("got the same hash for another span")
	}
}

func TestMarshalRefusesABadDescription(t *testing.T) {
	if b, err := job.Marshal(job.Description{}); err == nil {
		t.Errorf("got\n%s", b)
	}
}

// Every field of the format is drawn from its tags; then the rules between
// fields are mended, so that what comes out is a description Validate accepts.
func description(t *rapid.T) job.Description {
	var d job.Description
	fill(t, reflect.ValueOf(&d).Elem(), "")
	d.Format = job.Format
	if d.Boat.Waterline > d.Boat.Length {
		d.Boat.Waterline = 0
	}
	p := &d.Panel
	p.Short, p.Long = min(p.Short, p.Long), max(p.Short, p.Long)
	if p.Sagitta > p.Chord/2 {
		p.Sagitta = 0
	}
	for i := range p.Features {
		if p.Features[i].From == p.Features[i].To {
			p.Features[i].To.X++
		}
	}
	switch {
	case len(d.Laminate.Plies) > 0:
		d.Laminate.Thickness = job.Range{}
	case !d.Laminate.Thickness.Given():
		d.Laminate.Thickness = job.Range{Low: si.MM(5), High: si.MM(6)}
	}
	if d.Laminate.Core == nil {
		d.Laminate.Core = &job.Core{Class: "foam80", Thickness: si.MM(12)}
	}
	x := &d.Damage
	x.Deep = max(x.Deep, si.MM(1))
	x.Crosses = append(x.Crosses, "a frame")
	x.Seen, x.Dead = outline(t, "seen"), outline(t, "dead")
	if x.Seen == nil && x.Dead == nil {
		x.Seen = &job.Outline{Circle: si.MM(90)}
	}
	x.Marks = append(x.Marks, job.Mark{Kind: "ding", Long: si.MM(9), Wide: si.MM(8), Deep: si.MM(1)})
	if x.Depth == "gelcoat" {
		x.Kind = "scratch" // a hole only in the gelcoat contradicts itself
	}
	if len(x.Counts) > 0 {
		x.Frame, x.Wetted = max(x.Frame, si.M2(0.1)), max(x.Wetted, si.M2(1))
	}
	for i := range d.Site.Days {
		day := &d.Site.Days[i]
		day.Max = max(day.Min, day.Max)
		day.Dew = min(day.Dew, day.Max)
	}
	for i := range d.Shelf.Stock {
		d.Shelf.Stock[i].Mass, d.Shelf.Stock[i].Volume, d.Shelf.Stock[i].Area = si.Grams(7), 0, 0
	}
	for i := range d.Shelf.Packs {
		d.Shelf.Packs[i].Mass, d.Shelf.Packs[i].Volume, d.Shelf.Packs[i].Area = 0, si.ML(7), 0
	}
	for i := range d.Shelf.Sheets {
		s := &d.Shelf.Sheets[i]
		s.Name = fmt.Sprintf("%s %d", s.Name, i)
		s.DoseHigh = max(s.DoseLow, s.DoseHigh)
		s.HullMin = 0
		mendTimes(s)
	}
	return d
}

// mendTimes makes a drawn sheet's times shorten with warmth and pass their stages
// in order; what was drawn stays in the fractions.
func mendTimes(s *job.Sheet) {
	if len(s.PotLife) == 0 {
		s.Criterion = ""
	}
	if s.RecoatTo > 0 {
		s.RecoatFrom = min(s.RecoatFrom, si.Scale(s.RecoatTo, 0.5))
	}
	time := func(i int, drawn si.Time, base float64) si.Time {
		return si.Minutes(base * (3 - float64(i) + 0.9*drawn.Days()/60))
	}
	at := func(i int) si.Temp { return si.Celsius(float64(5 + 7*i)) }
	for i := range s.PotLife {
		s.PotLife[i].At, s.PotLife[i].Time = at(i), time(i, s.PotLife[i].Time, 5)
	}
	for k, rows := range [][]job.FilmTime{s.FilmGel, s.Sandable, s.Through} {
		base := [...]float64{10, 60, 600}[k] // min
		for i := range rows {
			rows[i].At, rows[i].Time = at(i), time(i, rows[i].Time, base)
		}
	}
	for i := range s.Peaks {
		p := &s.Peaks[i]
		p.At = at(i)
		p.Peak = max(p.Peak, si.Celsius(25))
		if p.After > 0 {
			p.After = time(i, p.After, 15)
		}
	}
}

func outline(t *rapid.T, name string) *job.Outline {
	length := rapid.Float64Range(0.01, 5)
	width := func(what string) si.Length { return si.Length(length.Draw(t, name+what)) }
	switch rapid.IntRange(0, 4).Draw(t, name) {
	case 0:
		return nil
	case 1:
		return &job.Outline{Ellipse: []si.Length{width("w"), width("h")}}
	case 2:
		return &job.Outline{Rectangle: []si.Length{width("w"), width("h")}}
	case 3:
		return &job.Outline{Circle: width("d"), Corner: si.MM(20)}
	}
	return &job.Outline{Points: []job.Point{{X: 0, Y: 0}, {X: width("x"), Y: 0}, {X: width("x"), Y: width("y")}}}
}

var texts = rapid.OneOf(
	rapid.SampledFrom([]string{"no", "yes", "true", "null", "~", "1234", "007", "1.5", "- a", "a: b", "a #b", "#", "", " lead", "trail ", "\"", "'", "\\", "a\nb", "a\n", "\ttab",
		"2026-01-01", "12 mm", "5 %", "%", "@x", "&x", "*x", "!x", "|", ">", "[x]", "{x}", "?", "? x", ":", "a:", "é", "€ 5", "°", "---", "...", "<<", "=", "0x1f", "1e3", ".nan", "12:30", "a, b"}),
	rapid.StringMatching(`[ -~äßµ°±]{0,30}`),
	rapid.StringMatching(`[a-z ]{1,20}`),
)

// fill draws a value for every field of a struct, from its tags.
func fill(t *rapid.T, v reflect.Value, at string) {
	for i := range v.NumField() {
		f := v.Type().Field(i)
		key, rest, _ := strings.Cut(f.Tag.Get("job"), ",")
		name := at + "." + key
		if rest != "required" && rapid.Bool().Draw(t, name+"?") {
			continue
		}
		draw(t, v.Field(i), f.Tag, name, rest == "required")
	}
}

func draw(t *rapid.T, v reflect.Value, tag reflect.StructTag, name string, must bool) {
	switch x := v.Addr().Interface().(type) {
	case *job.Point:
		coordinate := rapid.Float64Range(-10, 10)
		*x = job.Point{X: si.Length(coordinate.Draw(t, name+"x")), Y: si.Length(coordinate.Draw(t, name+"y"))}
		return
	case *job.PlyRef:
		*x = job.PlyRef{Class: rapid.SampledFrom([]string{"csm300", "wr600", "bx-450.2"}).Draw(t, name)}
		if rapid.Bool().Draw(t, name+"@") {
			x.Angle = si.Degrees(rapid.Float64Range(-180, 180).Draw(t, name+"a"))
		}
		return
	case *job.Range:
		low := rapid.Float64Range(0.0001, 0.1).Draw(t, name)
		*x = job.Range{Low: si.Length(low), High: si.Length(rapid.Float64Range(low, 0.1).Draw(t, name+"high"))}
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		fill(t, v.Elem(), name)
	case reflect.Struct:
		fill(t, v, name)
	case reflect.Slice:
		n := rapid.IntRange(0, 3).Draw(t, name+"#")
		if n == 0 {
			return
		}
		v.Set(reflect.MakeSlice(v.Type(), n, n))
		for i := range n {
			draw(t, v.Index(i), tag, fmt.Sprintf("%s[%d]", name, i), true)
		}
	case reflect.Map:
		m := map[string]float64{}
		for range rapid.IntRange(0, 3).Draw(t, name+"#") {
			key := strings.TrimSpace(strings.NewReplacer("\n", "", "\t", "").Replace(texts.Draw(t, name+"key")))
			if key != "" {
				m[key] = rapid.Float64Range(0, 9999).Draw(t, name)
			}
		}
		if len(m) > 0 {
			v.Set(reflect.ValueOf(m))
		}
	case reflect.String:
		switch one := tag.Get("one"); {
		case one != "":
			v.SetString(rapid.SampledFrom(strings.Split(one, "|")).Draw(t, name))
		case tag.Get("form") == "date":
			v.SetString("2025-04-30")
		default:
			v.SetString(texts.Draw(t, name))
			if must && v.String() == "" {
				v.SetString("x")
			}
		}
	case reflect.Int:
		v.SetInt(int64(rapid.IntRange(int(limit(t, v.Type(), tag.Get("min"))), min(100000, int(limit(t, v.Type(), tag.Get("max"))))).Draw(t, name)))
	case reflect.Float64:
		low, high := limit(t, v.Type(), tag.Get("min")), limit(t, v.Type(), tag.Get("max"))
		x := rapid.Float64Range(low, high).Draw(t, name)
		if strings.HasPrefix(tag.Get("min"), "over ") && x == low {
			x = high
		}
		v.SetFloat(x)
	default:
		t.Fatalf("nothing to draw for %v", v.Type())
	}
}

// limit reads a min or max tag, in the field's base unit.
func limit(t *rapid.T, typ reflect.Type, text string) float64 {
	text = strings.TrimPrefix(text, "over ")
	if text == "" {
		return 1 // "format" alone has no maximum
	}
	v := reflect.New(typ)
	if u, ok := v.Interface().(encoding.TextUnmarshaler); ok {
		if err := u.UnmarshalText([]byte(text)); err != nil {
			t.Fatal(err)
		}
		return v.Elem().Float()
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// A field that stands for something else than zero when left out may not be
// given as zero: it would be taken for left out.
func TestZeroIsNeverTakenForADefault(t *testing.T) {
	checked := 0
	other := regexp.MustCompile(`(?:; |^)([^;]*) if left out`)
	var walk func(reflect.Type)
	walk = func(typ reflect.Type) {
		for i := range typ.NumField() {
			f := typ.Field(i)
			inner := f.Type
			for inner.Kind() == reflect.Slice || inner.Kind() == reflect.Pointer {
				inner = inner.Elem()
			}
			if inner.Kind() == reflect.Struct && inner.Name() != "Range" && inner.Name() != "Point" && inner.Name() != "PlyRef" {
				walk(inner)
			}
			m := other.FindStringSubmatch(f.Tag.Get("doc"))
			if m == nil || f.Type.Kind() != reflect.Float64 && f.Type.Kind() != reflect.Int || strings.Contains(m[1], "none") {
				continue
			}
			checked++
			low := f.Tag.Get("min")
			v := reflect.New(f.Type)
			if u, ok := v.Interface().(encoding.TextUnmarshaler); ok && !strings.HasPrefix(low, "over ") {
				if err := u.UnmarshalText([]byte(low)); err != nil || v.Elem().Float() <= 0 {
					t.Errorf("%s: %q lets a zero in", f.Name, low)
				}
			}
			if low == "" || low == "0" {
				t.Errorf("%s: %q lets a zero in", f.Name, low)
			}
		}
	}
	walk(reflect.TypeFor[job.Description]())
	if checked < 8 {
		t.Errorf("looked at %d fields only", checked)
	}
}
