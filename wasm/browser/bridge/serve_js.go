// Package bridge is how the page's workers talk to the core: global functions, bytes in and bytes out.
//
// It is compiled for js/wasm only (hence the files' names). Three programs stand on it, each loaded when it is first needed (a fourth, whole, is all of them in one file):
// core answers typing and judges settings, planner leads searches, fitter fits trials. Each names its groups of package api, and
// the linker leaves out what no group of it needs.
package bridge

import "syscall/js"

// Function is one global function of a program.
type Function struct {
	name string
	call func(this js.Value, args []js.Value) any
}

// Serve makes the functions global, drywrightSpeak besides, and calls drywrightReady, where the host has such a function. It never returns: the
// program must live for as long as its functions may be called.
func Serve(functions ...Function) {
	global := js.Global()
	for _, f := range append(functions, speaks()) {
		global.Set(f.name, js.FuncOf(f.call))
	}
	if ready := global.Get("drywrightReady"); ready.Type() == js.TypeFunction {
		ready.Invoke()
	}
	select {}
}
