package main

import (
	"bufio"
	"bytes"
	"context"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/fstest"
	"time"
)

// page stands for a built page.
func page() fstest.MapFS {
	return fstest.MapFS{
		"index.html":      {Data: []byte("<!doctype html><title>x</title>")},
		"core.wasm":       {Data: []byte("\x00asm")},
		"wasm_exec.js":    {Data: []byte("//")},
		"assets/a-1.css":  {Data: []byte("a{}")},
		"assets/icon.svg": {Data: []byte("<svg/>")},
	}
}

// The types are those of the WHATWG and IANA registries (from memory): a browser streams WebAssembly only as
// application/wasm and runs a module script only as JavaScript.
func TestMediaTypes(t *testing.T) {
	handler := pageHandler(page())
	for path, want := range map[string]struct {
		status int
		kind   string
	}{
		"/":                {200, "text/html; charset=utf-8"},
		"/core.wasm":       {200, "application/wasm"},
		"/wasm_exec.js":    {200, "text/javascript; charset=utf-8"},
		"/assets/a-1.css":  {200, "text/css; charset=utf-8"},
		"/assets/icon.svg": {200, "image/svg+xml"},
		"/assets/":         {404, "text/plain; charset=utf-8"},
		"/absent.js":       {404, "text/plain; charset=utf-8"},
		"/../run.go":       {404, "text/plain; charset=utf-8"},
	} {
		w := httptest.NewRecorder()
		handler.ServeHTTP(w, httptest.NewRequest(http.MethodGet, path, nil))
		if got := w.Header().Get("Content-Type"); w.Code != want.status || got != want.kind {
			t.Errorf("%s: %d %q, want %d %q", path, w.Code, got, want.status, want.kind)
		}
		if w.Header().Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%s may be sniffed", path)
		}
		if policy := w.Header().Get("Content-Security-Policy"); !strings.Contains(policy, "frame-ancestors 'none'") ||
			strings.Contains(policy, "'unsafe-inline'") || strings.Contains(policy, "'unsafe-eval'") {
			t.Errorf("%s: policy %q", path, policy)
		}
	}
	w := httptest.NewRecorder()
	handler.ServeHTTP(w, httptest.NewRequest(http.MethodPost, "/", nil))
	if w.Code != http.StatusMethodNotAllowed {
		t.Errorf("POST: %d", w.Code)
	}
}

// RFC 9110, 13.1.2: a browser that names the tag of what it has is told that nothing has changed.
func TestUnchangedFilesAreNotSentAgain(t *testing.T) {
	handler := pageHandler(page())
	for _, path := range []string{"/", "/core.wasm", "/assets/a-1.css"} {
		first := httptest.NewRecorder()
		handler.ServeHTTP(first, httptest.NewRequest(http.MethodGet, path, nil))
		tag := first.Header().Get("ETag")
		again := httptest.NewRequest(http.MethodGet, path, nil)
		again.Header.Set("If-None-Match", tag)
		second := httptest.NewRecorder()
		handler.ServeHTTP(second, again)
		if tag == "" || second.Code != http.StatusNotModified || second.Body.Len() > 0 {
			t.Errorf("%s: tag %q, then %d with %d bytes", path, tag, second.Code, second.Body.Len())
		}
	}
}

func TestServe(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	out, written := io.Pipe()
	var complaints bytes.Buffer
	p := program{ctx: ctx, stdout: written, stderr: &complaints, page: page(), built: true}
	ended := make(chan int, 1)
	go func() { ended <- p.run([]string{"serve", "--port", "0"}) }()

	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	begin, end := strings.Index(line, "http://127.0.0.1:"), strings.Index(line, "/ (")
	if begin < 0 || end < 0 {
		t.Fatalf("no loopback address in %q", line)
	}
	address := line[begin : end+1]
	response, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	text, _ := io.ReadAll(response.Body)
	response.Body.Close()
	if response.StatusCode != http.StatusOK || !bytes.Contains(text, []byte("<title>")) {
		t.Errorf("%d %s", response.StatusCode, text)
	}

	// The same port again is taken, and that is said.
	_, port, _ := net.SplitHostPort(strings.TrimSuffix(strings.TrimPrefix(address, "http://"), "/"))
	var again bytes.Buffer
	second := program{ctx: ctx, stdout: io.Discard, stderr: &again, page: page(), built: true}
	if code := second.run([]string{"serve", "--port", port}); code != misused || !strings.Contains(again.String(), "--port") {
		t.Errorf("a taken port: %d %q", code, again.String())
	}

	stop()
	select {
	case code := <-ended:
		if code != computed || complaints.Len() > 0 {
			t.Errorf("ended with %d %q", code, complaints.String())
		}
	case <-time.After(10 * time.Second):
		t.Fatal("the server does not end")
	}
}
