package web

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"
	"sync"

	"scarfwright/repair/demo"
	"scarfwright/repair/job"
)

// entry is one job as it lies somewhere: a name for its address, and its text.
type entry struct {
	Name  string
	File  string // name of its file
	Where where
	Data  []byte
}

type where string

const (
	inFolder where = "in the data folder"
	inDemo   where = "demo job, invented"
	inMemory where = "pasted, not saved: kept until the program stops"
)

// entries lists the jobs, the folder's first, each by name. A file in the folder
// stands before a demo job of the same name.
func (s *Site) entries() ([]entry, error) {
	var out []entry
	if s.o.Data != nil {
		names, err := s.folderNames()
		if err != nil {
			return nil, err
		}
		for _, n := range names {
			if e, err := s.fromFolder(n); err == nil {
				out = append(out, e)
			} else {
				out = append(out, entry{Name: n, File: n + ".yaml", Where: inFolder})
			}
		}
	}
	if s.o.Demo || s.o.Data == nil {
		for _, d := range demo.Jobs() {
			if !slices.ContainsFunc(out, func(e entry) bool { return e.Name == d.Name }) {
				out = append(out, entry{d.Name, d.File, inDemo, d.Data})
			}
		}
	}
	return out, nil
}

func (s *Site) folderNames() ([]string, error) {
	files, err := fs.ReadDir(s.o.Data.FS(), ".")
	if err != nil {
		return nil, fmt.Errorf("the data folder: %w", err)
	}
	var names []string
	for _, f := range files {
		if n, ok := strings.CutSuffix(f.Name(), ".yaml"); ok && !f.IsDir() && n != "" && n[0] != '.' {
			names = append(names, n)
		}
	}
	return names, nil
}

// fromFolder reads NAME.yaml. The root keeps any name inside the folder.
func (s *Site) fromFolder(name string) (entry, error) {
	if s.o.Data == nil || name == "" || strings.ContainsAny(name, "/\\") {
		return entry{}, fs.ErrNotExist
	}
	f, err := s.o.Data.Open(name + ".yaml")
	if err != nil {
		return entry{}, err
	}
	defer f.Close()
	if st, err := f.Stat(); err != nil || !st.Mode().IsRegular() {
		return entry{}, cmp.Or(err, fs.ErrNotExist)
	}
	data, err := io.ReadAll(io.LimitReader(f, job.MaxBytes+1))
	if err != nil {
		return entry{}, err
	}
	return entry{name, name + ".yaml", inFolder, data}, nil
}

// find returns the job of that name: from the folder, pasted, or a demo job.
func (s *Site) find(name string) (entry, error) {
	e, err := s.fromFolder(name)
	if err == nil || !errors.Is(err, fs.ErrNotExist) {
		return e, err
	}
	if e, ok := s.pasted.get(name); ok {
		return e, nil
	}
	if s.o.Demo || s.o.Data == nil {
		return demoEntry(name)
	}
	return entry{}, fs.ErrNotExist
}

// demoEntry returns a demo job, listed or not: any may be copied.
func demoEntry(name string) (entry, error) {
	for _, d := range demo.Jobs() {
		if d.Name == name {
			return entry{d.Name, d.File, inDemo, d.Data}, nil
		}
	}
	return entry{}, fs.ErrNotExist
}

// pasted keeps the last job files that were checked and found clean, so that
// their plans have an address and their papers can be fetched.
type pasted struct {
	mu   sync.Mutex
	list []entry
}

const mostPasted = 32

func (p *pasted) put(e entry) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.list = slices.DeleteFunc(p.list, func(x entry) bool { return x.Name == e.Name })
	p.list = append(p.list, e)
	if len(p.list) > mostPasted {
		p.list = slices.Delete(p.list, 0, 1)
	}
}

func (p *pasted) get(name string) (entry, bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	i := slices.IndexFunc(p.list, func(x entry) bool { return x.Name == name })
	if i < 0 {
		return entry{}, false
	}
	return p.list[i], true
}
