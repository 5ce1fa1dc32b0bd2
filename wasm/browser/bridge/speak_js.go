package bridge

import (
	"fmt"
	"syscall/js"

	"github.com/drywright/drywright/cure/words"
)

// spoken is the language of the answers; nil until the page has given its file.
var spoken *words.Words

// unspoken is told to whoever asks too early.
const unspoken = "drywrightSpeak comes first"

// speaks is the function drywrightSpeak(Uint8Array), which takes a language file before anything is asked. It returns an empty
// text, or what is wrong with the file.
func speaks() Function {
	return Function{"drywrightSpeak", func(_ js.Value, args []js.Value) (complaint any) {
		defer func() {
			if p := recover(); p != nil {
				complaint = fmt.Sprint("panic: ", p)
			}
		}()
		if len(args) != 1 {
			return "drywrightSpeak takes one Uint8Array"
		}
		w, err := words.Parse(fromJS(args[0]))
		if err != nil {
			return err.Error()
		}
		spoken = w
		return ""
	}}
}
