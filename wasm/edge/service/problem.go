package service

import (
	"bytes"
	"encoding/json"
	"net/http"

	"github.com/drywright/drywright/cure/api"
)

// problem is a problem document (RFC 9457). Its type is a name under the prefix below, which is no address.
type problem struct {
	Type   string      `json:"type"`
	Title  string      `json:"title"`
	Status int         `json:"status"`
	Detail string      `json:"detail,omitempty"`
	Faults []api.Fault `json:"faults,omitempty"` // each with path, value, range and what to do
}

const problemType = "urn:drywright:problem:"

// failure is the problem of a core that broke down, which no question should make it do.
var failure = problem{Type: "failure", Title: "The computation broke down", Status: http.StatusInternalServerError,
	Detail: "This is a fault of the service, not of the job. Please report the job with which it happens."}

// refuse answers with a problem. What was refused is never kept.
func refuse(w http.ResponseWriter, p problem) {
	p.Type = problemType + p.Type
	w.Header().Set("Cache-Control", "no-store")
	send(w, p.Status, "application/problem+json", encode(p))
}

func encode(v any) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return []byte("{}") // none of this package's documents can fail
	}
	return bytes.TrimRight(b.Bytes(), "\n")
}

// send writes a whole body.
func send(w http.ResponseWriter, status int, media string, body []byte) {
	w.Header().Set("Content-Type", media)
	w.WriteHeader(status)
	_, _ = w.Write(body) // whoever has gone does not want it
}
