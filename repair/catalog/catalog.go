// Package catalog holds the materials: generic classes (no brands), each value
// with its low, typical and high figure, its source and the date it was entered.
//
// The data stand in data/*.yaml, one file per family, and are embedded. Nothing
// is computed here beyond a ply's thickness and resin weight,
//
//	t  = w [1/rf + (1-G)/(G rr)]      wr = w (1-G)/G
//
// w being the weight of the cloth, G its hand-laid glass content by mass, rf and
// rr the densities of glass and cured resin (physics/laminate).
//
// Limits: a class is a kind of product, not a product. What its figures are
// worth is told by their source: a document's key (docs/sources.md), "common
// practice, no source", "from memory", "independent computation", or "invented"
// for the demo's shelf. The user's own data sheet, typed from the tin, goes over
// a class as a new entry and leaves the class as it was.
//
//	cat := catalog.Default()
//	mat, err := cat.Cloth("csm450")
package catalog

import (
	"fmt"
	"slices"
	"strings"

	"scarfwright/repair/job"
)

// Catalogue is all materials known, in a fixed order. Its lookups are by class,
// or by the name of a user's sheet once overlaid.
type Catalogue struct {
	Version     string // short hash of the embedded data
	Cloths      []Cloth
	Resins      []Resin
	Catalysts   []Catalyst
	Gelcoats    []Gelcoat
	Fillers     []Filler
	Barriers    []Barrier
	Cores       []Core
	Consumables []Consumable
	Warnings    []string // what Overlay found odd in the user's sheets
}

// Cloth returns the reinforcement of that class; the error names the near ones.
func (c Catalogue) Cloth(class string) (Cloth, error) {
	return find("reinforcement", class, c.Cloths)
}

// Resin returns the laminating resin of that class.
func (c Catalogue) Resin(class string) (Resin, error) { return find("resin", class, c.Resins) }

// Catalyst returns the peroxide of that class.
func (c Catalogue) Catalyst(class string) (Catalyst, error) {
	return find("catalyst", class, c.Catalysts)
}

// Gelcoat returns the gelcoat or gelcoat paste of that class.
func (c Catalogue) Gelcoat(class string) (Gelcoat, error) {
	return find("gelcoat", class, c.Gelcoats)
}

// Filler returns the fairing compound or filler of that class.
func (c Catalogue) Filler(class string) (Filler, error) { return find("filler", class, c.Fillers) }

// Barrier returns the barrier coat of that class.
func (c Catalogue) Barrier(class string) (Barrier, error) {
	return find("barrier coat", class, c.Barriers)
}

// Core returns the core of that class.
func (c Catalogue) Core(class string) (Core, error) { return find("core", class, c.Cores) }

// Consumable returns the consumable of that class.
func (c Catalogue) Consumable(class string) (Consumable, error) {
	return find("consumable", class, c.Consumables)
}

// Packs returns the packs on sale of a class, smallest first; none for a class
// that is unknown or sold by the piece or the metre.
func (c Catalogue) Packs(class string) []job.Pack {
	for _, t := range c.twoParts() {
		if t.Class == class {
			return slices.Clone(t.Packs)
		}
	}
	if k, err := c.Catalyst(class); err == nil {
		return slices.Clone(k.Packs)
	}
	return nil
}

// twoParts lists whatever is mixed from two parts.
func (c Catalogue) twoParts() []TwoPart {
	var out []TwoPart
	for _, x := range c.Resins {
		out = append(out, x.TwoPart)
	}
	for _, x := range c.Gelcoats {
		out = append(out, x.TwoPart)
	}
	for _, x := range c.Fillers {
		out = append(out, x.TwoPart)
	}
	for _, x := range c.Barriers {
		out = append(out, x.TwoPart)
	}
	return out
}

// entry is anything looked up by class.
type entry interface{ class() string }

func find[T entry](kind, class string, from []T) (T, error) {
	classes := make([]string, len(from))
	for i, x := range from {
		if x.class() == class {
			return x, nil
		}
		classes[i] = x.class()
	}
	var none T
	hint := ""
	if near := nearest(class, classes); near != "" {
		hint = fmt.Sprintf(" did you mean %q?", near)
	}
	return none, fmt.Errorf("no %s called %q;%s known: %s", kind, class, hint, strings.Join(classes, ", "))
}

// nearest returns the word closest to what was typed, if it is close enough to
// be a slip: at most a third of its letters wrong.
func nearest(typed string, words []string) string {
	best, least := "", len(typed)/3+1
	for _, w := range words {
		if d := edits(strings.ToLower(typed), w); d < least {
			best, least = w, d
		}
	}
	return best
}

// edits counts the letters to insert, delete, change or swap with a neighbour to
// turn a into b: "csm405" is one slip from "csm450".
func edits(a, b string) int {
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			change := rows[i-1][j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			rows[i][j] = min(change, rows[i][j-1]+1, rows[i-1][j]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				rows[i][j] = min(rows[i][j], rows[i-2][j-2]+1)
			}
		}
	}
	return rows[len(a)][len(b)]
}
