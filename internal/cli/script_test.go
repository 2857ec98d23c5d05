package cli_test

import (
	"encoding/json"
	"flag"
	"maps"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"scarfwright/internal/cli"
	"scarfwright/repair/demo"
)

// update rewrites the expected output inside the scripts: make golden.
var update = flag.Bool("update", false, "rewrite the golden output in testdata/script")

// The scripts run whole command lines in this process, with a clock that stands
// still. Beside the usual commands they have
//
//	run STATUS ARG...     runs a command line and demands its exit status
//	number PATH LOW HIGH  demands a number in the JSON on stdout: design.taper_m, working.0.value
//	keys PATH KEY...      demands exactly these keys of an object; . is the whole
//	copydemo NAME FILE    writes a demo job to a file
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script", UpdateScripts: *update, RequireUniqueNames: true,
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"run": run, "number": number, "keys": keys, "copydemo": copyDemo,
		},
	})
}

func run(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) == 0 {
		ts.Fatalf("usage: run STATUS ARG...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	p := cli.Program{Out: ts.Stdout(), Err: ts.Stderr(), Now: func() time.Time { return time.Date(2026, 5, 4, 8, 0, 0, 0, time.UTC) }}
	if got := p.Run(args[1:]); got != want {
		ts.Fatalf("scarfwright %s: exit status %d, want %d", strings.Join(args[1:], " "), got, want)
	}
}

// at walks a dotted path into the JSON last printed.
func at(ts *testscript.TestScript, path string) any {
	var v any
	ts.Check(json.Unmarshal([]byte(ts.ReadFile("stdout")), &v))
	for _, step := range strings.FieldsFunc(path, func(r rune) bool { return r == '.' }) {
		switch x := v.(type) {
		case map[string]any:
			v = x[step]
		case []any:
			i, err := strconv.Atoi(step)
			if err != nil || i >= len(x) {
				ts.Fatalf("%s: no item %s of %d", path, step, len(x))
			}
			v = x[i]
		default:
			ts.Fatalf("%s: nothing below %v", path, v)
		}
	}
	return v
}

func number(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: number PATH LOW HIGH")
	}
	low, err1 := strconv.ParseFloat(args[1], 64)
	high, err2 := strconv.ParseFloat(args[2], 64)
	x, ok := at(ts, args[0]).(float64)
	if err1 != nil || err2 != nil || !ok || x < low || x > high {
		ts.Fatalf("%s is %v, want a number from %s to %s", args[0], at(ts, args[0]), args[1], args[2])
	}
}

func keys(ts *testscript.TestScript, neg bool, args []string) {
	m, ok := at(ts, args[0]).(map[string]any)
	if !ok {
		ts.Fatalf("%s is not an object", args[0])
	}
	got, want := slices.Sorted(maps.Keys(m)), slices.Sorted(slices.Values(args[1:]))
	if neg || !slices.Equal(got, want) {
		ts.Fatalf("%s has keys %v, want %v", args[0], got, want)
	}
}

func copyDemo(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: copydemo NAME FILE")
	}
	for _, j := range demo.Jobs() {
		if j.Name == args[0] {
			ts.Check(os.WriteFile(ts.MkAbs(args[1]), j.Data, 0o644))
			return
		}
	}
	ts.Fatalf("no demo job %s", args[0])
}
