package service

import (
	"compress/gzip"
	"crypto/rand"
	"encoding/hex"
	"net/http"
	"slices"
	"strconv"
	"strings"
)

// Headers are those of every answer, and of every file of the page that is served beside the service: nothing of it may be
// framed, guessed at, or ask anybody else.
func Headers(h http.Header) {
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("X-Frame-Options", "DENY")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Permissions-Policy", "camera=(), geolocation=(), microphone=()")
}

// secured gives every answer the headers, and an answer of this service the policy of a document that shows nothing.
func (s *service) secured(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		Headers(w.Header())
		w.Header().Set("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'")
		next.ServeHTTP(w, r)
	})
}

const requestID = "X-Request-Id"

// identified gives back the asker's own name for a request where it is a plain one, else a random name.
func (s *service) identified(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		id := r.Header.Get(requestID)
		if !plainID(id) {
			var b [12]byte
			_, _ = rand.Read(b[:]) // never fails
			id = hex.EncodeToString(b[:])
		}
		w.Header().Set(requestID, id)
		next.ServeHTTP(w, r)
	})
}

func plainID(id string) bool {
	const longest = 64
	return id != "" && len(id) <= longest && strings.Trim(id, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_.") == ""
}

// crossed lets the pages of configured origins ask (CORS), and answers their browsers' questions about it.
func (s *service) crossed(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		origin := r.Header.Get("Origin")
		if len(s.config.Origins) > 0 {
			w.Header().Add("Vary", "Origin")
		}
		if origin == "" || !slices.Contains(s.config.Origins, origin) && !slices.Contains(s.config.Origins, "*") {
			next.ServeHTTP(w, r)
			return
		}
		h := w.Header()
		h.Set("Access-Control-Allow-Origin", origin)
		h.Set("Access-Control-Expose-Headers", requestID+", ETag")
		if r.Method == http.MethodOptions && r.Header.Get("Access-Control-Request-Method") != "" {
			h.Set("Access-Control-Allow-Methods", "GET, HEAD, POST")
			h.Set("Access-Control-Allow-Headers", "Content-Type, Accept-Language, If-None-Match, "+requestID)
			h.Set("Access-Control-Max-Age", "600")
			w.WriteHeader(http.StatusNoContent)
			return
		}
		next.ServeHTTP(w, r)
	})
}

// worthwhile is the size from which a body is compressed [bytes].
const worthwhile = 1400

// compressed sends large bodies as gzip to whoever takes it.
func (s *service) compressed(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Add("Vary", "Accept-Encoding")
		if !takesGzip(r.Header.Get("Accept-Encoding")) || r.Method == http.MethodHead {
			next.ServeHTTP(w, r)
			return
		}
		c := &compressor{ResponseWriter: w, status: http.StatusOK}
		next.ServeHTTP(c, r)
		c.finish()
	})
}

func takesGzip(accepted string) bool {
	for _, one := range strings.Split(accepted, ",") {
		name, quality, _ := strings.Cut(strings.ReplaceAll(one, " ", ""), ";")
		if name == "gzip" || name == "*" {
			q, err := strconv.ParseFloat(strings.TrimPrefix(quality, "q="), 64)
			return quality == "" || err == nil && q > 0
		}
	}
	return false
}

// compressor holds the one body that an answer has until its size is known.
type compressor struct {
	http.ResponseWriter
	status int
	body   []byte
}

func (c *compressor) WriteHeader(status int) { c.status = status }

func (c *compressor) Write(b []byte) (int, error) {
	c.body = append(c.body, b...)
	return len(b), nil
}

func (c *compressor) finish() {
	h := c.Header()
	if len(c.body) < worthwhile {
		c.ResponseWriter.WriteHeader(c.status)
		_, _ = c.ResponseWriter.Write(c.body)
		return
	}
	h.Set("Content-Encoding", "gzip")
	if tag := h.Get("ETag"); tag != "" {
		h.Set("ETag", "W/"+tag) // the same content, other bytes
	}
	c.ResponseWriter.WriteHeader(c.status)
	z, _ := gzip.NewWriterLevel(c.ResponseWriter, gzip.BestSpeed) // the level exists
	_, _ = z.Write(c.body)
	_ = z.Close()
}
