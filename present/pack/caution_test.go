package pack_test

import (
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"
	"testing"

	"scarfwright/present/internal/planned"
	"scarfwright/present/pack"
	"scarfwright/repair"
	"scarfwright/repair/catalog"
	"scarfwright/repair/caution"
	"scarfwright/repair/demo"
)

// wordsOf reads the words on a file as whoever opens it does; ok is false for a
// picture in dots and for the job file, which is the repairer's own text.
func wordsOf(t testing.TB, name string, b []byte) (words string, ok bool) {
	t.Helper()
	var out []string
	switch path.Ext(name) {
	case ".svg":
		dec := xml.NewDecoder(strings.NewReader(string(b)))
		deep := 0 // in a text element
		for {
			tok, err := dec.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			switch x := tok.(type) {
			case xml.StartElement:
				if x.Name.Local == "text" {
					deep++
				}
			case xml.EndElement:
				if x.Name.Local == "text" {
					deep--
				}
			case xml.CharData:
				if deep > 0 {
					out = append(out, string(x))
				}
			}
		}
	case ".dxf":
		lines := strings.Split(strings.ReplaceAll(string(b), "\r\n", "\n"), "\n")
		for i := 0; i+1 < len(lines); i += 2 {
			if strings.TrimSpace(lines[i]) == "1" {
				out = append(out, lines[i+1])
			}
		}
	case ".json":
		var v struct {
			Caution string `json:"caution"`
		}
		if err := json.Unmarshal(b, &v); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		out = []string{v.Caution}
	case ".pdf":
		tool, err := exec.LookPath("pdftotext")
		if err != nil {
			return "", false
		}
		file := filepath.Join(t.TempDir(), name)
		if err := os.WriteFile(file, b, 0o644); err != nil {
			t.Fatal(err)
		}
		text, err := exec.Command(tool, file, "-").Output()
		if err != nil {
			t.Fatalf("%s: pdftotext: %v", name, err)
		}
		out = []string{string(text)}
	default:
		return "", false
	}
	return strings.Join(strings.Fields(strings.Join(out, " ")), " "), true
}

// Every file of every pack that holds words holds the general caution, a
// picture that leaves the boatyard by itself as well as a paper.
func TestEveryExportCarriesTheCaution(t *testing.T) {
	for _, j := range demo.Jobs() {
		read := 0
		for _, f := range pack.Files(planned.Demo(t, j.Name), options) {
			words, ok := wordsOf(t, f.Name, written(t, f))
			if !ok {
				continue
			}
			read++
			if !strings.Contains(words, caution.General) {
				t.Errorf("%s: %s does not carry the general caution", j.Name, f.Name)
			}
		}
		if read == 0 {
			t.Errorf("%s: no file with words in the pack", j.Name)
		}
	}
}

// A picture of a job that is referred on or stopped says so itself.
func TestEveryPictureSaysThatItsJobIsHeld(t *testing.T) {
	cold, err := demo.Parse("day-launch")
	if err != nil {
		t.Fatal(err)
	}
	cold.Choices.Ratio = 20 // the taper runs over both stringers
	stopped, err := repair.Plan(cold, catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	if !stopped.Stopped() {
		t.Fatal("a taper over a stringer does not stop the job any more: find another stop for this test")
	}
	for name, row := range map[string]struct {
		r    repair.Result
		want []string
	}{
		"referred": {planned.Demo(t, "work-skiff"), []string{"NOT RELEASED: refer on first: commercial or passenger craft"}},
		"stopped":  {stopped, []string{"STOP: not to be started", "taper to stringer (upper)"}},
		"clear":    {planned.Demo(t, "day-launch"), nil},
	} {
		seen := 0
		for _, f := range pack.Files(row.r, options) {
			if e := path.Ext(f.Name); e != ".svg" && e != ".dxf" {
				continue
			}
			seen++
			words, _ := wordsOf(t, f.Name, written(t, f))
			for _, w := range row.want {
				if !strings.Contains(words, w) {
					t.Errorf("%s: %s does not say %q", name, f.Name, w)
				}
			}
			if row.want == nil && (strings.Contains(words, "STOP") || strings.Contains(words, "NOT RELEASED")) {
				t.Errorf("%s: %s says that nothing may be begun", name, f.Name)
			}
		}
		if seen < 2 {
			t.Errorf("%s: only %d pictures in the pack", name, seen)
		}
	}
}
