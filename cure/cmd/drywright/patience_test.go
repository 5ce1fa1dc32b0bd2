package main

import (
	"errors"
	"io"
	"net"
	"net/http"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/drywright/drywright/wasm/edge/service"
)

// Whoever is slow with head or body of a request is told so (408), and one who has not begun a request is told nothing.
func TestSlowRequests(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	server := newServer(service.New(service.Config{}, service.Languages()...))
	if server.ReadHeaderTimeout <= 0 || server.ReadTimeout <= 0 || server.WriteTimeout <= 0 {
		t.Error("the server waits for ever")
	}
	server.ReadHeaderTimeout, server.ReadTimeout, server.IdleTimeout = 200*time.Millisecond, 400*time.Millisecond, 200*time.Millisecond
	go func() { _ = server.Serve(patient(server, listener)) }()
	defer server.Close()

	const head = "POST /v1/predict HTTP/1.1\r\nHost: service\r\nContent-Type: application/json\r\nContent-Length: 500\r\n\r\n"
	const health = "GET /v1/health HTTP/1.1\r\nHost: service\r\n\r\n"
	for name, c := range map[string]struct {
		sent   string
		status []int
	}{
		"half a first line":       {head[:10], []int{http.StatusRequestTimeout}},
		"half a head":             {head[:40], []int{http.StatusRequestTimeout}},
		"half a body":             {head + `{"job":`, []int{http.StatusRequestTimeout}},
		"nothing":                 {"", nil},
		"a whole one, then none":  {health, []int{http.StatusOK}},
		"a whole one, then half":  {health + "GET /v1/he", []int{http.StatusOK, http.StatusBadRequest}}, // read ahead, so the server's own answer
		"refused, the body slow":  {strings.Replace(head, "json", "pdf", 1) + "{", []int{http.StatusUnsupportedMediaType}},
		"a head without an end":   {"GET /v1/health HTTP/1.1\r\n" + strings.Repeat("X: y\r\n", 20), []int{http.StatusRequestTimeout}},
		"a head that is too long": {"GET /v1/health HTTP/1.1\r\nX: " + strings.Repeat("y", 64<<10), []int{http.StatusRequestHeaderFieldsTooLarge}},
	} {
		t.Run(name, func(t *testing.T) {
			c1, err := net.Dial("tcp", listener.Addr().String())
			if err != nil {
				t.Fatal(err)
			}
			defer c1.Close()
			_ = c1.SetDeadline(time.Now().Add(10 * time.Second))
			if _, err := io.WriteString(c1, c.sent); err != nil {
				t.Fatal(err)
			}
			said, err := io.ReadAll(c1)
			if err != nil && !errors.Is(err, syscall.ECONNRESET) { // as it is where more was sent than was read
				t.Errorf("the connection is not ended: %v", err)
			}
			if got := strings.Count(string(said), "HTTP/1.1 "); got != len(c.status) {
				t.Errorf("%d answers, want %d: %.500s", got, len(c.status), said)
			}
			for _, status := range c.status {
				if !strings.Contains(string(said), http.StatusText(status)) {
					t.Errorf("no %d in %.500s", status, said)
				}
			}
		})
	}
}
