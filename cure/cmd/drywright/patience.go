package main

import (
	"errors"
	"net"
	"net/http"
	"os"
	"sync/atomic"
	"time"
)

// patient has a server tell whoever is too slow with the head of a request that it has waited long enough (408; RFC 9110, 15.5.9).
// Package net/http closes such a connection without a word. The server must be served on the listener that is returned.
func patient(server *http.Server, listener net.Listener) net.Listener {
	server.ConnState = func(c net.Conn, state http.ConnState) {
		ours, known := c.(*connection)
		switch {
		case !known:
		case state == http.StateActive: // the head has been read
			ours.heard.Store(true)
		case state == http.StateIdle: // answered, and the next request may come
			ours.begun.Store(false)
			ours.heard.Store(false)
		}
	}
	return patientListener{listener}
}

type patientListener struct{ net.Listener }

func (l patientListener) Accept() (net.Conn, error) {
	c, err := l.Listener.Accept()
	if err != nil {
		return nil, err
	}
	return &connection{Conn: c}, nil
}

// connection knows whether a request has begun to come, whether its head has been heard to the end, and whether it is over.
type connection struct {
	net.Conn
	begun, heard, over atomic.Bool
}

// farewell is short enough for a second to be more than it needs.
const (
	farewell     = "HTTP/1.1 408 Request Timeout\r\nConnection: close\r\nContent-Length: 0\r\n\r\n"
	farewellTime = time.Second
)

func (c *connection) Read(b []byte) (int, error) {
	n, err := c.Conn.Read(b)
	switch {
	case c.heard.Load():
	case n > 0:
		c.begun.Store(true)
	case errors.Is(err, os.ErrDeadlineExceeded) && c.begun.Load() && c.over.CompareAndSwap(false, true):
		if c.SetWriteDeadline(time.Now().Add(farewellTime)) == nil {
			_, _ = c.Conn.Write([]byte(farewell)) // the connection ends in any case
		}
	}
	return n, err
}

// Write sends nothing after the farewell: to the server, half a first line is a request that it does not understand.
func (c *connection) Write(b []byte) (int, error) {
	if c.over.Load() {
		return 0, net.ErrClosed
	}
	return c.Conn.Write(b)
}
