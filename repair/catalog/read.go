package catalog

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"sync"

	"github.com/goccy/go-yaml"

	"scarfwright/physics/si"
)

//go:embed data/*.yaml
var data embed.FS

// once reads the embedded data a single time; the copies handed out share its
// slices, which nobody here writes to (Overlay copies first).
var once = sync.OnceValue(func() Catalogue {
	c, err := read(data.ReadFile)
	if err != nil {
		panic("catalog: embedded data: " + err.Error())
	}
	return c
})

// Default returns the catalogue of the embedded data.
func Default() Catalogue { return once().clone() }

func (c Catalogue) clone() Catalogue {
	c.Cloths, c.Resins = slices.Clone(c.Cloths), slices.Clone(c.Resins)
	c.Catalysts, c.Gelcoats = slices.Clone(c.Catalysts), slices.Clone(c.Gelcoats)
	c.Fillers, c.Barriers = slices.Clone(c.Fillers), slices.Clone(c.Barriers)
	c.Cores, c.Consumables = slices.Clone(c.Cores), slices.Clone(c.Consumables)
	c.Warnings = slices.Clone(c.Warnings)
	return c
}

// The files, one per family. An entry's date is the file's unless its value says otherwise.
type (
	reinforcementFile struct {
		Date     string
		Families []Family
		Cloths   []struct {
			Class, Name string
			Kind        Kind
			Areal       si.AreaDensity
			Width       Value[si.Length]
			Price       Value[float64]
		}
	}
	resinFile struct {
		Date      string
		Catalysts []Catalyst
		Resins    []Resin
	}
	gelcoatFile struct {
		Date     string
		Gelcoats []Gelcoat
	}
	fillerFile struct {
		Date     string
		Fillers  []Filler
		Barriers []Barrier
	}
	coreFile struct {
		Date  string
		Cores []Core
	}
	consumablesFile struct {
		Date        string
		Consumables []Consumable
	}
)

// read builds the catalogue from its files. Unknown and repeated keys, units
// that do not fit, values without a source: each is an error with its line.
func read(file func(string) ([]byte, error)) (Catalogue, error) {
	var (
		cloth    reinforcementFile
		resin    resinFile
		gel      gelcoatFile
		fill     fillerFile
		core     coreFile
		used     consumablesFile
		contents = sha256.New()
	)
	for _, f := range []struct {
		name string
		into any
	}{
		{"reinforcement", &cloth}, {"resin", &resin}, {"gelcoat", &gel},
		{"filler", &fill}, {"core", &core}, {"consumables", &used},
	} {
		text, err := file("data/" + f.name + ".yaml")
		if err != nil {
			return Catalogue{}, err
		}
		contents.Write(text)
		if err := decode(text, f.into); err != nil {
			return Catalogue{}, fmt.Errorf("%s.yaml: %w", f.name, err)
		}
	}
	c := Catalogue{
		Version: hex.EncodeToString(contents.Sum(nil))[:8],
		Resins:  resin.Resins, Catalysts: resin.Catalysts, Gelcoats: gel.Gelcoats,
		Fillers: fill.Fillers, Barriers: fill.Barriers, Cores: core.Cores, Consumables: used.Consumables,
	}
	families := map[Kind]Family{}
	for _, f := range cloth.Families {
		families[f.Kind] = f
	}
	for _, x := range cloth.Cloths {
		f, ok := families[x.Kind]
		if !ok {
			return Catalogue{}, fmt.Errorf("reinforcement.yaml: %s: no family %q", x.Class, x.Kind)
		}
		c.Cloths = append(c.Cloths, Cloth{
			Class: x.Class, Name: x.Name, Areal: x.Areal, Family: f,
			Roll: x.Width, Cost: x.Price, Width: x.Width.Typical, Price: x.Price.Typical,
		})
	}
	return c, c.settle()
}

// settle fills what is derived, and checks every entry.
func (c *Catalogue) settle() error {
	for i := range c.Resins {
		c.Resins[i].settle()
	}
	for i := range c.Gelcoats {
		c.Gelcoats[i].settle()
	}
	for i := range c.Fillers {
		c.Fillers[i].settle()
	}
	for i := range c.Barriers {
		c.Barriers[i].settle()
	}
	for i := range c.Catalysts {
		for j := range c.Catalysts[i].Packs {
			c.Catalysts[i].Packs[j].Class = c.Catalysts[i].Class
		}
	}
	for i := range c.Cores {
		c.Cores[i].Price = c.Cores[i].Cost.Typical
	}
	for i, u := range c.Consumables {
		c.Consumables[i].Price = u.Cost.Typical
		if !slices.Contains(perWhat, u.Per) {
			return fmt.Errorf("%s: counted per %q; known: %q", u.Class, u.Per, perWhat)
		}
	}
	seen := map[string]bool{}
	for _, class := range c.Classes() {
		if seen[class] {
			return fmt.Errorf("class %q stands twice", class)
		}
		seen[class] = true
	}
	for _, t := range c.twoParts() {
		if !slices.Equal(t.PotLife.Cells, inOrder(t.PotLife.Cells)) {
			return fmt.Errorf("%s: pot life: list the cells by temperature, then by dose", t.Class)
		}
		for _, f := range []FilmTable{t.FilmGel, t.FilmSandable, t.Through} {
			if !slices.Equal(f.pots(), inOrder(f.pots())) {
				return fmt.Errorf("%s: film times: list the cells by temperature, then by dose", t.Class)
			}
		}
		if err := t.check(); err != nil {
			return err
		}
	}
	return nil
}

var isoDate = regexp.MustCompile(`^\d{4}-\d{2}-\d{2}$`)

// decode reads one file strictly and gives each value the file's date.
func decode(text []byte, into any) error {
	dec := yaml.NewDecoder(bytes.NewReader(text), yaml.Strict())
	if err := dec.Decode(into); err != nil {
		return err
	}
	date := reflect.ValueOf(into).Elem().FieldByName("Date").String()
	var err error
	visit(reflect.ValueOf(into), "", func(name string, v stated, set func(Origin)) {
		o := v.origin()
		if o.Source == "" {
			return // not stated
		}
		if o.Date == "" {
			o.Date = date
			set(o)
		}
		if !isoDate.MatchString(o.Date) && err == nil {
			err = fmt.Errorf("%s: date %q is not year-month-day", name, o.Date)
		}
	})
	return err
}
