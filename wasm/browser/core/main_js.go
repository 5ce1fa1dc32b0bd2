// Command core is the core as typing and the crew of a sweep need it.
package main

import (
	"github.com/drywright/drywright/cure/api"
	"github.com/drywright/drywright/wasm/browser/bridge"
)

func main() { bridge.Serve(bridge.Answers(api.Predicting())) }
