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

// media is what the address answers with.
func (to *Route) media() string {
	switch {
	case to.Path == "/v1/table":
		return "text/csv"
	case to.Op == api.Schema:
		return "application/schema+json"
	}
	return "application/json"
}

// Routes lists all addresses.
func Routes() []Route {
	return []Route{
		{http.MethodPost, "/v1/predict", api.Predict, "The result of a job: marks, risks, balances, curves, in words and numbers", (*service).ask},
		{http.MethodPost, "/v1/check", api.Check, "The faults of a job, or the job with its defaults filled in", (*service).ask},
		{http.MethodPost, "/v1/variables", api.Variables, "What can be turned on a route of the job, and what is asked of it", (*service).ask},
		{http.MethodPost, "/v1/tolerances", api.Tolerances, "What usually varies on a route, and by how much", (*service).ask},
		{http.MethodPost, "/v1/trials", api.Trials, "Settings of a route, judged", (*service).ask},
		{http.MethodPost, "/v1/apply", api.Apply, "The job with settings made", (*service).ask},
		{http.MethodPost, "/v1/limits", api.Limits, "How far things can be pushed", (*service).ask},
		{http.MethodPost, "/v1/window", api.Window, "Which settings of two variables are good", (*service).ask},
		{http.MethodPost, "/v1/spread", api.Spread, "How sure a setting is, and which inputs decide", (*service).ask},
		{http.MethodPost, "/v1/costs", api.Costs, "The cost of a day against its quantity on each route", (*service).ask},
		{http.MethodPost, "/v1/optimise", api.Optimise, "The settings that take least", (*service).ask},
		{http.MethodPost, "/v1/moist_air", api.MoistAir, "A route on a moist-air chart", (*service).ask},
		{http.MethodPost, "/v1/derive", api.Derive, "A number that people lack, from what they can measure", (*service).ask},
		{http.MethodPost, "/v1/trial_forms", api.TrialForms, "What the kinds of trial want to know", (*service).ask},
		{http.MethodPost, "/v1/read_table", api.ReadTable, "What the table of a trial is recognised as", (*service).ask},
		{http.MethodPost, "/v1/fit", api.FitTrial, "Numbers of a job from a trial, with their intervals", (*service).ask},
		{http.MethodPost, "/v1/adopt", api.Adopt, "The job with a fit adopted", (*service).ask},
		{http.MethodPost, "/v1/drop", api.Drop, "The job without a fit", (*service).ask},
		{http.MethodPost, "/v1/table", "", "Many jobs as CSV: an answer or an error for each row", (*service).table},
		{http.MethodGet, "/v1/materials", api.Describe, "Fields with ranges and sources, adhesives, fibres, parts, methods, worked examples", (*service).tell},
		{http.MethodGet, "/v1/demo", api.Demo, "A worked example to start from", (*service).tell},
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
			if p := accepted(r, to.media()); p != nil {
				refuse(w, *p)
				return
			}
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
