package service

import (
	"net/http"
	"strings"

	"github.com/drywright/drywright/cure/api"
)

// Route is one address, for the router and for the description in OpenAPI alike.
type Route struct {
	Method, Path string
	Op           api.Op // what a question asks for; empty: something else
	Summary      string
	do           func(*service, http.ResponseWriter, *http.Request, *Route)
}

// Routes lists all addresses.
func Routes() []Route {
	return []Route{
		{http.MethodPost, "/v1/predict", api.Predict, "The result of a job: marks, risks, balances, curves, in words and numbers", (*service).ask},
		{http.MethodPost, "/v1/check", api.Check, "The faults of a job, or the job with its defaults filled in", (*service).ask},
		{http.MethodPost, "/v1/variables", api.Variables, "What can be turned on a route of the job", (*service).ask},
		{http.MethodPost, "/v1/limits", api.Limits, "How far things can be pushed", (*service).ask},
		{http.MethodPost, "/v1/window", api.Window, "Which settings of two variables are good", (*service).ask},
		{http.MethodPost, "/v1/table", "", "Many jobs as CSV: an answer or an error for each row", (*service).table},
		{http.MethodGet, "/v1/materials", api.Describe, "Fields with ranges and sources, adhesives, fibres, parts, methods, worked examples", (*service).tell},
		{http.MethodGet, "/v1/schema", api.Schema, "The JSON Schema of a job", (*service).tell},
		{http.MethodGet, "/v1/openapi.json", "", "This description", (*service).openapi},
		{http.MethodGet, "/v1/version", "", "Versions of the service and of its documents", (*service).version},
		{http.MethodGet, "/v1/health", "", "Whether the service answers", (*service).health},
	}
}

// route finds the address and the method.
func (s *service) route(w http.ResponseWriter, r *http.Request) {
	var allowed []string
	for _, to := range Routes() {
		if to.Path != r.URL.Path {
			continue
		}
		if to.Method == r.Method || to.Method == http.MethodGet && r.Method == http.MethodHead {
			to.do(s, w, r, &to)
			return
		}
		allowed = append(allowed, to.Method)
		if to.Method == http.MethodGet {
			allowed = append(allowed, http.MethodHead)
		}
	}
	if allowed == nil {
		refuse(w, problem{Type: "no-such-address", Title: "There is no such address", Status: http.StatusNotFound,
			Detail: "GET /v1/openapi.json lists all addresses."})
		return
	}
	w.Header().Set("Allow", strings.Join(allowed, ", "))
	refuse(w, problem{Type: "method", Title: "This address takes another method", Status: http.StatusMethodNotAllowed,
		Detail: "It takes " + strings.Join(allowed, ", ") + "."})
}
