package main

import (
	"encoding/json"
	"flag"
	"fmt"

	"github.com/drywright/drywright/cure/api"
)

// askVerb answers one request of package api: for scripts that want the documents of the service without a server.
func (p *program) askVerb(args []string) int {
	flags := flag.NewFlagSet("ask", flag.ContinueOnError)
	files, code := p.parse("ask", flags, args, 1)
	if code >= 0 {
		return code
	}
	request, err := p.read(files[0])
	if err != nil {
		fmt.Fprintf(p.stderr, "drywright ask: %v\n", err)
		return misused
	}
	answer := api.Handle(p.say.Words, request)
	var said struct {
		OK      bool        `json:"ok"`
		Message string      `json:"message"`
		Faults  []api.Fault `json:"faults"`
	}
	if err := json.Unmarshal(answer, &said); err != nil {
		return p.refuse(err)
	}
	if code := p.print(string(answer) + "\n"); code != computed || said.OK {
		return code
	}
	for _, f := range said.Faults {
		fmt.Fprintln(p.stderr, placed(f.Text, f.Path))
	}
	if said.Message != "" {
		fmt.Fprintln(p.stderr, said.Message)
	}
	return refused
}
