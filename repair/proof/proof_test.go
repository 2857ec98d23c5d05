package proof_test

import (
	"flag"
	"math"
	"os"
	"strings"
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

var update = flag.Bool("update", false, "rewrite docs/proof.md")

// TestTheCommittedTableIsCurrent keeps docs/proof.md what the command writes.
func TestTheCommittedTableIsCurrent(t *testing.T) {
	const path = "../../docs/proof.md"
	var b strings.Builder
	proof.WriteMarkdown(&b, proof.All())
	if *update {
		if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	got, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != b.String() {
		t.Error("docs/proof.md is not what the table gives now: run make golden and read the difference")
	}
}
