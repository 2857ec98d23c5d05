package laminate_test

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

// degrees returns the angles in degrees, rounded off what radians add.
func degrees(s laminate.Stack) []float64 {
	out := []float64{}
	for _, a := range s.Angles() {
		out = append(out, math.Round(a.Degrees()*1e6)/1e6+0) // + 0: no minus nought
	}
	return out
}

const (
	tm     = "TM-1-1500 par. 5-7, read"
	ours   = "our ASCII spelling"
	milhdb = "MIL-HDBK-17 computer spelling, from memory"
)

func TestStackCode(t *testing.T) {
	for _, r := range []struct {
		code, printed string
		want          []float64
		origin        string
	}{
		{"[0]", "[0]", []float64{0}, tm},
		{"[0/90]s", "[0/90]s", []float64{0, 90, 90, 0}, tm},
		{"[0/90]S", "[0/90]s", []float64{0, 90, 90, 0}, tm},
		{"[0/90]T", "[0/90]", []float64{0, 90}, tm},
		{"[0/90/0]", "[0/90/0]", []float64{0, 90, 0}, tm},
		{"[0_2/90]", "[0_2/90]", []float64{0, 0, 90}, tm},
		{"[0/0/90]", "[0/0/90]", []float64{0, 0, 90}, tm},
		{"[+-45]", "[+-45]", []float64{45, -45}, tm + ": the upper sign is laid first"},
		{"[-+45]", "[-+45]", []float64{-45, 45}, tm + ": the upper sign is laid first"},
		{"[±45]s", "[+-45]s", []float64{45, -45, -45, 45}, tm},
		{"[∓45]", "[-+45]", []float64{-45, 45}, tm},
		{"[+/-45]", "[+-45]", []float64{45, -45}, ours},
		{"[45/-45]", "[45/-45]", []float64{45, -45}, tm},
		{"[+45/−45]", "[45/-45]", []float64{45, -45}, tm},
		{"[0/+-45/90]2s", "[0/+-45/90]2s",
			[]float64{0, 45, -45, 90, 0, 45, -45, 90, 90, -45, 45, 0, 90, -45, 45, 0}, tm},
		{"[0/90]_2s", "[0/90]2s", []float64{0, 90, 0, 90, 90, 0, 90, 0}, ours},
		{"[0/90]:2s", "[0/90]2s", []float64{0, 90, 0, 90, 90, 0, 90, 0}, milhdb},
		{"[0/90]2T", "[0/90]2", []float64{0, 90, 0, 90}, tm},
		{"[0/90]2", "[0/90]2", []float64{0, 90, 0, 90}, tm},
		{"[0/90bar]s", "[0/90bar]s", []float64{0, 90, 0}, tm + "; ASCII for the overbar ours"},
		{"[0/90bar_3]s", "[0/90bar_3]s", []float64{0, 90, 90, 90, 0}, tm + ": so many half plies on each side"},
		{`[0/45/\90]:s`, "[0/45/90bar]s", []float64{0, 45, 90, 45, 0}, milhdb},
		{"[90/0:2/45]:s", "[90/0_2/45]s", []float64{90, 0, 0, 45, 45, 0, 0, 90}, milhdb},
		{"[(0/90)2/45]", "[(0/90)2/45]", []float64{0, 90, 0, 90, 45}, tm},
		{"[(+-45)2]", "[(+-45)2]", []float64{45, -45, 45, -45}, tm},
		{"[(0/(30/60)2)2]", "[(0/(30/60)2)2]", []float64{0, 30, 60, 30, 60, 0, 30, 60, 30, 60}, tm},
		{"[30f/0]", "[30f/0]", []float64{30, 0}, tm + ": f or w marks a fabric, its warp at the angle"},
		{"[30w]", "[30f]", []float64{30}, tm},
		{"[(+-45)f/(0/90)f]", "[(+-45)f/(0/90)f]", []float64{45, 0}, ours + ", one ply each"},
		{"[(±45)f]2s", "[(+-45)f]2s", []float64{45, 45, 45, 45}, ours},
		{"[(90/0)f_2]", "[(90/0)f_2]", []float64{90, 90}, ours},
		{"[(45/-45)f]", "[(+-45)f]", []float64{45}, ours},
		{"[(30/-60)f/(0/90)fbar]s", "[(30/-60)f/(0/90)fbar]s", []float64{30, 0, 30}, ours},
		{"[(26.1/-63.9)f]", "[(26.1/-63.9)f]", []float64{26.1}, ours + "; 26.1 + 90 - 180 isn't -63.9 to the last digit"},
		{"[-90/-0]", "[90/0]", []float64{90, 0}, "a fibre has no front end"},
		{" [ 0° / ±45° ] 2 s ", "[0/+-45]2s",
			[]float64{0, 45, -45, 0, 45, -45, -45, 45, 0, -45, 45, 0}, ours + ": spaces and degree signs are passed over"},
		{"[22.50/000]", "[22.5/0]", []float64{22.5, 0}, ours},
	} {
		s, err := laminate.ParseStack(r.code)
		if err != nil {
			t.Errorf("%s [%s]: %v", r.code, r.origin, err)
			continue
		}
		if got := degrees(s); !reflect.DeepEqual(got, r.want) {
			t.Errorf("%s [%s]: got plies %v, want %v", r.code, r.origin, got, r.want)
		}
		if got := s.String(); got != r.printed {
			t.Errorf("%s: printed %s, want %s", r.code, got, r.printed)
		}
	}
}

