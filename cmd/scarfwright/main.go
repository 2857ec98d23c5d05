// Scarfwright plans fibreglass boat repairs. All it does is in internal/cli;
// `scarfwright help` lists the commands.
package main

import (
	"os"

	"scarfwright/internal/cli"
)

func main() {
	os.Exit(cli.Main(os.Args[1:]))
}
