package main

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"net"
	"net/http"
	"path"
	"strconv"
	"strings"
	"time"

	"github.com/drywright/drywright/site"
	"github.com/drywright/drywright/wasm/edge/service"
)

// defaultPort is a port that no registered service uses.
const defaultPort = 8417

// serveVerb serves the page on the loopback address until the program is interrupted.
func (p *program) serveVerb(args []string) int {
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	port := flags.Int("port", defaultPort, fmt.Sprintf("port to listen on, 0 for any free one (default %d)", defaultPort))
	api := flags.Bool("api", false, "answer programs as well, under /v1/ (GET /v1/openapi.json describes it)")
	var origins []string
	flags.Func("origin", "with --api: a page of this origin may ask, too; may be given several times, * for anyone", func(o string) error {
		origins = append(origins, o)
		return nil
	})
	if _, code := p.parse("serve", flags, args, 0); code >= 0 {
		return code
	}
	if *port < 0 || *port > 65535 {
		return p.misuse("serve", flags, fmt.Sprintf("port %d is outside 0 to 65535", *port))
	}
	if !p.built && !*api {
		fmt.Fprintln(p.stderr, "drywright serve: this program was built without its page. Run \"make run\", or build it "+
			"with \"make build\".")
		return misused
	}
	// Loopback only: the page is for this machine. A taken port must be an error, not a silent second address.
	listener, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(*port)))
	if err != nil {
		fmt.Fprintf(p.stderr, "drywright serve: %v. Choose another port with --port, or any free one with --port 0.\n", err)
		return misused
	}
	var handler http.Handler = http.NotFoundHandler()
	said := ""
	if p.built {
		handler = pageHandler(p.page)
		said = fmt.Sprintf("The page is at http://%s/ (end with Ctrl-C)\n", listener.Addr())
	}
	if *api {
		handler = beside(service.New(service.Config{Origins: origins, Build: p.build}, service.Languages()...), handler)
		said += fmt.Sprintf("Programs are answered at http://%s/v1/ (GET /v1/openapi.json)\n", listener.Addr())
	}
	if code := p.print(said); code != computed {
		listener.Close()
		return code
	}
	return p.serve(listener, handler)
}

// beside lays the service beside the page. A path is taken as it was sent: a multiplexer would send a disguised one on to where it
// may lead.
func beside(api, page http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if strings.HasPrefix(r.URL.Path, "/v1/") {
			api.ServeHTTP(w, r)
			return
		}
		page.ServeHTTP(w, r)
	})
}

// newServer is a server that waits for nobody who sends or reads slowly; an answer may take as long as a search does.
func newServer(handler http.Handler) *http.Server {
	return &http.Server{Handler: handler, ReadHeaderTimeout: 10 * time.Second, ReadTimeout: 20 * time.Second, WriteTimeout: 5 * time.Minute,
		IdleTimeout: time.Minute, MaxHeaderBytes: 32 << 10}
}

// serve answers requests until the context ends.
func (p *program) serve(listener net.Listener, handler http.Handler) int {
	server := newServer(handler)
	listener = patient(server, listener)
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(listener) }()
	select {
	case err := <-ended:
		fmt.Fprintf(p.stderr, "drywright serve: %v\n", err)
		return refused
	case <-p.ctx.Done():
	}
	grace, cancel := context.WithTimeout(context.Background(), 2*time.Second)
	defer cancel()
	if err := server.Shutdown(grace); err != nil && !errors.Is(err, context.DeadlineExceeded) {
		fmt.Fprintf(p.stderr, "drywright serve: %v\n", err)
		return refused
	}
	return computed
}

// mediaType names the types of the page's files. The system's own table is not asked, since it differs between
// machines, and a browser refuses a module script or a streamed WebAssembly of the wrong type.
func mediaType(name string) string {
	switch path.Ext(name) {
	case "", ".html":
		return "text/html; charset=utf-8"
	case ".js", ".mjs":
		return "text/javascript; charset=utf-8"
	case ".css":
		return "text/css; charset=utf-8"
	case ".wasm":
		return "application/wasm"
	case ".json", ".map":
		return "application/json"
	case ".webmanifest":
		return "application/manifest+json"
	case ".svg":
		return "image/svg+xml"
	case ".png":
		return "image/png"
	case ".ico":
		return "image/x-icon"
	case ".woff2":
		return "font/woff2"
	case ".txt":
		return "text/plain; charset=utf-8"
	}
	return "application/octet-stream"
}

// entityTags gives every file a tag made of its bytes, so that a browser that asks again, as the page's service worker does
// for each version, is not sent what it has. The page itself goes by the empty path.
func entityTags(page fs.FS) map[string]string {
	tags := map[string]string{}
	// A file that cannot be read has no tag, and says so when it is asked for.
	_ = fs.WalkDir(page, ".", func(name string, _ fs.DirEntry, _ error) error {
		if bytes, err := fs.ReadFile(page, name); err == nil {
			sum := sha256.Sum256(bytes)
			tags[name] = fmt.Sprintf("%q", hex.EncodeToString(sum[:12]))
		}
		return nil
	})
	tags[""] = tags["index.html"]
	return tags
}

// pageHandler serves the files of the page, and nothing else.
func pageHandler(page fs.FS) http.Handler {
	files, tags := http.FileServerFS(page), entityTags(page)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "only GET and HEAD", http.StatusMethodNotAllowed)
			return
		}
		head := w.Header()
		service.Headers(head)
		head.Set("Content-Security-Policy", site.Policy())
		if r.URL.Path != "/" && strings.HasSuffix(r.URL.Path, "/") { // a folder is not listed
			http.NotFound(w, r)
			return
		}
		head.Set("Content-Type", mediaType(r.URL.Path))
		head.Set("Cache-Control", "no-cache") // a rebuilt page must be seen at once
		if tag := tags[strings.TrimPrefix(path.Clean(r.URL.Path), "/")]; tag != "" {
			head.Set("ETag", tag)
		}
		files.ServeHTTP(w, r)
	})
}
