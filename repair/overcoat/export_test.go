package overcoat

// ReadTable reads a table, for the tests of what it refuses.
var ReadTable = read
