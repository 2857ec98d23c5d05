// Package checks keeps the house in order. It holds tests only, run by go test
// with all others, so that a rule of ARCHITECTURE.md that is broken fails a
// build, with the reason in the message.
//
//	quantities  no Length*Length, no Temp+Temp: they compile, and mean nothing
//	shelves     physics <- repair <- present <- internal <- cmd; no clock, disk,
//	            network or unseeded chance before internal/
//	files       one package comment a package; no source file over 500 lines
//	words       nothing we print promises what a calculation cannot promise
//	sources     every key that is cited is in docs/sources.md
//
// Each rule is also run on planted faults, and must find exactly those. The
// module is loaded once, from source, with go/types and the export data that
// go list names; no other tool is needed.
package checks
