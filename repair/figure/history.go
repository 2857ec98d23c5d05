package figure

import (
	"fmt"
	"regexp"
	"strings"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

// mostStages keeps a pasted text from becoming a day's work.
const mostStages = 200

// stages splits "25C to 90C at 2,5K/min, hold 60 min" at the commas that are not
// decimal signs, at semicolons, and at "then".
func stages(text string) []string {
	text = strings.NewReplacer(";", ", ", " then ", ", ").Replace(text)
	var out []string
	from := 0
	digit := func(i int) bool { return i >= 0 && i < len(text) && text[i] >= '0' && text[i] <= '9' }
	for i := range len(text) {
		if text[i] == ',' && !(digit(i-1) && digit(i+1)) {
			out, from = append(out, text[from:i]), i+1
		}
	}
	out = append(out, text[from:])
	for i := range out {
		out[i] = strings.TrimSpace(out[i])
	}
	return out
}

var (
	rampText  = regexp.MustCompile(`^(?:(.+?)\s+)?to\s+(.+?)\s+(at|in)\s+(.+)$`)
	stageText = regexp.MustCompile(`^(.+?)\s*@\s*(.+?)(?:\s+to\s+(.+))?$`)
)

// programme reads an oven's programme: a start, then ramps and holds. The last
// temperature stays.
func (r *reader) programme(key string) []kinetics.Knot {
	t := r.text(key)
	if t == "" || !r.ok() {
		return nil
	}
	const how = `Write it like "25C to 90C at 2.5K/min, hold 60 min, to 130C in 16 min", or one temperature.`
	bad := func(part string, err error) []kinetics.Knot {
		why := fmt.Sprintf("%q can't be read.", part)
		if err != nil {
			why = fmt.Sprintf("%q: %v", part, err)
		}
		r.fail(key, why, how)
		return nil
	}
	parts := stages(t)
	if len(parts) > mostStages {
		r.fail(key, fmt.Sprintf("%d stages are more than %d.", len(parts), mostStages), "")
		return nil
	}
	var ks []kinetics.Knot
	now := func() kinetics.Knot { return ks[len(ks)-1] }
	for _, part := range parts {
		if hold, ok := strings.CutPrefix(part, "hold "); ok {
			d, err := parseIn[si.Time](hold, longTime)
			if err != nil || len(ks) == 0 {
				return bad(part, err)
			}
			ks = append(ks, kinetics.Knot{Time: now().Time + d, Temp: now().Temp})
			continue
		}
		m := rampText.FindStringSubmatch(part)
		if m == nil {
			T, err := parseIn[si.Temp](part, shopTemp)
			if err != nil || len(ks) > 0 {
				return bad(part, err)
			}
			ks = append(ks, kinetics.Knot{Temp: T})
			continue
		}
		if (m[1] != "") != (len(ks) == 0) {
			return bad(part, nil) // only the first stage says where it starts
		}
		if m[1] != "" {
			T, err := parseIn[si.Temp](m[1], shopTemp)
			if err != nil {
				return bad(part, err)
			}
			ks = append(ks, kinetics.Knot{Temp: T})
		}
		to, err := parseIn[si.Temp](m[2], shopTemp)
		if err != nil {
			return bad(part, err)
		}
		d, err := rampTime(m[3], m[4], float64(to.Sub(now().Temp)))
		if err != nil {
			return bad(part, err)
		}
		ks = append(ks, kinetics.Knot{Time: now().Time + d, Temp: to})
	}
	if end := now().Time; end > si.Time(longTime.high) {
		r.fail(key, "the programme is longer than 100 days.", "")
		return nil
	}
	return ks
}

// rampTime returns how long a ramp of dT kelvin takes, by its speed or as it says.
func rampTime(word, text string, dT float64) (si.Time, error) {
	if word == "in" {
		return parseIn[si.Time](text, longTime)
	}
	if text == "once" {
		return 0, nil
	}
	v, err := parseIn[si.HeatingRate](text, bounds{0, 100, true, "more than 0 and at most 100 K/s"})
	if err != nil {
		return 0, err
	}
	if dT < 0 {
		dT = -dT
	}
	return si.Time(dT / float64(v)), nil
}

// parseIn reads a quantity within bounds.
func parseIn[Q si.Quantity](text string, b bounds) (Q, error) {
	q, err := si.Parse[Q](text)
	if err != nil {
		return 0, err
	}
	if x := float64(q); x < b.low || x > b.high || b.openLow && x == b.low {
		return 0, fmt.Errorf("must be %s", b.words)
	}
	return q, nil
}

// history reads lengths of time at temperatures: "2h@10C, 3h@20C to 15C".
func (r *reader) history(key string) []kinetics.Knot {
	t := r.text(key)
	if t == "" || !r.ok() {
		return nil
	}
	parts := stages(t)
	if len(parts) > mostStages {
		r.fail(key, fmt.Sprintf("%d stages are more than %d.", len(parts), mostStages), "")
		return nil
	}
	var ks []kinetics.Knot
	end := si.Time(0)
	for _, part := range parts {
		m := stageText.FindStringSubmatch(part)
		err := fmt.Errorf("not a time @ a temperature")
		var d si.Time
		var from, to si.Temp
		if m != nil {
			if d, err = parseIn[si.Time](m[1], longTime); err == nil {
				from, err = parseIn[si.Temp](m[2], shopTemp)
			}
			if to = from; err == nil && m[3] != "" {
				to, err = parseIn[si.Temp](m[3], shopTemp)
			}
		}
		if err != nil {
			r.fail(key, fmt.Sprintf("%q: %v.", part, err), `Write it like "2h@10C, 3h@20C, 2h@15C"; "3h@20C to 12C" for a slope.`)
			return nil
		}
		ks = append(ks, kinetics.Knot{Time: end, Temp: from}, kinetics.Knot{Time: end + d, Temp: to})
		end += d
	}
	return ks
}
