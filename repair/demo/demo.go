// Package demo holds six invented jobs, as files a new user can copy. Between
// them they use every part of the job file: both faces in reach (1), one face and
// a tank behind (2), a sandwich in summer heat (3), doses too small to weigh (4),
// blisters counted in frames (5), a commercial boat in winter (6).
//
// No boat, yard, event or price here is real.
//
//	d, err := demo.Parse("day-launch")
package demo

import (
	"embed"
	"fmt"
	"io/fs"
	"strings"

	"scarfwright/repair/job"
)

//go:embed *.yaml
var files embed.FS

// Job is one demo job.
type Job struct {
	Name string // "day-launch"
	File string // "01-day-launch.yaml"
	Data []byte // the file; yours to change
}

// Jobs returns the demo jobs in the order of their numbers.
func Jobs() []Job {
	names, err := fs.Glob(files, "*.yaml") // sorted
	if err != nil {
		panic(err) // the pattern is ours
	}
	var out []Job
	for _, file := range names {
		data, err := files.ReadFile(file)
		if err != nil {
			panic(err) // it was listed a line ago
		}
		_, name, _ := strings.Cut(strings.TrimSuffix(file, ".yaml"), "-")
		out = append(out, Job{Name: name, File: file, Data: data})
	}
	return out
}

// Parse reads a demo job by its name, with or without number and ".yaml".
func Parse(name string) (job.Description, error) {
	var names []string
	for _, j := range Jobs() {
		if name == j.Name || name == j.File || name == strings.TrimSuffix(j.File, ".yaml") {
			return job.Parse(j.File, j.Data)
		}
		names = append(names, j.Name)
	}
	return job.Description{}, fmt.Errorf("there is no demo job %q; the demo jobs are: %s", name, strings.Join(names, ", "))
}
