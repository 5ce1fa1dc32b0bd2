package api

import "github.com/drywright/drywright/cure/contract"

// Schemas are the operations about the messages themselves.
func Schemas() Group {
	return Group{{Schema, func(q Request) (Response, error) { return Response{Schema: contract.Schema(q.say.Text)}, nil }}}
}
