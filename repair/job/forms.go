package job

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"scarfwright/physics/si"
)

// The three text forms a job file has beside quantities: a point, a ply, a range.

// UnmarshalText reads "-310 mm, 190 mm". The unit may be left off the first
// number when the second has it.
func (p *Point) UnmarshalText(text []byte) error {
	const want = `must be two lengths with a comma and a space between, such as "-310 mm, 190 mm"`
	x, y, ok := splitPoint(string(text))
	if !ok {
		return &formError{CodeText, fmt.Sprintf("%s; '%s' is not", want, shorten(string(text))), ""}
	}
	var err error
	if p.Y, err = si.Parse[si.Length](y); err != nil {
		return err
	}
	p.X, err = si.Parse[si.Length](borrowUnit(x, y))
	return err
}

// MarshalText writes the point so that UnmarshalText gives it back exactly.
func (p Point) MarshalText() ([]byte, error) {
	return joined(", ", p.X, p.Y)
}

// splitPoint parts at the one comma that cannot be a decimal comma: a space
// follows it, or no digit stands before it.
func splitPoint(text string) (x, y string, ok bool) {
	at := -1
	for i := range len(text) {
		if text[i] != ',' {
			continue
		}
		decimal := i > 0 && digit(text[i-1]) && i+1 < len(text) && digit(text[i+1])
		if decimal {
			continue
		}
		if at >= 0 {
			return "", "", false
		}
		at = i
	}
	if at < 0 {
		return "", "", false
	}
	x, y = strings.TrimSpace(text[:at]), strings.TrimSpace(text[at+1:])
	return x, y, x != "" && y != ""
}

func digit(b byte) bool { return b >= '0' && b <= '9' }

var (
	bareNumber = regexp.MustCompile(`^[+-]?[0-9][0-9.,]*( [0-9]+)?(/[0-9]+)?$`)
	unitAtEnd  = regexp.MustCompile(`^[+-]?[0-9][0-9.,/ ]*?\s*([\pL"'″′°µ]+)$`)
)

// borrowUnit gives a bare number the unit of the number beside it. A compound
// like "5 ft 6 in" lends none.
func borrowUnit(bare, with string) string {
	if !bareNumber.MatchString(bare) {
		return bare
	}
	if m := unitAtEnd.FindStringSubmatch(with); m != nil {
		return bare + " " + m[1]
	}
	return bare
}

// UnmarshalText reads "5.4 mm", "5 mm to 6 mm", "5 to 6 mm", "5.4 mm +- 0.5 mm"
// and "5.4 ± 0.5 mm".
func (r *Range) UnmarshalText(text []byte) error {
	t := strings.TrimSpace(string(text))
	if low, high, ok := strings.Cut(t, " to "); ok {
		low, high = strings.TrimSpace(low), strings.TrimSpace(high)
		var err error
		if r.High, err = si.Parse[si.Length](high); err != nil {
			return err
		}
		if r.Low, err = si.Parse[si.Length](borrowUnit(low, high)); err != nil {
			return err
		}
		if r.Low > r.High {
			return &formError{CodeRange, fmt.Sprintf("must name the low end first; '%s' does not", shorten(t)), ""}
		}
		return nil
	}
	for _, sign := range []string{"+-", "+/-", "±"} {
		middle, spread, ok := strings.Cut(t, sign)
		if !ok {
			continue
		}
		middle, spread = strings.TrimSpace(middle), strings.TrimSpace(spread)
		half, err := si.Parse[si.Length](spread)
		if err != nil {
			return err
		}
		mid, err := si.Parse[si.Length](borrowUnit(middle, spread))
		if err != nil {
			return err
		}
		if half < 0 {
			return &formError{CodeRange, "must have a spread of 0 or more", ""}
		}
		r.Low, r.High = mid-half, mid+half
		return nil
	}
	x, err := si.Parse[si.Length](t)
	if err != nil && rangeDash.MatchString(t) {
		return &formError{CodeText, fmt.Sprintf("cannot be '%s': a dash may be a minus sign", shorten(t)), "Write a range as '5 mm to 6 mm'."}
	}
	r.Low, r.High = x, x
	return err
}

var rangeDash = regexp.MustCompile(`^[0-9][^-–]*[-–]\s*[0-9]`)

// MarshalText writes the range so that UnmarshalText gives it back exactly.
func (r Range) MarshalText() ([]byte, error) {
	if r.Low == r.High {
		return r.Low.MarshalText()
	}
	return joined(" to ", r.Low, r.High)
}

// Given reports whether a range was set.
func (r Range) Given() bool { return r != Range{} }

// Mid returns the middle of the range.
func (r Range) Mid() si.Length { return (r.Low + r.High) / 2 }

var className = regexp.MustCompile(`^[a-z][a-z0-9.-]{0,39}$`)

// UnmarshalText reads "csm450", or with an angle in degrees "wr600@45".
func (p *PlyRef) UnmarshalText(text []byte) error {
	t := strings.TrimSpace(string(text))
	class, angle, turned := strings.Cut(t, "@")
	if !className.MatchString(class) {
		e := &formError{CodeText, fmt.Sprintf("must be a catalogue class such as csm450, or with an angle wr600@45; '%s' is not", shorten(t)), ""}
		if low := strings.ToLower(strings.ReplaceAll(class, " ", "")); low != class && className.MatchString(low) {
			e.hint = fmt.Sprintf("Did you mean '%s'?", low)
		}
		if repeated.MatchString(t) {
			e.hint = "Write a ply that comes twice on two lines."
		}
		return e
	}
	p.Class, p.Angle = class, 0
	if !turned {
		return nil
	}
	angle = strings.TrimSpace(angle)
	if bareAngle.MatchString(angle) {
		angle += " deg"
	}
	a, err := si.Parse[si.Angle](angle)
	if err != nil {
		return err
	}
	if a < -si.Degrees(180) || a > si.Degrees(180) {
		return &formError{CodeRange, fmt.Sprintf("must have an angle from -180 to 180 degrees; '%s' has not", shorten(t)), ""}
	}
	p.Angle = a
	return nil
}

var (
	bareAngle = regexp.MustCompile(`^[+-]?[0-9][0-9.,]*([eE][+-]?[0-9]+)?$`)
	repeated  = regexp.MustCompile(`^[0-9]+ ?[x×*]`)
)

// MarshalText writes the ply so that UnmarshalText gives it back exactly.
func (p PlyRef) MarshalText() ([]byte, error) {
	if !className.MatchString(p.Class) {
		return nil, fmt.Errorf("job: a ply cannot have the class %q", p.Class)
	}
	if p.Angle == 0 {
		return []byte(p.Class), nil
	}
	angle, err := p.Angle.MarshalText()
	if err != nil {
		return nil, err
	}
	degrees := strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(string(angle), "deg"), "°"))
	return []byte(p.Class + "@" + degrees), nil
}

// String is the text of a file.
func (p PlyRef) String() string { return text(p) }

// String is the text of a file.
func (p Point) String() string { return text(p) }

// String is the text of a file.
func (r Range) String() string { return text(r) }

func text(x interface{ MarshalText() ([]byte, error) }) string {
	b, err := x.MarshalText()
	if err != nil {
		return "?"
	}
	return string(b)
}

func joined(between string, a, b si.Length) ([]byte, error) {
	x, err1 := a.MarshalText()
	y, err2 := b.MarshalText()
	return []byte(string(x) + between + string(y)), errors.Join(err1, err2)
}
