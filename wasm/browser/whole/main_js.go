// Command whole is all of the core in one program, for the page in one file, which would otherwise hold most of it three
// times.
package main

import (
	"github.com/drywright/drywright/cure/api"
	"github.com/drywright/drywright/wasm/browser/bridge"
)

func main() {
	bridge.Serve(bridge.Answers(api.Predicting(), api.Fitting()), bridge.Sweeps())
}
