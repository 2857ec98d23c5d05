package cli

import (
	"context"
	"fmt"
	"net"
	"os"
	"os/signal"
	"strings"
	"syscall"

	"scarfwright/internal/web"
)

type serveCommand struct {
	Addr string `default:"127.0.0.1:8321" help:"Address to listen on. With :8321 every device on the network can open the pages, and save jobs if --data is given." placeholder:"HOST:PORT"`
	Data string `help:"Folder of job files (NAME.yaml): they are listed, and jobs can be saved there. Made if it is not there. Without it nothing is written to disk." placeholder:"DIR" type:"path" optional:""`
	Demo bool   `help:"List the demo jobs too. They are always listed when --data is not given."`
}

// Run serves the pages until it is interrupted.
func (c serveCommand) Run(p Program) error {
	o := web.Options{Demo: c.Demo, Version: Version, Now: p.Now, Log: p.Err, Folder: c.Data}
	if c.Data != "" {
		if err := os.MkdirAll(c.Data, 0o755); err != nil {
			return fmt.Errorf("--data: %w", err)
		}
		root, err := os.OpenRoot(c.Data)
		if err != nil {
			return fmt.Errorf("--data: %w", err)
		}
		defer root.Close()
		o.Data = root
	}
	host, _, err := net.SplitHostPort(c.Addr)
	if err != nil {
		return statusError{exitUsage, fmt.Errorf("--addr: %q is not HOST:PORT, such as 127.0.0.1:8321", c.Addr)}
	}
	o.Hosts = append(o.Hosts, host)
	if name, err := os.Hostname(); err == nil && !isLoopback(host) {
		// On a network the machine is also called by its own name.
		short, _, _ := strings.Cut(name, ".")
		o.Hosts = append(o.Hosts, name, short, short+".local")
	}
	site, err := web.New(o)
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	l, err := net.Listen("tcp", c.Addr)
	if err != nil {
		return fmt.Errorf("cannot listen on %s: %w; give another with --addr", c.Addr, err)
	}
	c.tell(p, l.Addr(), host, site.HasStyle())
	return web.Serve(ctx, l, site, p.Err)
}

// tell says where the pages are, what is shown, and who can see them.
func (c serveCommand) tell(p Program, at net.Addr, host string, styled bool) {
	_, port, _ := net.SplitHostPort(at.String())
	open := host
	if open == "" || open == "0.0.0.0" || open == "::" {
		open = "127.0.0.1"
	}
	fmt.Fprintf(p.Out, "Scarfwright: open http://%s in a browser. Ctrl-C stops it.\n", net.JoinHostPort(open, port))
	if c.Data != "" {
		fmt.Fprintf(p.Out, "Jobs are kept in %s.\n", c.Data)
	} else {
		fmt.Fprintln(p.Out, "Demo jobs; nothing is written to disk. Give --data DIR to keep jobs of your own.")
	}
	if !isLoopback(host) {
		fmt.Fprintln(p.Out, "Everyone on this network can open these pages; there is no password.")
	}
	if !styled {
		fmt.Fprintln(p.Out, "The page style was not built (make web); the pages are plain but whole.")
	}
	fmt.Fprintln(p.Out, notice)
}

func isLoopback(host string) bool {
	ip := net.ParseIP(host)
	return host == "localhost" || ip != nil && ip.IsLoopback()
}