func TestStackRefuses(t *testing.T) {
	for _, r := range []struct {
		code string
		at   int
		want string // part of the message
	}{
		{"", 1, `want "["`},
		{"0/90", 1, `want "["`},
		{"[", 2, "want an angle in degrees, found the end of the text"},
		{"[]", 2, "want an angle"},
		{"[0/90", 6, `want "/" or "]"`},
		{"[0//90]", 4, `found '/'`},
		{"[0/9x0]", 5, `found 'x'`},
		{"[0/135]", 4, "turn it by 180"},
		{"[0,5/90]", 3, "decimals take a point"},
		{"[0/90]q", 7, `found 'q' after the lay-up`},
		{"[0/90]s s", 9, "after the lay-up"},
		{"[0/90]0s", 7, "want a count from 1 to 500"},
		{"[0/90]ns", 7, "found 'n'"},
		{"[0_/90]", 3, "want a count"},
		{"[+-0]", 2, "the same direction"},
		{"[+-90]", 2, "the same direction"},
		{"[+-45_2]", 6, `"(+-45)2" for + - + -, "45_2/-45_2" for + + - -`},
		{"[+-45f]", 2, `"(+-45)f" for one woven ply, "(45f/-45f)" for two`},
		{"[+-45bar]s", 2, "the middle cuts only one"},
		{"[+--45]", 4, "(+-45)2"},
		{"[0/90bar]", 1, "isn't symmetric"},
		{"[0bar/90]s", 1, "list it last"},
		{"[0/90bar]2s", 1, "two ways"},
		{"[0/90bar_2]s", 1, "halve the count"},
		{"[(0/90bar)]s", 7, "part of a set"},
		{`[(0/\90)]s`, 5, "part of a set"},
		{"[0/(0/90)bar]s", 10, "a set can't be barred"},
		{"[(0/45)f]", 2, "90 degrees apart"},
		{"[(0)f]", 2, "90 degrees apart"},
		{"[(0/90/0)f]", 2, "90 degrees apart"},
		{"[((((((0))))))]", 6, "nested deeper than 4"},
		{"[(0_500)500]", 1, "more than 1000 plies"},
		{"[((((0_500)500)500)500)500]500s", 1, "more than 1000 plies"},
		{"[1.2.3]", 2, "is not an angle"},
		{"[0.00001]", 2, "at most 4 decimals"},
		{"[0/±é]", 5, `found 'é'`}, // counted in characters, not bytes
		{"[0/\xff]", 1, "UTF-8"},
		{"[" + strings.Repeat("0/", 300) + "0]", 1, "longer than 500"},
	} {
		s, err := laminate.ParseStack(r.code)
		var fault *laminate.StackError
		if !errors.As(err, &fault) {
			t.Errorf("%s: got %v and error %v, want a *StackError", r.code, s, err)
			continue
		}
		if fault.At != r.at || !strings.Contains(err.Error(), r.want) {
			t.Errorf("%s: got %q at %d, want %q at %d", r.code, err, fault.At, r.want, r.at)
		}
	}
}

// stackCode draws codes in all the spellings, right ones by construction.
var stackCode = rapid.Custom(func(t *rapid.T) string {
	pick := func(name string, from ...string) string { return rapid.SampledFrom(from).Draw(t, name) }
	number := func() string { return pick("angle", "0", "30", "45", "60", "90", "22.5", "0.1", "89.9999") }
	ply := func() string {
		return pick("sign", "", "+", "-", "−") + number() + pick("weave", "", "", "f", "w") + pick("count", "", "", "_2", ":3")
	}
	pair := func() string {
		return pick("pair", "+-", "-+", "±", "∓", "+/-") + pick("angle", "30", "45", "12.34")
	}
	woven := func() string {
		return pick("woven", "(0/90)", "(90/0)", "(+-45)", "(-+45)", "(30/-60)", "(0.1/-89.9)", "(26.1/-63.9)") + "f" + pick("count", "", "_2", "3")
	}
	var list func(depth int) string
	item := func(depth int) string {
		switch kind := rapid.IntRange(0, 5).Draw(t, "kind"); {
		case kind <= 2:
			return ply()
		case kind == 3:
			return pair()
		case kind == 4 || depth == 3:
			return woven()
		}
		return "(" + list(depth+1) + ")" + pick("count", "", "2", "_3")
	}
	list = func(depth int) string {
		items := make([]string, rapid.IntRange(1, 3).Draw(t, "items"))
		for i := range items {
			items[i] = item(depth)
		}
		return strings.Join(items, pick("slash", "/", " / "))
	}
	inside := list(0)
	switch rapid.IntRange(0, 2).Draw(t, "close") {
	case 0:
		return "[" + inside + "]" + pick("repeat", "", "2", "_3") + pick("total", "", "T")
	case 1:
		return "[" + inside + "/" + number() + "bar" + pick("count", "", "_3") + "]s"
	}
	return "[" + inside + "]" + pick("repeat", "", "2", "_3") + "s"
})

