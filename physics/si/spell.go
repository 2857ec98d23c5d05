package si

import "strings"

// Spellings: from what people type to a unit of the tables in units.go.

// words are other ways to write one word of a unit, plurals included.
var words = func() map[string]string {
	m := map[string]string{}
	for word, list := range map[string]string{
		"m": "metre metres meter meters", "mm": "millimetre millimetres millimeter millimeters",
		"cm": "centimetre centimetres centimeter centimeters",
		"um": "micron microns micrometre micrometres micrometer micrometers",
		"in": "inch inches ins", "ft": "foot feet", "yd": "yard yards yds", "mil": "mils thou",
		"g": "gram grams gramme grammes gm gms", "kg": "kilogram kilograms kilo kilos kgs kgm",
		"mg": "milligram milligrams", "t": "tonne tonnes", "lb": "lbs pound pounds", "oz": "ounce ounces ozs",
		"mass": "weight", "av": "avoirdupois", "l": "litre litres liter liters ltr ltrs",
		"ml": "millilitre millilitres milliliter milliliters mls", "cl": "centilitre centilitres centiliter centiliters",
		"fl oz": "floz", "fl": "fluid", "gal": "gallon gallons gals", "pt": "pint pints pts", "qt": "quart quarts qts",
		"uk": "imp imperial", "s": "sec secs second seconds", "min": "mins minute minutes", "h": "hr hrs hour hours",
		"d": "day days", "wk": "wks week weeks", "deg": "degs degree degrees", "rad": "rads radian radians",
		"c": "celsius centigrade", "f": "fahrenheit", "k": "kelvin kelvins", "pa": "pascal pascals",
		"n": "newton newtons", "w": "watt watts", "j": "joule joules", "kn": "knot knots kt kts",
		"%": "percent pct",
	} {
		for _, other := range strings.Fields(list) {
			m[other] = word
		}
	}
	return m
}()

// spellings has for each kind the units by spelling: with its spaces, and
// without any.
var spellings = func() (all [kinds]lexicon) {
	for k := range units {
		for i, u := range units[k] {
			for _, s := range append([]string{u.symbol}, u.also...) {
				all[k].add(spell(s), i)
				all[k].add(strings.ReplaceAll(spell(s), " ", ""), i)
			}
		}
	}
	return all
}()

// lexicon finds a unit as typed, and failing that without regard to case.
type lexicon struct{ exact, folded map[string]int }

func (l *lexicon) add(key string, i int) {
	if l.exact == nil {
		l.exact, l.folded = map[string]int{}, map[string]int{}
	}
	fold := strings.ToLower(key)
	for _, m := range []struct {
		of  map[string]int
		key string
	}{{l.exact, key}, {l.folded, fold}} {
		if old, ok := m.of[m.key]; ok && old != i {
			panic("si: two units spelt " + m.key)
		}
		m.of[m.key] = i
	}
}

// caseMatters are spellings that are another unit in the other case: a
// megagram is a tonne, a millipascal a billionth of a megapascal.
var caseMatters = map[string]bool{"Mg": true, "mPa": true, "mJ": true, "mN/m2": true, "Mbar": true}

var marks = strings.NewReplacer(
	"²", "2", "³", "3", "^2", "2", "^3", "3",
	"µ", "u", "μ", "u", "º", "°", "˚", "°", "℃", "°C", "℉", "°F", // both mu's: the sign and the Greek letter
	"′", "'", "’", "'", "‘", "'", "″", `"`, "”", `"`, "“", `"`, "''", `"`,
	"U.S.", "US", "U.K.", "UK", "per cent", "percent",
	"/", " / ", "·", " ", "⋅", " ", "*", " ", "(", " ", ")", " ", ".", " ",
	"\u00a0", " ", "\u2009", " ", "\u202f", " ",
)

// spell brings a unit to the one spelling the tables are keyed by: words in
// their short form, parted by one space, slashes tight. Spaces stay, or "m m"
// would be read as millimetres.
func spell(unit string) string {
	tokens := strings.Fields(marks.Replace(unit))
	for i, t := range tokens {
		fold := strings.ToLower(t)
		if w, ok := words[fold]; ok {
			tokens[i] = w
		}
		if fold == "per" {
			tokens[i] = "/"
		}
	}
	var out []string
	for i := 0; i < len(tokens); i++ {
		power := map[string]string{"sq": "2", "square": "2", "cu": "3", "cubic": "3"}[strings.ToLower(tokens[i])]
		if power != "" && i+1 < len(tokens) {
			i++
			out = append(out, tokens[i]+power)
			continue
		}
		out = append(out, tokens[i])
	}
	s := strings.ReplaceAll(strings.Join(out, " "), " / ", "/")
	return strings.ReplaceAll(s, "° ", "°")
}

// find returns the unit of this kind with a spelling, if there is one.
func (k Kind) find(spelt string, fold bool) (unit, bool) {
	m := spellings[k].exact
	if fold {
		if caseMatters[spelt] {
			return unit{}, false
		}
		m, spelt = spellings[k].folded, strings.ToLower(spelt)
	}
	i, ok := m[spelt]
	if !ok {
		return unit{}, false
	}
	return units[k][i], true
}

// lookup finds what a spelling is: a unit of kind k, or failing that a unit of
// another kind. As typed goes before any-case, so that "kN" is never a knot.
func (k Kind) lookup(spelt string) (u unit, of Kind, ok bool) {
	for _, fold := range []bool{false, true} {
		if u, ok := k.find(spelt, fold); ok {
			return u, k, true
		}
		for _, other := range Kinds() {
			if u, ok := other.find(spelt, fold); ok {
				return u, other, true
			}
		}
	}
	return unit{}, 0, false
}
