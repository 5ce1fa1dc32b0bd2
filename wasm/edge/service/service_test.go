package service

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/api"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/words/languages"
)

// asked sends one request through the whole handler.
func asked(t *testing.T, c Config, method, path string, body []byte, head ...string) *http.Response {
	t.Helper()
	r := httptest.NewRequest(method, path, bytes.NewReader(body))
	if method == http.MethodPost {
		r.Header.Set("Content-Type", "application/json")
	}
	for i := 0; i+1 < len(head); i += 2 {
		r.Header.Set(head[i], head[i+1])
	}
	w := httptest.NewRecorder()
	New(c, Languages()...).ServeHTTP(w, r)
	return w.Result()
}

func text(t *testing.T, r *http.Response) string {
	t.Helper()
	b, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func demo(t *testing.T) []byte {
	t.Helper()
	b, err := job.Encode(job.Demo())
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// question is the demo job as a question.
func question(t *testing.T) []byte { return append(append([]byte(`{"job":`), demo(t)...), '}') }

// The service adds nothing to what the core answers, with and without "op", in SI and US units.
func TestAnswersAreTheCores(t *testing.T) {
	for _, body := range []string{`{"job":` + string(demo(t)) + `}`, `{"op":"predict","job":` + string(demo(t)) + `}`, ` { "units":"us", "job":` + string(demo(t)) + `}`} {
		r := asked(t, Config{}, "POST", "/v1/predict", []byte(body))
		got := text(t, r)
		whole := body
		if !strings.Contains(body, `"op"`) {
			whole = strings.Replace(body, "{", `{"op":"predict",`, 1)
		}
		want := string(api.Handle(languages.English(), []byte(whole)))
		if r.StatusCode != http.StatusOK || got != want {
			t.Errorf("%.40s: %d, %d bytes, want the %d bytes of the core", body, r.StatusCode, len(got), len(want))
		}
	}
}

func TestLanguage(t *testing.T) {
	for _, c := range []struct{ accepted, want string }{{"", "en"}, {"de-AT,de;q=0.9,en;q=0.5", "de"}, {"fr, en", "en"}, {"tlh", "en"}} {
		r := asked(t, Config{}, "GET", "/v1/materials", nil, "Accept-Language", c.accepted)
		if got := r.Header.Get("Content-Language"); got != c.want {
			t.Errorf("Accept-Language %q is answered in %q, want %q", c.accepted, got, c.want)
		}
	}
}

// What can be kept has a tag; whoever has it is not sent it again. A compressed copy has a weak tag of the same name.
func TestKept(t *testing.T) {
	for _, path := range []string{"/v1/materials", "/v1/schema", "/v1/openapi.json", "/v1/version"} {
		r := asked(t, Config{Build: "b"}, "GET", path, nil)
		tag := r.Header.Get("ETag")
		if r.StatusCode != http.StatusOK || tag == "" || !json.Valid([]byte(text(t, r))) {
			t.Fatalf("%s: %d, tag %q", path, r.StatusCode, tag)
		}
		for _, known := range []string{tag, "W/" + tag, `"other", ` + tag, "*"} {
			if r := asked(t, Config{Build: "b"}, "GET", path, nil, "If-None-Match", known); r.StatusCode != http.StatusNotModified || text(t, r) != "" {
				t.Errorf("%s with %s: %d", path, known, r.StatusCode)
			}
		}
		if r := asked(t, Config{Build: "b"}, "GET", path, nil, "If-None-Match", `"other"`); r.StatusCode != http.StatusOK {
			t.Errorf("%s with another tag: %d", path, r.StatusCode)
		}
	}
}

func TestCompressed(t *testing.T) {
	plain := text(t, asked(t, Config{}, "GET", "/v1/materials", nil))
	r := asked(t, Config{}, "GET", "/v1/materials", nil, "Accept-Encoding", "br, gzip")
	if r.Header.Get("Content-Encoding") != "gzip" || !strings.HasPrefix(r.Header.Get("ETag"), "W/") {
		t.Fatalf("headers %v", r.Header)
	}
	z, err := gzip.NewReader(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	got, err := io.ReadAll(z)
	if err != nil || string(got) != plain {
		t.Errorf("%d bytes back of %d, %v", len(got), len(plain), err)
	}
	for _, accepted := range []string{"gzip;q=0", "br", ""} {
		if r := asked(t, Config{}, "GET", "/v1/materials", nil, "Accept-Encoding", accepted); r.Header.Get("Content-Encoding") != "" {
			t.Errorf("%q is sent %s", accepted, r.Header.Get("Content-Encoding"))
		}
	}
}

// Other origins are let in only where the place of the service says so.
func TestOrigins(t *testing.T) {
	const page = "https://plant.example"
	for _, c := range []struct {
		origins []string
		want    string
	}{{nil, ""}, {[]string{"https://other.example"}, ""}, {[]string{page}, page}, {[]string{"*"}, page}} {
		r := asked(t, Config{Origins: c.origins}, "POST", "/v1/check", question(t), "Origin", page)
		if got := r.Header.Get("Access-Control-Allow-Origin"); got != c.want {
			t.Errorf("origins %v: allowed %q, want %q", c.origins, got, c.want)
		}
		r = asked(t, Config{Origins: c.origins}, "OPTIONS", "/v1/check", nil, "Origin", page, "Access-Control-Request-Method", "POST")
		if allowed := r.StatusCode == http.StatusNoContent; allowed != (c.want != "") {
			t.Errorf("origins %v: asking first gives %d", c.origins, r.StatusCode)
		}
	}
}

func TestHeaders(t *testing.T) {
	for _, path := range []string{"/v1/health", "/v1/nowhere"} {
		h := asked(t, Config{}, "GET", path, nil).Header
		for name, want := range map[string]string{"X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer", "X-Frame-Options": "DENY",
			"Content-Security-Policy": "default-src 'none'; frame-ancestors 'none'"} {
			if h.Get(name) != want {
				t.Errorf("%s: %s is %q", path, name, h.Get(name))
			}
		}
	}
	if id := asked(t, Config{}, "GET", "/v1/health", nil, requestID, "lot-4711").Header.Get(requestID); id != "lot-4711" {
		t.Errorf("the asker's name comes back as %q", id)
	}
	made := asked(t, Config{}, "GET", "/v1/health", nil, requestID, "a b<script>").Header.Get(requestID)
	if len(made) != 24 || made == asked(t, Config{}, "GET", "/v1/health", nil).Header.Get(requestID) {
		t.Errorf("made name %q", made)
	}
}

// The description holds every address, and every reference in it leads somewhere.
func TestOpenAPI(t *testing.T) {
	var d struct {
		OpenAPI    string                                `json:"openapi"`
		Paths      map[string]map[string]json.RawMessage `json:"paths"`
		Components struct {
			Schemas map[string]json.RawMessage `json:"schemas"`
		} `json:"components"`
	}
	whole := OpenAPI("1")
	if err := json.Unmarshal(whole, &d); err != nil {
		t.Fatal(err)
	}
	if d.OpenAPI != "3.1.0" {
		t.Errorf("version %q", d.OpenAPI)
	}
	for _, to := range Routes() {
		if d.Paths[to.Path][strings.ToLower(to.Method)] == nil {
			t.Errorf("%s %s is not described", to.Method, to.Path)
		}
	}
	found := 0
	for _, part := range strings.Split(string(whole), `"$ref":"#/components/schemas/`)[1:] {
		name, _, _ := strings.Cut(part, `"`)
		found++
		if string(d.Components.Schemas[name]) == "" || string(d.Components.Schemas[name]) == "null" {
			t.Errorf("%q is referred to and not described", name)
		}
	}
	if found < 40 {
		t.Errorf("only %d references", found)
	}
}
