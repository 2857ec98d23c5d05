// Package cli is the command line: it reads files and the clock, calls the
// pipeline, and writes text, JSON or a folder of papers. It holds no rule of
// the trade.
package cli

import (
	"errors"
	"fmt"
	"io"
	"os"
	"time"

	"github.com/alecthomas/kong"
)

// Version is stamped by the linker.
var Version = "dev"

// Exit statuses.
const (
	exitOK       = 0
	exitRefused  = 1 // input refused, or a check failed
	exitUsage    = 2 // the command line itself was not understood
	exitReferred = 3 // a hard stop applies: refer on first, or this version does not plan it
	exitStopped  = 4 // planned, but a stop stands that must be settled before work begins
)

// Program is the command line's surroundings, so that a test can stand in for them.
type Program struct {
	In       io.Reader
	Out, Err io.Writer
	Now      func() time.Time
}

// commands is the command line.
type commands struct {
	Plan      planCommand      `cmd:"" help:"Plan the repair a job file describes; print it, or write the job pack to a folder."`
	Options   optionsCommand   `cmd:"" help:"Compare every way to repair it: strength, stiffness, size, hours; recommend one, with the reason."`
	Check     checkCommand     `cmd:"" help:"Read a job file and say what is wrong with it, or what it would need."`
	Figure    figureCommand    `cmd:"" help:"List the single calculations, or compute one: figure dose resin=350g percent=1.8%."`
	Proof     proofCommand     `cmd:"" help:"Compare our numbers with published and independent ones; exit 1 if one is off."`
	Demo      demoCommand      `cmd:"" help:"List the demo jobs, or plan them all into a folder."`
	Serve     serveCommand     `cmd:"" help:"Show jobs as pages in a browser."`
	Catalogue catalogueCommand `cmd:"" help:"List the materials by class, or show every value of one with its source."`
	Overcoat  overcoatCommand  `cmd:"" help:"Say what may be laid on what, after which preparation, at what risk, and who says so."`
	Schema    schemaCommand    `cmd:"" help:"Print the job file's JSON Schema, for editors."`
	Version   kong.VersionFlag `help:"Print the version."`
}

// statusError carries an exit status; its message is already fit to print, or empty.
type statusError struct {
	status int
	err    error
}

func (e statusError) Error() string {
	if e.err == nil {
		return ""
	}
	return e.err.Error()
}
func (e statusError) Unwrap() error { return e.err }

func refused(err error) error { return statusError{exitRefused, err} }

// Main runs the command line against the real world and returns the exit status.
func Main(args []string) int {
	return Program{In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Now: time.Now}.Run(args)
}

// Run runs one command line and returns its exit status.
func (p Program) Run(args []string) (status int) {
	if len(args) == 0 {
		args = []string{"--help"}
	}
	var c commands
	exited := -1
	parser, err := kong.New(&c,
		kong.Name("scarfwright"),
		kong.Description("Plans fibreglass boat repairs from what can be measured in a shed: design, amounts, templates, papers, price.\n\n"+notice+"\n\nExit status: 0 done; 1 input refused or a check off; 2 command not understood; 3 refer on first, or not planned; 4 planned, but a stop stands."),
		kong.UsageOnError(), kong.Writers(p.Out, p.Err),
		kong.Exit(func(code int) { exited = code; panic(kongExit{}) }),
		kong.Vars{"version": "scarfwright " + Version}, kong.Vars(overcoatWords()),
		kong.ConfigureHelp(kong.HelpOptions{Compact: true}),
	)
	if err != nil {
		fmt.Fprintln(p.Err, "scarfwright:", err)
		return exitUsage
	}
	defer func() {
		// Kong leaves help and version by its exit function; nothing else panics with this type.
		if r := recover(); r != nil {
			if _, ok := r.(kongExit); !ok {
				panic(r)
			}
			status = exited
		}
	}()
	ctx, err := parser.Parse(args)
	if err != nil {
		fmt.Fprintf(p.Err, "scarfwright: %v\nSee: scarfwright --help\n", err)
		return exitUsage
	}
	if err := ctx.Run(p); err != nil {
		var s statusError
		if errors.As(err, &s) {
			if s.err != nil {
				fmt.Fprintln(p.Err, s.err)
			}
			return s.status
		}
		fmt.Fprintln(p.Err, "scarfwright:", err)
		return exitRefused
	}
	return exitOK
}

type kongExit struct{}

const notice = "The makers' data sheets rule; local codes and licensed practice decide. Figures are estimates."
