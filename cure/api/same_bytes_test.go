package api

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/drywright/drywright/cure/words/languages"
)

// The same bytes in give the same bytes out: asked again, and from several goroutines at once. What is planned is left out here, since it
// takes minutes and stands on the same runs.
func TestSameBytesInSameBytesOut(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(requestsFolder, "*.json"))
	if err != nil {
		t.Fatal(err)
	}
	asked := 0
	for _, file := range files {
		name := filepath.Base(file)
		if !strings.HasPrefix(name, "predict") && !strings.HasPrefix(name, "fault") && !strings.HasPrefix(name, "moist") && !strings.HasPrefix(name, "derive") {
			continue
		}
		request, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		asked++
		const at, times = 3, 2
		answers := make([][]byte, at*times)
		var wg sync.WaitGroup
		for g := range at {
			wg.Go(func() {
				for k := range times {
					answers[g*times+k] = Handle(languages.English(), bytes.Clone(request))
				}
			})
		}
		wg.Wait()
		for _, a := range answers {
			if !bytes.Equal(a, answers[0]) {
				t.Errorf("%s: two answers to the same bytes", name)
			}
		}
	}
	if asked < 5 {
		t.Fatalf("only %d requests", asked)
	}
}
