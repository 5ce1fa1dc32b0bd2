package service

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"net/http"
	"strings"

	"github.com/drywright/drywright/cure/api"
	"github.com/drywright/drywright/cure/contract"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/words/languages"
)

// tell answers what asks for no job: the catalogue, a job to start from and the schema, which stay the same for as long as the build does.
func (s *service) tell(w http.ResponseWriter, r *http.Request, to *Route) {
	t := s.speak(r)
	asked := map[string]any{"op": to.Op}
	if units := r.URL.Query().Get("units"); units != "" {
		asked["units"] = units
	}
	var answer struct {
		OK        bool            `json:"ok"`
		Faults    []api.Fault     `json:"faults"`
		Catalogue json.RawMessage `json:"catalogue"`
		Job       json.RawMessage `json:"job"`
		Schema    json.RawMessage `json:"schema"`
	}
	if err := json.Unmarshal(t.answer()(encode(asked)), &answer); err != nil || !answer.OK && len(answer.Faults) == 0 {
		refuse(w, failure)
		return
	}
	if !answer.OK {
		refuse(w, faulty(answer.Faults))
		return
	}
	w.Header().Set("Content-Language", t.tag)
	w.Header().Add("Vary", "Accept-Language")
	document := answer.Catalogue
	switch to.Op {
	case api.Schema:
		document = answer.Schema
	case api.Demo:
		document = answer.Job
	}
	s.keep(w, r, to.media(), document)
}

func (s *service) openapi(w http.ResponseWriter, r *http.Request, _ *Route) {
	s.keep(w, r, "application/json", OpenAPI(s.config.Build))
}

// described is what /v1/version tells.
type described struct {
	Build string `json:"build"`
	API   int    `json:"api"` // version of questions and answers
	Job   int    `json:"job"` // newest version of jobs that is read; all older ones are
}

func (s *service) version(w http.ResponseWriter, r *http.Request, _ *Route) {
	s.keep(w, r, "application/json", encode(described{s.config.Build, api.Version, job.Version}))
}

func (s *service) health(w http.ResponseWriter, _ *http.Request, _ *Route) {
	w.Header().Set("Cache-Control", "no-store")
	send(w, http.StatusOK, "application/json", []byte(`{"status":"ok"}`))
}

// keep sends what may be kept: with a tag made of its bytes, by which whoever has it is told so.
func (s *service) keep(w http.ResponseWriter, r *http.Request, media string, body []byte) {
	sum := sha256.Sum256(body)
	tag := fmt.Sprintf("%q", hex.EncodeToString(sum[:12]))
	head := w.Header()
	head.Set("ETag", tag)
	head.Set("Cache-Control", "public, max-age=300, must-revalidate")
	for _, known := range strings.Split(r.Header.Get("If-None-Match"), ",") {
		if known = strings.TrimPrefix(strings.TrimSpace(known), "W/"); known == tag || known == "*" {
			w.WriteHeader(http.StatusNotModified)
			return
		}
	}
	send(w, http.StatusOK, media, body)
}

// OpenAPI describes all addresses, the limits and the documents, generated from the Go types (OpenAPI 3.1).
func OpenAPI(build string) []byte {
	var paths []contract.Path
	for _, to := range Routes() {
		p := contract.Path{Method: strings.ToLower(to.Method), Path: to.Path, Summary: to.Summary, Problem: "problem"}
		switch {
		case to.Method == http.MethodPost && to.Op != "":
			p.Body, p.Answer = "Request", "Response"
		case to.Path == "/v1/table":
			p.Text = "text/csv"
			p.Query = []contract.Parameter{{Name: "base", About: "The job that the rows change", Words: baseNames()}}
		case to.Path == "/v1/materials":
			p.Answer = "Catalogue"
			p.Query = []contract.Parameter{{Name: "units", About: "Units of texts and of what is shown", Words: []string{"si", "us"}}}
		case to.Path == "/v1/demo":
			p.Answer = "Job"
		}
		paths = append(paths, p)
	}
	english := languages.English()
	return contract.OpenAPI(func(text string) string { return english.Render(text, nil) }, contract.About{Title: "Drywright", Version: build, License: "Apache-2.0",
		Description: "Drying and cure of a sprayed adhesive film: in a room, a static oven, a tunnel. All numbers are in the SI unit that the " +
			"member's name states. Nothing is stored."},
		paths, map[string]any{"Request": api.Request{}, "Response": api.Response{}, "Catalogue": api.Catalogue{}, "problem": problem{}})
}
