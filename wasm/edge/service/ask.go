package service

import (
	"encoding/json"
	"net/http"
	"slices"

	"github.com/drywright/drywright/cure/api"
	"github.com/drywright/drywright/cure/fault"
)

// ask answers a question: the document of package api goes in and comes out. A question without "op" is one for the address.
func (s *service) ask(w http.ResponseWriter, r *http.Request, to *Route) {
	body, p := s.body(r, "application/json")
	for _, check := range []func([]byte) *problem{s.shallow, unambiguous} {
		if p == nil {
			p = check(body)
		}
	}
	if p == nil {
		body, p = addressed(body, to.Op)
	}
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
		refuse(w, failure)
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
