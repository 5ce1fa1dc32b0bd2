// Command browser is the core as the page's worker loads it: one global function, bytes in and bytes out.
//
// It is compiled for js/wasm only (hence the file's name) and knows package api alone. The global function
// drywright(Uint8Array) Uint8Array answers one request of package api; it runs to its end before it returns, so it
// belongs in a worker. drywrightSweep(request, pool, workers) answers a planning request in a promise, while others carry out
// what it asks of them. Once both stand, the global function drywrightReady is called, where the host has one.
package main

import (
	"encoding/json"
	"fmt"
	"syscall/js"

	"github.com/drywright/drywright/cure/api"
)

func main() {
	global := js.Global()
	global.Set("drywright", js.FuncOf(call))
	global.Set("drywrightSweep", js.FuncOf(sweep))
	if ready := global.Get("drywrightReady"); ready.Type() == js.TypeFunction {
		ready.Invoke()
	}
	select {} // the program must live for as long as its function may be called
}

// call answers one request. api.Handle catches the panics of the core; what is caught here is a call with something
// other than one Uint8Array, which would otherwise end the program.
func call(_ js.Value, args []js.Value) (answer any) {
	defer func() {
		if p := recover(); p != nil {
			answer = toJS(refusal(fmt.Sprint("panic: ", p)))
		}
	}()
	if len(args) != 1 {
		return toJS(refusal("drywright takes one Uint8Array"))
	}
	request := make([]byte, args[0].Length())
	if n := js.CopyBytesToGo(request, args[0]); n != len(request) {
		return toJS(refusal("drywright takes one Uint8Array"))
	}
	return toJS(api.Handle(request))
}

// refusal is an answer of package api that holds a message only.
func refusal(message string) []byte {
	answer, _ := json.Marshal(api.Response{Version: api.Version, Message: message}) // plain text always marshals
	return answer
}

// toJS copies bytes into a fresh Uint8Array.
func toJS(b []byte) js.Value {
	array := js.Global().Get("Uint8Array").New(len(b))
	js.CopyBytesToJS(array, b)
	return array
}
