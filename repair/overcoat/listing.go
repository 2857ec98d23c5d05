package overcoat

import (
	"fmt"
	"slices"
	"strings"
)

// Ask narrows the table. An empty field asks for all of them.
type Ask struct {
	On    Sort  // below
	Lay   Sort  // above
	State State // of the surface
}

// Parse reads the words of an ask as people type them: small or large letters,
// hyphens for spaces, "hard" for "hard, unsanded". An empty word asks for all.
// A word that is unknown is an error that lists what there is.
func Parse(on, lay, state string) (Ask, error) {
	var a Ask
	var err error
	if a.On, err = word(on, "material to lay on", sorts); err != nil {
		return Ask{}, err
	}
	if a.Lay, err = word(lay, "material to lay", Laid()); err != nil {
		return Ask{}, err
	}
	if a.State, err = word(state, "state of a surface", states); err != nil {
		return Ask{}, err
	}
	return a, nil
}

// word finds what was typed among the words there are.
func word[T ~string](typed, what string, among []T) (T, error) {
	plain := func(s string) string {
		return strings.Join(strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return r == ' ' || r == '-' || r == '_' || r == ',' }), " ")
	}
	if plain(typed) == "" {
		return "", nil
	}
	var list []string
	for _, w := range among {
		first, _, _ := strings.Cut(string(w), ",")
		if t := plain(typed); t == plain(string(w)) || t == plain(first) {
			return w, nil
		}
		list = append(list, fmt.Sprintf("%q", string(w)))
	}
	return "", fmt.Errorf("no %s %q; one of %s", what, typed, strings.Join(list, ", "))
}

// Laid returns the sorts that are laid on something: all but the old laminate.
func Laid() []Sort {
	return slices.DeleteFunc(Sorts(), func(s Sort) bool { return s == OldLaminate })
}

// Narrow returns the rows of the table that answer an ask, in the table's order. A
// row for anything is among them where it holds for something asked for, and is not
// where every pair asked for has a row of its own. It panics on a sort or a state
// that does not exist.
func Narrow(a Ask) []Pair {
	below, above, in := sorts, Laid(), states
	if a.On != "" {
		must(a.On)
		below = []Sort{a.On}
	}
	if a.Lay != "" {
		must(a.Lay)
		above = []Sort{a.Lay}
	}
	if a.State != "" {
		in = []State{a.State}
	}
	type key struct {
		below, above Sort
		state        State
	}
	asked := map[key]bool{}
	for _, s := range in {
		for _, b := range below {
			for _, u := range above {
				if p, ok := row(b, u, s); ok {
					asked[key{p.Below, p.Above, p.State}] = true
				}
			}
		}
	}
	return slices.DeleteFunc(Pairs(), func(p Pair) bool { return !asked[key{p.Below, p.Above, p.State}] })
}

// Unknown returns the states in which the table knows nothing of one material on
// another: not knowing is no leave to go on. Without both it returns none.
func Unknown(a Ask) []State {
	if a.On == "" || a.Lay == "" {
		return nil
	}
	return slices.DeleteFunc(States(), func(s State) bool {
		_, ok := Find(a.On, a.Lay, s)
		return ok || a.State != "" && a.State != s
	})
}

// Words says what an ask asks for: "gelcoat on epoxy (sanded)".
func (a Ask) Words() string {
	on, lay := a.On, a.Lay
	if on == "" {
		on = Anything
	}
	if lay == "" {
		lay = Anything
	}
	s := fmt.Sprintf("%s on %s", lay, on)
	if a.State != "" {
		s += " (" + string(a.State) + ")"
	}
	return s
}

// Legend says what the three verdicts mean.
const Legend = "A verdict is for laying on after the preparation named. ok: it holds. watch: go on, knowing this. stop: do not lay it. " +
	"A statement's own verdict is what that source alone would come to."

// NotKnown says in words where the table has nothing for an ask, empty where it has
// something for all of it.
func NotKnown(a Ask, pairs []Pair, missing []State) string {
	const no = " Not knowing is no leave to go on: ask the makers of both materials."
	if len(pairs) == 0 {
		return fmt.Sprintf("The table knows nothing of %s.", a.Words()) + no
	}
	if len(missing) == 0 {
		return ""
	}
	var list []string
	for _, s := range missing {
		list = append(list, string(s))
	}
	return fmt.Sprintf("The table knows nothing of %s while the surface is %s.", a.Words(), strings.Join(list, " or ")) + no
}

// Group is what the table says of one material below.
type Group struct {
	Below   Sort
	Entries []Entry
}

// Entry is what the table says in one breath of several materials to lay.
type Entry struct {
	Pair
	Lay []Sort // Pair.Above is the first of them
}

// Laid lists what is laid: "epoxy, epoxy filler, epoxy barrier".
func (e Entry) Laid() string {
	var out []string
	for _, s := range e.Lay {
		out = append(out, string(s))
	}
	return strings.Join(out, ", ")
}

// Disputed reports whether the sources part.
func (p Pair) Disputed() bool { return p.Disagreement != "" }

// Grouped gathers pairs by the material below, that for anything last, and pairs
// that differ in nothing but what is laid into one entry.
func Grouped(pairs []Pair) []Group {
	var out []Group
	for _, below := range append(Sorts(), Anything) {
		g := Group{Below: below}
		for _, p := range pairs {
			if p.Below != below {
				continue
			}
			i := slices.IndexFunc(g.Entries, func(e Entry) bool { return same(e.Pair, p) })
			if i < 0 {
				g.Entries = append(g.Entries, Entry{p, []Sort{p.Above}})
				continue
			}
			g.Entries[i].Lay = append(g.Entries[i].Lay, p.Above)
		}
		if len(g.Entries) > 0 {
			out = append(out, g)
		}
	}
	return out
}

// same reports whether two pairs differ in nothing but what is laid.
func same(p, q Pair) bool {
	return p.Below == q.Below && p.State == q.State && p.Verdict == q.Verdict && p.Preparation == q.Preparation &&
		p.Risk == q.Risk && p.Ruling == q.Ruling && p.Disagreement == q.Disagreement && slices.Equal(p.Statements, q.Statements)
}
