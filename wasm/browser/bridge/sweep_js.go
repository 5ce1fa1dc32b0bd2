package bridge

import (
	"errors"
	"fmt"
	"syscall/js"

	"github.com/drywright/drywright/cure/api"
)

// Sweeps is the function drywrightSweep(request Uint8Array, host, workers), which promises the Uint8Array that answers one
// planning request. The host has two functions: pool(Uint8Array[]) promises the answers to requests for drywright, in their
// order, and tell(Uint8Array) takes what is known so far. A pool whose promise is rejected ends the sweep.
func Sweeps() Function { return Function{"drywrightSweep", sweep} }

func sweep(_ js.Value, args []js.Value) any {
	executor := js.FuncOf(func(_ js.Value, settle []js.Value) any {
		go func() {
			settle[0].Invoke(toJS(swept(args)))
		}()
		return nil
	})
	defer executor.Release()
	return js.Global().Get("Promise").New(executor)
}

func swept(args []js.Value) (answer []byte) {
	defer func() {
		if p := recover(); p != nil {
			answer = refusal(fmt.Sprint("panic: ", p))
		}
	}()
	if spoken == nil {
		return refusal(unspoken)
	}
	if len(args) != 3 {
		return refusal("drywrightSweep takes a Uint8Array, a host and a number of workers")
	}
	request, host := fromJS(args[0]), args[1]
	pool := func(requests [][]byte) ([][]byte, error) {
		list := js.Global().Get("Array").New(len(requests))
		for i, r := range requests {
			list.SetIndex(i, toJS(r))
		}
		replies, err := await(host.Call("pool", list))
		if err != nil {
			return nil, err
		}
		answers := make([][]byte, replies.Length())
		for i := range answers {
			answers[i] = fromJS(replies.Index(i))
		}
		return answers, nil
	}
	tell := func(news []byte) { host.Call("tell", toJS(news)) }
	return api.Sweep(spoken, request, api.Host{Pool: pool, Workers: args[2].Int(), Tell: tell})
}

// await blocks this goroutine, and no other, until a promise is settled.
func await(promise js.Value) (js.Value, error) {
	kept, broken := make(chan js.Value, 1), make(chan js.Value, 1)
	keep := js.FuncOf(func(_ js.Value, v []js.Value) any { kept <- v[0]; return nil })
	defer keep.Release()
	breaks := js.FuncOf(func(_ js.Value, v []js.Value) any { broken <- v[0]; return nil })
	defer breaks.Release()
	promise.Call("then", keep, breaks)
	select {
	case v := <-kept:
		return v, nil
	case v := <-broken:
		return js.Undefined(), errors.New(js.Global().Get("String").Invoke(v).String())
	}
}

// fromJS copies the bytes of a Uint8Array; it panics on anything else.
func fromJS(array js.Value) []byte {
	b := make([]byte, array.Length())
	js.CopyBytesToGo(b, array)
	return b
}
