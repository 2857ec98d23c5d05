package catalog

// Read and Data let a test feed the reader a damaged file.
var (
	Read = read
	Data = data.ReadFile
)

// Liquids lists everything mixed from two parts.
func (c Catalogue) Liquids() []TwoPart { return c.twoParts() }
