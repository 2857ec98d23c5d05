package working

import (
	"math"
	"strings"
	"testing"
)

func TestBook(t *testing.T) {
	var b Book
	b.Section("scarf")
	b.Given("R", "ratio", 12, "", "chosen")
	b.Given("sigma_u", "strength", 85, "MPa", "from memory")
	b.Given("tau_a", "bond", 7, "MPa", "BS4994-1987: lap shear")
	// The handbook's figures (row 31, 32): 0.08276, 12.06.
	if v := b.Work("tau", "mean shear", "sigma_u*R/(1 + R^2)", "MPa", "closed form"); math.Abs(v-85*0.08276) > 1e-3 {
		t.Errorf("tau = %v", v)
	}
	b.Work("k", "strengths", "sigma_u/tau_a", "", "arithmetic")
	if v := b.Work("R_f", "ratio needed", "(k + sqrt(k^2 - 4))/2", "", "closed form"); math.Abs(v-12.06) > 0.005 {
		t.Errorf("R_f = %v", v)
	}
	if b.Err() != nil {
		t.Fatal(b.Err())
	}
	if e := b.Entries[3]; e.Numbers != "85 × 12 / (1 + 12^2)" || e.ID != "L4" || e.Section != "scarf" {
		t.Errorf("%+v", e)
	}
	if o := b.Orphans(); len(o) != 0 {
		t.Errorf("orphans %v", o)
	}
	b.Given("idle", "nothing uses it", 1, "", "")
	if o := b.Orphans(); len(o) != 1 || o[0] != "idle" {
		t.Errorf("orphans %v, want idle", o)
	}
}

// The order of operations, against Go's own arithmetic.
func TestArithmetic(t *testing.T) {
	var b Book
	b.Given("x", "", -3, "", "")
	b.Given("y", "", 2.5, "", "")
	x, y := -3.0, 2.5
	for i, c := range []struct {
		formula string
		want    float64
	}{
		{"1 + 2*3", 7}, {"-2^2", -4}, {"2^3^2", 512}, {"(1 + 2)*3", 9}, {"7 - 4 - 2", 1}, {"12/4/3", 1},
		{"x^2 - y", x*x - y}, {"-x*y", -x * y}, {"abs(x)", 3}, {"min(x, y, 0)", -3}, {"max(x, y, 0)", 2.5},
		{"sqrt(y*10)", 5}, {"2*pi", 6.28318}, {"x/y + y/x", x/y + y/x}, {"((x))", x}, {"2^-1", 0.5},
	} {
		if got := b.Work(string(rune('a'+i)), "", c.formula, "", ""); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s = %v, want %v (%v)", c.formula, got, c.want, b.Err())
		}
	}
}

func TestWrongBooks(t *testing.T) {
	for formula, want := range map[string]string{
		"q*2": "not defined", "1 +": "too soon", "(1 + 2": "not closed", "1 2": "cannot be read", "1/0": "no number",
		"sqrt(0 - 1)": "no number", "sin(1)": "not known", "": "too soon", "a$": "cannot be read", "#": "not understood", "1..2": "invalid",
		"sqrt(1, 2)": "not known",
	} {
		var b Book
		b.Given("a", "", 1, "", "")
		b.Work("x", "", formula, "", "")
		if b.Err() == nil || !strings.Contains(b.Err().Error(), want) {
			t.Errorf("%q: %v, want %q", formula, b.Err(), want)
		}
	}
	var b Book
	b.Given("a", "", 1, "", "")
	b.Given("a", "", 1, "", "")
	if b.Err() == nil {
		t.Error("a symbol defined twice passes")
	}
	var c Book
	if c.Given("1a", "", 1, "", ""); c.Err() == nil {
		t.Error("1a passes for a symbol")
	}
}

func FuzzFormula(f *testing.F) {
	for _, s := range []string{"a + b*(2 - 1)^2", "sqrt(a)/min(a,b)", "((((", "-^", "1e5", "max(", "a b", "…"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, formula string) {
		var b Book
		b.Given("a", "", 1.5, "", "")
		b.Given("b", "", -2, "", "")
		v := b.Work("x", "", formula, "", "")
		if b.Err() == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
			t.Errorf("%q gives %v without an error", formula, v)
		}
		if b.Err() == nil { // the numbers put in give the same, read as a formula of their own
			again := strings.NewReplacer("×", "*").Replace(b.Entries[2].Numbers)
			var c Book
			if w := c.Work("x", "", again, "", ""); c.Err() != nil || math.Abs(w-v) > 1e-9*math.Abs(v) {
				t.Errorf("%q: %v; its numbers %q: %v, %v", formula, v, again, w, c.Err())
			}
		}
	})
}
