package api

import (
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/words"
)

// Group is a set of operations that are offered together. A program links what the groups that it names need and nothing
// else, which is why they are made by functions and never listed at package level: the browser loads the film's solver with
// Predicting, the searches with Sweep and the regressions with Fitting, each when it is first asked for.
type Group []operation

// operation carries out one kind of request.
type operation struct {
	op Op
	do func(Request) (Response, error)
}

// Offer gives what answers requests with the operations of some groups, in the words of a language.
func Offer(w *words.Words, groups ...Group) func(request []byte) []byte {
	var all Group
	for _, g := range groups {
		all = append(all, g...)
	}
	rules := job.NewRules() // once for all requests
	return func(request []byte) []byte { return written(answer(w, rules, request, all)) }
}

// Handle answers one request with all operations, in the words of a language. It never fails: whatever goes wrong is told in the response. Requests of
// more than MaxRequest bytes are refused unread.
func Handle(w *words.Words, request []byte) []byte {
	return Offer(w, Predicting(), Planning(), Fitting(), Schemas())(request)
}

// carryOut does what a request asks for.
func (g Group) carryOut(q Request) (Response, error) {
	names := make([]string, len(g))
	for i, o := range g {
		if o.op == q.Op {
			return o.do(q)
		}
		names[i] = string(o.op)
	}
	return Response{}, fault.New(fault.Choice, "op", words.Told("{op} is no operation", "op", strconv.Quote(string(q.Op))), words.Told("Ask for {names}.", "names", strings.Join(names, ", ")))
}