// checkRoundTrip holds for every Stack that can be read.
func checkRoundTrip(t rapid.TB, s laminate.Stack) {
	t.Helper()
	printed := s.String()
	again, err := laminate.ParseStack(printed)
	if err != nil {
		t.Fatalf("the printed code is refused: %v", err)
	}
	if !reflect.DeepEqual(again, s) {
		t.Fatalf("%s reads back as %#v, was %#v", printed, again, s)
	}
	if got := again.String(); got != printed {
		t.Fatalf("%s printed again is %s", printed, got)
	}
	for i := range len(printed) {
		if printed[i] >= utf8.RuneSelf {
			t.Fatalf("%s isn't ASCII", printed)
		}
	}
}

func TestStackPromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		code := stackCode.Draw(t, "code")
		s, err := laminate.ParseStack(code)
		if err != nil {
			if strings.Contains(err.Error(), "more than 1000 plies") {
				t.Skip("too many plies")
			}
			t.Fatalf("%s: %v", code, err)
		}
		checkRoundTrip(t, s)

		angles := s.Angles()
		if strings.HasSuffix(code, "s") {
			for i := range angles {
				if angles[i] != angles[len(angles)-1-i] {
					t.Fatalf("%s isn't symmetric: %v", code, degrees(s))
				}
			}
		}

		// The other side's clock turns every sign and keeps the order.
		m := s.Mirrored()
		checkRoundTrip(t, m)
		for i, a := range m.Angles() {
			want := -angles[i]
			if angles[i] == si.Degrees(90) {
				want = angles[i]
			}
			if a != want {
				t.Fatalf("%s mirrored is %s: ply %d at %v, want %v", code, m, i, a.Degrees(), want.Degrees())
			}
		}
		if back := m.Mirrored(); !reflect.DeepEqual(back.Angles(), angles) {
			t.Fatalf("%s mirrored twice is %s", code, back)
		}
	})
}

func FuzzParseStack(f *testing.F) {
	for _, code := range []string{"[0/90]s", "[0/+-45/90]2s", "[0/90bar_3]s", `[0/45/\90]:s`, "[(±45)f/30w]_2T", "[(0/(30/-60)2)3]", "[+--45]", "[0,5]"} {
		f.Add(code)
	}
	f.Fuzz(func(t *testing.T, code string) {
		s, err := laminate.ParseStack(code)
		if err != nil {
			var fault *laminate.StackError
			if !errors.As(err, &fault) || fault.At < 1 || fault.At > utf8.RuneCountInString(code)+1 {
				t.Fatalf("%q: the error names no place in the text: %v", code, err)
			}
			return
		}
		checkRoundTrip(t, s)
		if n := len(s.Angles()); n == 0 || n > 1000 {
			t.Fatalf("%q: %d plies", code, n)
		}
	})
}

func TestStackInJSON(t *testing.T) {
	in := `{"stack":"[0/+-45]2s"}`
	var v struct {
		Stack laminate.Stack `json:"stack"`
	}
	if err := json.Unmarshal([]byte(in), &v); err != nil {
		t.Fatal(err)
	}
	if out, err := json.Marshal(v); err != nil || string(out) != in {
		t.Errorf("got %s, %v; want %s", out, err, in)
	}
	if err := json.Unmarshal([]byte(`{"stack":"[0/x]"}`), &v); err == nil || !strings.Contains(err.Error(), "character 4") {
		t.Errorf("got %v, want an error that names the place", err)
	}
}

// What is printed with a small 2 below the line must not be taken for two degrees.
func TestLeadingZeroIsAsked(t *testing.T) {
	for _, text := range []string{"[02/90]s", "[0/902]s"} {
		if _, err := laminate.ParseStack(text); err == nil {
			t.Errorf("%s: read without asking", text)
		}
	}
}
