package job

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"scarfwright/physics/si"
)

// unitMessage is the sentence for a quantity that cannot be read. The quantity's
// own sentence begins with its kind ("length needs a length unit"); the name of
// the field takes that place, for it is what the reader looks for.
func unitMessage(err error, text, name string) string {
	e := (*si.Error)(nil)
	if !errors.As(err, &e) {
		return fmt.Sprintf("%s cannot be '%s': %v.", name, shorten(text), err)
	}
	why := doubleQuoted.ReplaceAllString(shortenTo(e.Why, 300), "'$1'")
	if after, ok := strings.CutPrefix(why, e.Kind+" "); ok {
		return name + " " + after + "."
	}
	return name + ": " + why + "."
}

var doubleQuoted = regexp.MustCompile(`"([^"]*)"`)

// unitsAllowed lists the units that would do.
func unitsAllowed(err error) string {
	if e := (*si.Error)(nil); errors.As(err, &e) {
		return strings.Join(e.Allowed, ", ")
	}
	return ""
}
