// Command headers prints the file _headers, by which the platform gives the files of the page the headers that they have
// when the command serves them.
package main

import (
	"fmt"
	"net/http"
	"slices"

	"github.com/drywright/drywright/site"
	"github.com/drywright/drywright/wasm/edge/service"
)

func main() {
	h := http.Header{}
	service.Headers(h)
	h.Set("Content-Security-Policy", site.Policy())
	h.Set("Cache-Control", "no-cache")
	var names []string
	for name := range h {
		names = append(names, name)
	}
	slices.Sort(names)
	fmt.Println("/*")
	for _, name := range names {
		fmt.Printf("  %s: %s\n", name, h.Get(name))
	}
}
