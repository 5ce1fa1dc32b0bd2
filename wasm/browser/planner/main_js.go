// Command planner leads the searches of a plan. It has no model of its own: the settings that it wants judged go to a pool of cores.
package main

import "github.com/drywright/drywright/wasm/browser/bridge"

func main() { bridge.Serve(bridge.Sweeps()) }
