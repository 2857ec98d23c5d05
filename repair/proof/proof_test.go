package proof_test

import (
	"math"
	"testing"

	"scarfwright/repair/proof"
)

func TestEveryCheckPasses(t *testing.T) {
	cs := proof.All()
	if len(cs) < 80 {
		t.Fatalf("only %d checks", len(cs))
	}
	for _, c := range cs {
		if !c.Pass() {
			t.Errorf("%s: %s: ours %.8g %s, expected %.8g within %s (%s) %s", c.Group, c.What, c.Ours, c.Unit, c.Expected, c.Tolerance(), c.Source, c.Err)
		}
		if c.Source == "" || c.Provenance == "" {
			t.Errorf("%s: %s: no source or provenance", c.Group, c.What)
		}
	}
}

func TestACheckCanFail(t *testing.T) {
	c := proof.Check{Expected: 1, Ours: 1.001, Rel: 1e-4}
	if c.Pass() {
		t.Error("0.1 % off passes at 0.01 %")
	}
	c = proof.Check{Expected: 1, Ours: math.NaN(), Abs: math.Inf(1)}
	if c.Pass() {
		t.Error("not a number passes")
	}
	c = proof.Check{Expected: 1, Ours: 1, Abs: 1, Err: "no such figure"}
	if c.Pass() {
		t.Error("a row that could not be computed passes")
	}
	if got := proof.Failed([]proof.Check{c}); len(got) != 1 {
		t.Errorf("Failed gives %d rows, want 1", len(got))
	}
}
