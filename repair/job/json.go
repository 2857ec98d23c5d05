package job

import "github.com/goccy/go-yaml"

// MarshalJSON writes the description with the job file's own keys, quantities as
// text with their units, so that it can be saved and read back as a job file.
func (d Description) MarshalJSON() ([]byte, error) {
	text, err := Marshal(d)
	if err != nil {
		return nil, err
	}
	return yaml.YAMLToJSON(text)
}
