package main

import (
	"bytes"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/wasm/edge/service"
)

// The example does against the real handler what its comment says.
func TestClient(t *testing.T) {
	server := httptest.NewServer(service.New(service.Config{}, service.Languages()...))
	defer server.Close()
	demo, err := job.Encode(job.Demo())
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := run(server.URL, bytes.NewReader(demo), &out); err != nil {
		t.Fatal(err)
	}
	if lines := strings.Split(strings.TrimSpace(out.String()), "\n"); len(lines) != 3 || !strings.Contains(lines[2], "120 % of the speed: ") {
		t.Errorf("printed:\n%s", out.String())
	}
	wrong := bytes.Replace(demo, []byte(`"wet_coat_kg_per_m2": 0`), []byte(`"wet_coat_kg_per_m2": 9`), 1)
	if err := run(server.URL, bytes.NewReader(wrong), &out); err == nil || !strings.Contains(err.Error(), "Film, Wet coat: ") {
		t.Errorf("a job with a fault: %v", err)
	}
}
