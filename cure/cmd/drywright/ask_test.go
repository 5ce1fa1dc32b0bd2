package main

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/api"
)

// The verb prints what the core answers, and what is refused ends as the other verbs do.
func TestAsk(t *testing.T) {
	for name, c := range map[string]struct {
		args []string
		code int
		err  string
	}{
		"check":        {nil, computed, ""},
		"read-table":   {nil, computed, ""},
		"fault-range":  {nil, refused, "film.wet_coat_kg_per_m2"},
		"fault-no-job": {[]string{"--language", "de"}, refused, "job"},
	} {
		request, err := os.ReadFile("../../../testdata/requests/" + name + ".json")
		if err != nil {
			t.Fatal(err)
		}
		got := call(string(request), canned, append(append([]string{"ask"}, c.args...), "-")...)
		var r api.Response
		if err := json.Unmarshal([]byte(got.out), &r); err != nil || got.code != c.code || r.OK != (c.code == computed) || !strings.Contains(got.err, c.err) ||
			(c.err == "") != (got.err == "") {
			t.Errorf("%s: %v %d %.300q %q", name, err, got.code, got.out, got.err)
		}
	}
	if got := call("", canned, "ask", "nowhere.json"); got.code != misused {
		t.Errorf("%+v", got)
	}
}
