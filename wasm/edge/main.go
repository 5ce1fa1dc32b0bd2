// Command edge is the service on an edge platform: compiled to WebAssembly it answers one request after the platform has
// started it, so that nothing is worked out before a request needs it. It knows package service alone.
//
// Variables of the platform: ALLOWED_ORIGINS, origins whose pages may ask, apart by commas. Compiled natively it serves the
// same on the address of the library's, for trying; "drywright serve --api" is the one to use there.
package main

import (
	"strings"
	"time"

	"github.com/drywright/drywright/wasm/edge/service"
	"github.com/syumai/workers"
)

// build names the release; the linker sets it.
var build = "development"

// patience is how long the body of a request may take to come: none of the platform's limits ends a body that never does.
const patience = 20 * time.Second

func main() {
	var origins []string
	for _, o := range strings.Split(variable("ALLOWED_ORIGINS"), ",") {
		if o = strings.TrimSpace(o); o != "" {
			origins = append(origins, o)
		}
	}
	workers.Serve(service.New(service.Config{Origins: origins, Patience: patience, Build: build}, service.Languages()...))
}
