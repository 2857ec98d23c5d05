package cli

import (
	"fmt"
	"os"
	"path/filepath"

	"scarfwright/present/pack"
	"scarfwright/present/sheet"
	"scarfwright/repair/job"
	"scarfwright/repair/ways"
)

// writeWays writes the papers of a comparison and returns their names in order.
func writeWays(dir string, d job.Description, r ways.Result, o sheet.Options) ([]string, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, err
	}
	var names []string
	for _, f := range pack.WaysFiles(d, r, o) {
		if err := writeWhole(filepath.Join(dir, f.Name), f.Write); err != nil {
			return names, fmt.Errorf("%s: %w", f.Name, err)
		}
		names = append(names, f.Name)
	}
	return names, nil
}
