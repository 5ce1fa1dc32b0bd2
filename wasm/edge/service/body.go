package service

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"mime"
	"net/http"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/drywright/drywright/cure/api"
)

// body reads the body of a request of one media type, and no more of it than is allowed.
func (s *service) body(r *http.Request, media string) ([]byte, *problem) {
	if e := r.Header.Get("Content-Encoding"); e != "" && e != "identity" {
		return nil, &problem{Type: "encoding", Title: "The body must be sent as it is", Status: http.StatusUnsupportedMediaType,
			Detail: "Content-Encoding " + e + " is not read."}
	}
	kind, parameters, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	if err != nil || kind != media {
		return nil, &problem{Type: "media-type", Title: "The body is of another media type", Status: http.StatusUnsupportedMediaType,
			Detail: "Send it with Content-Type: " + media + "."}
	}
	if c := parameters["charset"]; c != "" && !strings.EqualFold(c, "utf-8") {
		return nil, &problem{Type: "media-type", Title: "The body must be UTF-8", Status: http.StatusUnsupportedMediaType,
			Detail: "charset " + c + " is not read."}
	}
	limit := s.config.Limits.Body
	tooLarge := &problem{Type: "too-large", Title: "The body is too large", Status: http.StatusRequestEntityTooLarge,
		Detail: fmt.Sprintf("Send at most %d bytes.", limit)}
	if r.ContentLength > int64(limit) {
		return nil, tooLarge
	}
	if r.Body == nil {
		return nil, nil
	}
	body, err := io.ReadAll(io.LimitReader(r.Body, int64(limit)+1))
	switch {
	case len(body) > limit:
		return nil, tooLarge
	case errors.Is(err, io.ErrUnexpectedEOF):
		return nil, &cutOff
	case err != nil:
		return nil, &slow
	case !utf8.Valid(body):
		return nil, &problem{Type: "not-utf-8", Title: "The body is not UTF-8", Status: http.StatusBadRequest, Detail: "Save or send it as UTF-8."}
	}
	return body, nil
}

var (
	errSlow = errors.New("the body did not come in time")
	cutOff  = problem{Type: "cut-off", Title: "The body ended early", Status: http.StatusBadRequest}
	slow    = problem{Type: "slow", Title: "The body did not come in time", Status: http.StatusRequestTimeout}
)

// received takes a body in before anything is answered, as far as it may be read at all, where bodies are waited for here: the
// edge platform keeps an answer back for as long as nobody has begun to read, and does not use a connection again on which a body was
// left. A server of package net/http does the same by itself.
func (s *service) received(next http.Handler) http.Handler {
	if s.config.Patience <= 0 {
		return next
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Body != nil {
			most := int64(s.config.Limits.Body) + 1
			if r.ContentLength > most {
				most = 1 // it will be refused
			}
			text, err := s.patiently(io.LimitReader(r.Body, most))
			switch {
			case errors.Is(err, errSlow):
				refuse(w, slow)
				return
			case err != nil:
				refuse(w, cutOff)
				return
			}
			r.Body = io.NopCloser(bytes.NewReader(text))
		}
		next.ServeHTTP(w, r)
	})
}

// patiently reads all of a body, and waits no longer than the service is configured to.
func (s *service) patiently(body io.Reader) ([]byte, error) {
	type outcome struct {
		text []byte
		err  error
	}
	read := make(chan outcome, 1)
	go func() {
		text, err := io.ReadAll(body)
		read <- outcome{text, err}
	}()
	end := time.NewTimer(s.config.Patience)
	defer end.Stop()
	select {
	case o := <-read:
		return o.text, o.err
	case <-end.C:
		return nil, errSlow
	}
}

// shallow refuses JSON that is nested more deeply than any question is, before anything is built from it.
func (s *service) shallow(body []byte) *problem {
	depth, quoted, escaped := 0, false, false
	for _, c := range body {
		switch {
		case escaped:
			escaped = false
		case quoted:
			escaped, quoted = c == '\\', c != '"'
		case c == '"':
			quoted = true
		case c == '{' || c == '[':
			if depth++; depth > s.config.Limits.Depth {
				return &problem{Type: "too-deep", Title: "The body is nested too deeply", Status: http.StatusBadRequest,
					Detail: fmt.Sprintf("Nest at most %d objects and lists.", s.config.Limits.Depth)}
			}
		case c == '}' || c == ']':
			depth--
		}
	}
	return nil
}

// unambiguous refuses a question with a member that comes twice, of which one program would read the first and another one the
// last. The core looks after the job itself, and says where. What is no JSON is left to the core, too.
func unambiguous(body []byte) *problem {
	d := json.NewDecoder(bytes.NewReader(body))
	d.UseNumber()
	if twice, err := repeated(d, "job"); err == nil && twice != "" {
		return &problem{Type: "twice", Title: "A member comes twice", Status: http.StatusBadRequest,
			Detail: fmt.Sprintf("%q stands twice in one object. Keep one of the two.", twice)}
	}
	return nil
}

// repeated names a member that comes twice in an object of the next value, whether its letters are small or capital; the value of
// the member skip is not looked into.
func repeated(d *json.Decoder, skip string) (string, error) {
	token, err := d.Token()
	if err != nil {
		return "", err
	}
	if token != json.Delim('{') && token != json.Delim('[') {
		return "", nil
	}
	seen := map[string]bool{}
	for d.More() {
		if token == json.Delim('{') {
			key, err := d.Token()
			if err != nil {
				return "", err
			}
			name, _ := key.(string)
			if folded := strings.ToLower(name); seen[folded] {
				return name, nil
			} else if seen[folded] = true; folded == skip {
				var skipped json.RawMessage
				if err := d.Decode(&skipped); err != nil {
					return "", err
				}
				continue
			}
		}
		if twice, err := repeated(d, ""); err != nil || twice != "" {
			return twice, err
		}
	}
	_, err = d.Token()
	return "", err
}

// addressed gives a question the operation of its address, or makes sure that it names the same.
func addressed(body []byte, op api.Op) ([]byte, *problem) {
	var q struct {
		Op *api.Op `json:"op"`
	}
	if json.Unmarshal(body, &q) != nil {
		return body, nil // the core says what is wrong with it, and where
	}
	if q.Op != nil {
		if *q.Op != op {
			return nil, &problem{Type: "other-operation", Title: "The question belongs to another address", Status: http.StatusBadRequest,
				Detail: fmt.Sprintf("It asks for %q and was sent to the address of %q.", *q.Op, op)}
		}
		return body, nil
	}
	rest, found := bytes.CutPrefix(bytes.TrimLeft(body, " \t\r\n"), []byte("{"))
	if !found {
		return body, nil
	}
	head := fmt.Sprintf(`{"op":%q`, op)
	if !bytes.HasPrefix(bytes.TrimLeft(rest, " \t\r\n"), []byte("}")) {
		head += ","
	}
	return append([]byte(head), rest...), nil
}
