package si

import (
	"fmt"
	"strings"
)

// Error says why a text is not a quantity. Why is a whole sentence for the
// person who typed it, and says what to write instead.
type Error struct {
	Kind    string   // name of the kind that was wanted
	Text    string   // what was typed
	Why     string   // the sentence
	Allowed []string // units that would do
}

func (e *Error) Error() string { return e.Why }

func (k Kind) refuse(text, why string, args ...any) error {
	return &Error{Kind: k.Name(), Text: text, Why: fmt.Sprintf(why, args...), Allowed: k.Units()}
}

// quoted is a typed text fit for a message: in quotes, and not too long.
func quoted(text string) string {
	const most = 40
	if r := []rune(text); len(r) > most {
		text = string(r[:most]) + "..."
	}
	return `"` + strings.ToValidUTF8(text, "?") + `"`
}

// such is an example: "a length unit such as mm or in".
func (k Kind) such() string {
	if strings.Contains(k.Name(), " ") {
		return "a unit such as " + names[k].such
	}
	article := "a"
	if strings.ContainsRune("aeiou", rune(k.Name()[0])) {
		article = "an"
	}
	return fmt.Sprintf("%s %s unit such as %s", article, k.Name(), names[k].such)
}

func (k Kind) list() string {
	u := k.Units()
	if len(u) == 1 {
		return u[0]
	}
	return strings.Join(u[:len(u)-1], ", ") + " or " + u[len(u)-1]
}

const (
	bareOz  = `%s could be mass or fluid ounces`
	twoGals = `%s is not the same in the US and the UK; write `
)

// traps are units that people do write and that could be read two ways, or
// that are the unit of another quantity and need a word of help. Keys are in
// the spelling of spell, lower case; %s stands for what was typed.
var traps = map[Kind]map[string]string{
	KindMass: {
		"oz":    bareOz + `; write "oz (mass)" (28.35 g each) if it was weighed, or weigh in g`,
		"fl oz": `mass needs a mass unit such as g or lb; %s is volume`,
		"ton":   `%s is 907 kg in the US and 1016 kg in the UK; write t (1000 kg), kg or lb`,
		"tons":  `%s is 907 kg in the US and 1016 kg in the UK; write t (1000 kg), kg or lb`,
	},
	KindVolume: {
		"oz":    bareOz + `; write "US fl oz" (29.57 ml) or "UK fl oz" (28.41 ml) if it was poured, or measure in ml`,
		"fl oz": twoGals + `"US fl oz" (29.57 ml) or "UK fl oz" (28.41 ml)`,
		"gal":   twoGals + `"US gal" (3.785 l) or "UK gal" (4.546 l)`,
		"qt":    twoGals + `"US qt" (0.946 l) or "UK qt" (1.137 l)`,
		"pt":    twoGals + `"US pt" (0.473 l) or "UK pt" (0.568 l)`,
	},
	KindAreaDensity: {
		"oz": `%s is short for two weights nine times apart: mat is sold by oz/ft2 and cloth or roving by oz/yd2` +
			` (1.5 oz/ft2 is 458 g/m2, 1.5 oz/yd2 is 51 g/m2); which fabric is it? Write oz/ft2 or oz/yd2`,
		"g": `%s is mass; a fabric's weight is for an area, write g/m2`,
	},
	KindDensity: {
		"lb/gal": twoGals + `lb/US gal or lb/UK gal`,
		"oz/gal": twoGals + `lb/US gal or lb/UK gal`,
	},
	KindTemp:     {"°": `temperature needs °C or °F; %s alone does not say which`, "deg": `temperature needs °C or °F; %s alone does not say which`},
	KindTempDiff: {"°": `temperature difference needs K, °C or °F; %s alone does not say which`, "deg": `temperature difference needs K, °C or °F; %s alone does not say which`},
	KindPressure: {
		"mpa":    `%s is a thousandth of a pascal; write MPa for N/mm2`, // reached by "mPa" only
		"kg/cm2": `%s is mass on an area; write kgf/cm2 for pressure`,
	},
	KindTime: {"m": `time needs a time unit such as min or h; %s is length, write min for minutes`},
}

// refuseUnit says why a text that follows a number is not a unit of this kind.
func (k Kind) refuseUnit(text, typed, spelt string, of Kind, known bool) error {
	if trap, ok := traps[k][strings.ToLower(spelt)]; ok {
		return k.refuse(text, trap, quoted(typed))
	}
	if k == KindNumber {
		return k.refuse(text, "a plain number takes no unit; %s has one", quoted(text))
	}
	if !known { // a trap of another kind is a unit of that kind all the same
		for _, other := range []Kind{KindVolume, KindMass} {
			if _, known = traps[other][strings.ToLower(spelt)]; known {
				of = other
				break
			}
		}
	}
	if known {
		what := of.Name()
		if spelt == "oz" {
			what = "mass or volume"
		}
		return k.refuse(text, "%s needs %s; %s is %s", k.Name(), k.such(), quoted(typed), what)
	}
	return k.refuse(text, "%s has no unit %s: write %s", k.Name(), quoted(typed), k.list())
}
