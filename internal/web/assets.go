package web

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"strings"
)

// dist is what `make web` builds from src; it may be empty. static is the plain
// style that stands in for it, so that the pages are read all the same.
//
//go:embed all:dist
var dist embed.FS

//go:embed static/plain.css
var plainStyle []byte

type assets struct {
	files map[string]asset
	built bool
}

type asset struct {
	data []byte
	mime string
	hash string
}

// mimes are told here and not asked of the system, whose tables differ.
var mimes = map[string]string{
	".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".svg": "image/svg+xml",
}

func loadAssets() (assets, error) {
	a := assets{files: map[string]asset{}}
	a.add("plain.css", plainStyle)
	for _, name := range []string{"app.css", "app.js"} {
		data, err := dist.ReadFile("dist/" + name)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return assets{}, fmt.Errorf("web: %w", err)
		}
		a.add(name, data)
	}
	_, a.built = a.files["app.css"]
	return a, nil
}

func (a assets) add(name string, data []byte) {
	sum := sha256.Sum256(data)
	a.files[name] = asset{data, mimes[name[strings.LastIndexByte(name, '.'):]], hex.EncodeToString(sum[:6])}
}

// link returns the address of a file with its content's hash, "" when it was not
// built. A new build is a new address, so the browser may keep it for good.
func (a assets) link(name string) string {
	f, ok := a.files[name]
	if !ok {
		return ""
	}
	return "/static/" + name + "?" + f.hash
}

func (s *Site) static(w http.ResponseWriter, r *http.Request) {
	f, ok := s.assets.files[r.PathValue("file")]
	if !ok {
		s.notFound(w, r)
		return
	}
	if r.URL.RawQuery == f.hash {
		w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
	}
	sendBytes(w, r, f.mime, f.data)
}
