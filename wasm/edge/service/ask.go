package service

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"mime"
	"net/http"
	"slices"
	"strings"

	"github.com/drywright/drywright/cure/api"
	"github.com/drywright/drywright/cure/fault"
)

// ask answers a question: the document of package api goes in and comes out. A question without "op" is one for the address.
func (s *service) ask(w http.ResponseWriter, r *http.Request, to *Route) {
	body, p := s.body(r, "application/json")
	if p == nil {
		p = s.shallow(body)
	}
	if p != nil {
		refuse(w, *p)
		return
	}
	body, p = addressed(body, to.Op)
	if p != nil {
		refuse(w, *p)
		return
	}
	t := s.speak(r)
	answer := t.answer()(body)
	var seen struct {
		OK      bool        `json:"ok"`
		Message string      `json:"message"`
		Faults  []api.Fault `json:"faults"`
	}
	if err := json.Unmarshal(answer, &seen); err != nil || !seen.OK && len(seen.Faults) == 0 {
		refuse(w, problem{Type: "failure", Title: "The computation broke down", Status: http.StatusInternalServerError,
			Detail: "This is a fault of the service, not of the job. Please report the job with which it happens."})
		return
	}
	if !seen.OK {
		refuse(w, faulty(seen.Faults))
		return
	}
	head := w.Header()
	head.Set("Content-Language", t.tag)
	head.Set("Cache-Control", "no-store")
	send(w, http.StatusOK, "application/json", answer)
}

// faulty is the problem of a question that has faults: one that cannot be read is a bad request, one beyond the limits is
// too large, anything else is well formed and cannot be computed.
func faulty(faults []api.Fault) problem {
	p := problem{Type: "faults", Title: "The job cannot be computed as it stands", Status: http.StatusUnprocessableEntity, Faults: faults,
		Detail: faults[0].Text}
	has := func(c fault.Code) bool {
		return slices.ContainsFunc(faults, func(f api.Fault) bool { return f.Code == c })
	}
	switch {
	case has(fault.Syntax):
		p.Type, p.Title, p.Status = "not-readable", "The request cannot be read", http.StatusBadRequest
	case has(fault.Limit):
		p.Type, p.Title, p.Status = "too-large", "The request asks for more than this service gives", http.StatusRequestEntityTooLarge
	}
	return p
}

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
		return nil, &problem{Type: "cut-off", Title: "The body ended early", Status: http.StatusBadRequest}
	case err != nil:
		return nil, &problem{Type: "slow", Title: "The body did not come in time", Status: http.StatusRequestTimeout}
	}
	return body, nil
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
