package service

import (
	"bytes"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/iotest"
	"time"

	"github.com/drywright/drywright/cure/job"
)

// patched is the demo question with one member of its job changed.
func patched(t *testing.T, change func(job map[string]any)) []byte {
	t.Helper()
	var j map[string]any
	if err := json.Unmarshal(demo(t), &j); err != nil {
		t.Fatal(err)
	}
	change(j)
	return encode(map[string]any{"job": j})
}

// within is how long a hostile request may keep the service busy: seconds on a machine at rest, most of them milliseconds, and
// as much again for a machine that runs other tests.
const within = 15 * time.Second

// Every hostile request ends in the right 4xx, as a problem document, and soon.
func TestHostileRequests(t *testing.T) {
	tenThousandZones := patched(t, func(j map[string]any) {
		tunnel := j["tunnel"].(map[string]any)
		zone := tunnel["zones"].([]any)[0]
		zones := make([]any, 10_000)
		for i := range zones {
			zones[i] = zone
		}
		tunnel["zones"] = zones
	})
	roomy := Config{Limits: Limits{Body: 64 << 20}}
	for name, c := range map[string]struct {
		config       Config
		method, path string
		body         []byte
		head         []string
		want         int
	}{
		"huge":                      {Config{}, "POST", "/v1/predict", bytes.Repeat([]byte(" "), 300<<10), nil, 413},
		"huge, beyond the core":     {roomy, "POST", "/v1/predict", append([]byte(`{"job":"`), append(bytes.Repeat([]byte("a"), 3<<20), `"}`...)...), nil, 413},
		"deep":                      {Config{}, "POST", "/v1/predict", []byte(`{"job":` + strings.Repeat("[", 5000) + strings.Repeat("]", 5000) + "}"), nil, 400},
		"deep in a string is not":   {Config{}, "POST", "/v1/predict", []byte(`{"job":"` + strings.Repeat("[", 500) + `"}`), nil, 422},
		"empty":                     {Config{}, "POST", "/v1/predict", nil, nil, 400},
		"no object":                 {Config{}, "POST", "/v1/predict", []byte(`[1,2]`), nil, 400},
		"two objects":               {Config{}, "POST", "/v1/predict", append(question(t), question(t)...), nil, 400},
		"cut off":                   {Config{}, "POST", "/v1/predict", question(t)[:200], nil, 400},
		"no job":                    {Config{}, "POST", "/v1/predict", []byte(`{}`), nil, 422},
		"unknown member":            {Config{}, "POST", "/v1/predict", []byte(`{"jib":{}}`), nil, 400},
		"job of a newer version":    {Config{}, "POST", "/v1/check", patched(t, func(j map[string]any) { j["version"] = 99 }), nil, 422},
		"ten thousand zones":        {roomy, "POST", "/v1/predict", tenThousandZones, nil, 413},
		"NaN":                       {Config{}, "POST", "/v1/predict", []byte(`{"job":{"version":1,"film":{"wet_coat_kg_per_m2":NaN}}}`), nil, 400},
		"NaN in quotes":             {Config{}, "POST", "/v1/predict", patched(t, func(j map[string]any) { j["film"].(map[string]any)["wet_coat_kg_per_m2"] = "NaN" }), nil, 422},
		"a number of 400 digits":    {Config{}, "POST", "/v1/predict", []byte(`{"job":{"version":1,"film":{"wet_coat_kg_per_m2":` + strings.Repeat("9", 400) + `}}}`), nil, 422},
		"out of range":              {Config{}, "POST", "/v1/predict", patched(t, func(j map[string]any) { j["film"].(map[string]any)["wet_coat_kg_per_m2"] = -1 }), nil, 422},
		"a grid too fine":           {Config{}, "POST", "/v1/predict", patched(t, func(j map[string]any) { j["numerics"] = map[string]any{"film_cells": 100} }), nil, 413},
		"a budget too large":        {Config{}, "POST", "/v1/limits", patched(t, func(j map[string]any) { j["numerics"] = map[string]any{"step_budget": 1000000} }), nil, 413},
		"a window too fine":         {Config{Limits: Limits{Settings: 20}}, "POST", "/v1/window", windowQuestion(t), nil, 413},
		"text":                      {Config{}, "POST", "/v1/predict", question(t), []string{"Content-Type", "text/plain"}, 415},
		"no type":                   {Config{}, "POST", "/v1/predict", question(t), []string{"Content-Type", ""}, 415},
		"latin-1":                   {Config{}, "POST", "/v1/predict", question(t), []string{"Content-Type", "application/json; charset=iso-8859-1"}, 415},
		"compressed":                {Config{}, "POST", "/v1/predict", question(t), []string{"Content-Encoding", "gzip"}, 415},
		"GET where POST":            {Config{}, "GET", "/v1/predict", nil, nil, 405},
		"DELETE":                    {Config{}, "DELETE", "/v1/materials", nil, nil, 405},
		"POST where GET":            {Config{}, "POST", "/v1/schema", nil, nil, 405},
		"nowhere":                   {Config{}, "GET", "/v1/secrets", nil, nil, 404},
		"up and out":                {Config{}, "GET", "/v1/../../etc/passwd", nil, nil, 404},
		"up and out, in disguise":   {Config{}, "GET", "/v1/%2e%2e/%2e%2e/etc/passwd", nil, nil, 404},
		"two slashes":               {Config{}, "GET", "//v1/health", nil, nil, 404},
		"an end too many":           {Config{}, "POST", "/v1/predict/", question(t), nil, 404},
		"question for elsewhere":    {Config{}, "POST", "/v1/check", []byte(`{"op":"predict","job":{}}`), nil, 400},
		"operation that is none":    {Config{}, "POST", "/v1/guess", question(t), nil, 404},
		"a member twice":            {Config{}, "POST", "/v1/predict", []byte(`{"units":"us","units":"si","job":{}}`), nil, 400},
		"twice, once in capitals":   {Config{}, "POST", "/v1/predict", []byte(`{"job":{},"Job":{}}`), nil, 400},
		"twice, further in":         {Config{}, "POST", "/v1/limits", []byte(`{"job":{},"limits":{"study":{"route":"room","route":"tunnel"}}}`), nil, 400},
		"twice in the job":          {Config{}, "POST", "/v1/check", []byte(`{"job":{"version":1,"name":"a","name":"b"}}`), nil, 422},
		"not UTF-8":                 {Config{}, "POST", "/v1/predict", []byte("{\"job\":\"\xff\"}"), nil, 400},
		"wants a picture":           {Config{}, "POST", "/v1/predict", question(t), []string{"Accept", "image/png, text/*"}, 406},
		"wants all but JSON":        {Config{}, "GET", "/v1/materials", nil, []string{"Accept", "*/*, application/json;q=0"}, 406},
		"units that are none":       {Config{}, "GET", "/v1/materials?units=stone", nil, nil, 422},
		"too many resamplings":      {Config{}, "POST", "/v1/fit", encode(map[string]any{"job": json.RawMessage(demo(t)), "table": "a", "trial": map[string]any{"kind": "cure", "bootstrap": 2000}}), nil, 413},
		"table with a column twice": {Config{}, "POST", "/v1/table", []byte("name,name\na,b\n"), []string{"Content-Type", "text/csv"}, 400},
		"table of no rows":          {Config{}, "POST", "/v1/table", []byte("name\n"), []string{"Content-Type", "text/csv"}, 400},
		"table with ragged rows":    {Config{}, "POST", "/v1/table", []byte("name,film.wet_coat_kg_per_m2\na\n"), []string{"Content-Type", "text/csv"}, 400},
		"table too long":            {Config{}, "POST", "/v1/table", []byte("name\n" + strings.Repeat("a\n", 300)), []string{"Content-Type", "text/csv"}, 413},
		"table on an unknown base":  {Config{}, "POST", "/v1/table?base=../x", []byte("name\na\n"), []string{"Content-Type", "text/csv"}, 400},
	} {
		t.Run(name, func(t *testing.T) {
			begun := time.Now()
			r := asked(t, c.config, c.method, c.path, c.body, c.head...)
			said := text(t, r)
			if r.StatusCode != c.want {
				t.Errorf("status %d, want %d: %.300s", r.StatusCode, c.want, said)
			}
			var p problem
			if err := json.Unmarshal([]byte(said), &p); err != nil || r.Header.Get("Content-Type") != "application/problem+json" || p.Status != r.StatusCode ||
				p.Title == "" || !strings.HasPrefix(p.Type, problemType) {
				t.Errorf("no problem document: %v %.300s", err, said)
			}
			if r.StatusCode == http.StatusMethodNotAllowed && r.Header.Get("Allow") == "" {
				t.Error("does not say which methods are allowed")
			}
			if spent := time.Since(begun); spent > within {
				t.Errorf("took %v", spent)
			}
		})
	}
}

