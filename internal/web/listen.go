package web

import (
	"context"
	"errors"
	"io"
	"log"
	"net"
	"net/http"
	"time"
)

// Times a slow or stalled client is given.
const (
	headerTime = 5 * time.Second
	readTime   = 30 * time.Second
	writeTime  = 60 * time.Second
	idleTime   = 2 * time.Minute
	stopTime   = 3 * time.Second // for requests under way when the program is told to stop
)

// Serve answers on the listener until the context ends, then lets what is under
// way finish, for 3 s at most.
func Serve(ctx context.Context, l net.Listener, h http.Handler, faults io.Writer) error {
	srv := &http.Server{
		Handler: h, ReadHeaderTimeout: headerTime, ReadTimeout: readTime, WriteTimeout: writeTime, IdleTimeout: idleTime,
		MaxHeaderBytes: 64 << 10, ErrorLog: log.New(faults, "scarfwright: ", 0),
	}
	done := make(chan error, 1)
	go func() { done <- srv.Serve(l) }()
	select {
	case err := <-done:
		return err
	case <-ctx.Done():
	}
	stop, cancel := context.WithTimeout(context.WithoutCancel(ctx), stopTime)
	defer cancel()
	err := srv.Shutdown(stop)
	if errors.Is(err, context.DeadlineExceeded) {
		err = srv.Close()
	}
	if e := <-done; !errors.Is(e, http.ErrServerClosed) {
		return e
	}
	return err
}
