// Command fitter reads and fits trials.
package main

import (
	"github.com/drywright/drywright/cure/api"
	"github.com/drywright/drywright/wasm/browser/bridge"
)

func main() { bridge.Serve(bridge.Answers(api.Fitting())) }