func windowQuestion(t *testing.T) []byte {
	t.Helper()
	j := job.Demo()
	j.Room, j.StaticOven = nil, nil
	b, err := job.Encode(j)
	if err != nil {
		t.Fatal(err)
	}
	return encode(map[string]any{"job": json.RawMessage(b), "window": map[string]any{"study": map[string]any{"route": "tunnel"},
		"x": map[string]any{"variable": "line_speed"}, "y": map[string]any{"variable": "zone_temperatures"}}})
}

// A body that does not come is waited for as long as the place of the service says, whether it would be read or not.
func TestPatience(t *testing.T) {
	for path, want := range map[string]int{"/v1/predict": http.StatusRequestTimeout, "/v1/nowhere": http.StatusRequestTimeout} {
		body, never := io.Pipe()
		defer never.Close()
		w := httptest.NewRecorder()
		r := httptest.NewRequest(http.MethodPost, path, body)
		r.Header.Set("Content-Type", "application/json")
		New(Config{Patience: 20 * time.Millisecond}, Languages()...).ServeHTTP(w, r)
		if w.Code != want {
			t.Errorf("%s: %d, want %d", path, w.Code, want)
		}
	}
	r := asked(t, Config{Patience: time.Minute}, "POST", "/v1/check", question(t))
	if want := text(t, asked(t, Config{}, "POST", "/v1/check", question(t))); text(t, r) != want {
		t.Error("a body that comes in time is not read as it is")
	}
}

