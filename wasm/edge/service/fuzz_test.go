package service

import (
	"bytes"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"testing"
)

// Whatever a client sends, it gets an answer or a problem document, and never a failure of ours. Steps and settings are few, so
// that a question that is well formed ends soon; a job has to ask for as few to be computed.
func FuzzService(f *testing.F) {
	for _, seed := range []struct{ path, media, body string }{
		{"/v1/check", "application/json", `{"job":{"version":1}}`}, {"/v1/check", "application/json", `{"op":"check","job":[]}`},
		{"/v1/table?base=shop", "text/csv", "name,film.wet_coat_kg_per_m2\na,0\n"}, {"/v1/table", "text/csv", "\"a\n"},
		{"/v1/table", "text/csv", "film.wet_coat_kg_per_m2\n0.1\n1\n"},
		{"/v1/predict", "application/json", `{"job":{"version":1,"numerics":{"film_cells":8,"step_budget":1000},"tunnel":{"zones":[{"air":{}},{"air":{}}]}}}`},
		{"/v1/limits", "application/json", `{"job":{"version":1,"room":null,"numerics":{"film_cells":8,"step_budget":1000},"tunnel":{}},"limits":{"study":{"route":"tunnel"},"limits":[{"variable":"line_speed"}]}}`},
		{"/v1/x", "", ""}, {"/v1/schema", "", ""},
	} {
		f.Add(seed.path, seed.media, []byte(seed.body))
	}
	handler := New(Config{Limits: Limits{Settings: 4, Cells: 24, Budget: 1000, Search: 3000, Rows: 2}}, Languages()...)
	f.Fuzz(func(t *testing.T, path, media string, body []byte) {
		r := httptest.NewRequest(http.MethodPost, "http://service/", bytes.NewReader(body))
		r.URL.Path = path
		r.Header.Set("Content-Type", media)
		w := httptest.NewRecorder()
		handler.ServeHTTP(w, r)
		if w.Code >= 500 {
			t.Errorf("status %d: %s", w.Code, w.Body)
		}
		if w.Code >= 400 && !json.Valid(w.Body.Bytes()) {
			t.Errorf("status %d without a document: %s", w.Code, w.Body)
		}
	})
}
