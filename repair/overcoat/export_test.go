package overcoat

// Read reads a table, for the tests of what it refuses.
var Read = read