// A body that breaks off is told as that, wherever it is waited for: what came of it is not taken for all of it.
func TestBodyThatBreaksOff(t *testing.T) {
	whole := question(t)
	for place, c := range map[string]Config{"natively": {}, "on the platform": {Patience: time.Minute}} {
		t.Run(place, func(t *testing.T) {
			body := io.MultiReader(bytes.NewReader(whole), iotest.ErrReader(io.ErrUnexpectedEOF))
			r := httptest.NewRequest(http.MethodPost, "/v1/check", body)
			r.Header.Set("Content-Type", "application/json")
			w := httptest.NewRecorder()
			New(c, Languages()...).ServeHTTP(w, r)
			if w.Code != http.StatusBadRequest || !strings.Contains(w.Body.String(), "cut-off") {
				t.Errorf("status %d: %.300s", w.Code, w.Body)
			}
		})
	}
}

// The examples are those of RFC 9110, 12.5.1, and its rule that the closest range decides.
func TestAccept(t *testing.T) {
	for header, want := range map[string]bool{
		"application/json": true, "*/*": true, "application/*;q=0.2": true, "text/html, */*;q=0.1": true, "text/*": false, "application/json;q=0": false,
		"*/*;q=0, application/json": true, "application/json;q=0, */*": false, "application/*;q=0, application/json;q=0.5": true, "application/json; charset=utf-8": true,
		";": false, "audio/*; q=0.2, audio/basic": false,
	} {
		if got := takes(header, "application/json"); got != want {
			t.Errorf("%q: %v, want %v", header, got, want)
		}
	}
}

// A search that takes too many steps ends with what it may take, and rows of a table that share them say what is missing.
func TestStepsAreShared(t *testing.T) {
	few := Config{Limits: Limits{Search: 2500}}
	r := asked(t, few, "POST", "/v1/window", windowQuestion(t))
	if said := text(t, r); r.StatusCode != 413 || !strings.Contains(said, "more than 2500 steps") {
		t.Errorf("status %d: %.300s", r.StatusCode, said)
	}
	trials := encode(map[string]any{"job": json.RawMessage(demo(t)), "trials": map[string]any{"study": map[string]any{"route": "tunnel"},
		"trials": []any{[]any{}, []any{}, []any{}, []any{}, []any{}, []any{}, []any{}, []any{}, []any{}, []any{}, []any{}, []any{}}}})
	r = asked(t, few, "POST", "/v1/trials", trials)
	if said := text(t, r); r.StatusCode != 413 || !strings.Contains(said, "more than 2500 steps") {
		t.Errorf("status %d: %.300s", r.StatusCode, said)
	}
	body := []byte("film.wet_coat_kg_per_m2\n0.1\n0.12\n")
	r = asked(t, few, "POST", "/v1/table?base=line", body, "Content-Type", "text/csv")
	if said := text(t, r); r.StatusCode != 200 || strings.Count(said, "the budget of 1250 steps for all runs of the job is spent") != 2 {
		t.Errorf("status %d: %s", r.StatusCode, said)
	}
	// A job that leaves its grid and its budget out has the usual ones, which may be too much too.
	bare := encode(map[string]any{"job": map[string]any{"version": 1}})
	if r := asked(t, Config{Limits: Limits{Budget: 50000}}, "POST", "/v1/predict", bare); r.StatusCode != 413 {
		t.Errorf("status %d", r.StatusCode)
	}
}
