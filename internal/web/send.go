package web

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"time"
)

// sendBytes sends a whole file with its content's hash as ETag, so that a
// second request is answered with 304 and a broken one can go on.
func sendBytes(w http.ResponseWriter, r *http.Request, mime string, data []byte) {
	sum := sha256.Sum256(data)
	w.Header().Set("ETag", `"`+hex.EncodeToString(sum[:16])+`"`)
	w.Header().Set("Content-Type", mime)
	http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(data))
}

// sendDownload sends a file under its name. PDFs and pictures open in the
// browser; the rest is stored. A picture holds no script, and could run none
// under the headers it is sent with.
func sendDownload(w http.ResponseWriter, r *http.Request, name, mime string, data []byte) {
	how := "attachment"
	if mime == "application/pdf" || mime == "image/png" || mime == "image/svg+xml" {
		how = "inline"
	}
	w.Header().Set("Content-Disposition", disposition(how, name))
	sendBytes(w, r, mime, data)
}

// disposition writes a file name the two ways RFC 6266 asks for: plain ASCII for
// old readers, RFC 8187 for all others.
func disposition(how, name string) string {
	plain := strings.Map(func(r rune) rune {
		if r < 0x20 || r > 0x7e || r == '"' || r == '\\' || r == '%' {
			return '_'
		}
		return r
	}, name)
	d := fmt.Sprintf(`%s; filename="%s"`, how, plain)
	if plain != name {
		d += "; filename*=UTF-8''" + strings.ReplaceAll(url.QueryEscape(name), "+", "%20")
	}
	return d
}
