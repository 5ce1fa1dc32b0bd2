package bridge

import (
	"encoding/json"
	"fmt"
	"syscall/js"

	"github.com/drywright/drywright/cure/api"
	"github.com/drywright/drywright/cure/words"
)

// Answers is the function drywright(Uint8Array) Uint8Array, which answers one request. It runs to its end before it returns,
// so it belongs in a worker. Package api catches the panics of the core; what is caught here is a call with something other than
// one Uint8Array, which would otherwise end the program.
func Answers(groups ...api.Group) Function {
	var offered func([]byte) []byte
	var language *words.Words
	return Function{"drywright", func(_ js.Value, args []js.Value) (answer any) {
		defer func() {
			if p := recover(); p != nil {
				answer = toJS(refusal(fmt.Sprint("panic: ", p)))
			}
		}()
		if spoken == nil {
			return toJS(refusal(unspoken))
		}
		if len(args) != 1 {
			return toJS(refusal("drywright takes one Uint8Array"))
		}
		request := make([]byte, args[0].Length())
		if n := js.CopyBytesToGo(request, args[0]); n != len(request) {
			return toJS(refusal("drywright takes one Uint8Array"))
		}
		if language != spoken {
			offered, language = api.Offer(spoken, groups...), spoken
		}
		return toJS(offered(request))
	}}
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
