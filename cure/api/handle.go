package api

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/words"
)

// written is a response as bytes.
func written(r Response) []byte {
	text, err := encode(r)
	if err == nil {
		return text
	}
	// JSON has no NaN: a result that holds one is a failure of the core, to be told as such.
	text, _ = encode(Response{Faults: []Fault{}, Version: Version, Message: "panic: " + err.Error()}) // text always encodes
	return text
}

// answer carries out a request with the operations of a group; a panic of the core becomes a message.
func answer(w *words.Words, rules *job.Rules, request []byte, offered Group) (r Response) {
	defer func() {
		if p := recover(); p != nil {
			r = Response{Message: fmt.Sprint("panic: ", p)}
		}
		r.Version = Version
		if r.Faults == nil {
			r.Faults = []Fault{}
		}
	}()
	q, err := read(request)
	q.say, q.rules = report.New(w, q.Units), rules
	if err != nil {
		return q.refusal(err)
	}
	r, err = offered.carryOut(q)
	if err != nil {
		return q.refusal(err)
	}
	r.OK = true
	q.say.Tell(&r)
	return r
}

// read decodes a request. Unknown members are refused, since a misspelt "job" would otherwise compute the defaults.
func read(request []byte) (Request, error) {
	if len(request) > MaxRequest {
		return Request{}, fault.New(fault.Limit, "", words.Told("the request has {count} bytes", "count", len(request)),
			words.Told("Send at most {max_request} bytes.", "max_request", MaxRequest))
	}
	var q Request
	d := json.NewDecoder(bytes.NewReader(request))
	d.DisallowUnknownFields()
	if err := d.Decode(&q); err != nil {
		return q, fault.New(fault.Syntax, "", words.Told("the request is not readable: {err}", "err", err.Error()),
			words.Told(`Send one JSON object: '{"op": "predict", "job": {...}}'.`))
	}
	if d.More() {
		return q, fault.New(fault.Syntax, "", words.Told("the request goes on after its end"), words.Told("Send one JSON object."))
	}
	if q.Units != "" && q.Units != report.SI && q.Units != report.US {
		return q, fault.New(fault.Choice, "units", fmt.Sprintf("%q", q.Units), words.Told("Give si or us."))
	}
	return q, nil
}

// decode reads the job of a request.
func (q Request) decode() (job.Job, error) {
	if len(q.Job) == 0 {
		return job.Job{}, fault.New(fault.Missing, "job", "", words.Told(`Send the job beside "op".`))
	}
	return q.rules.Decode(q.Job)
}

// refusal turns an error into a response. Every error of the core is a fault or a list of them; another one is told in
// its own words.
func (q Request) refusal(err error) Response {
	var list fault.List
	var one *fault.Fault
	switch {
	case errors.As(err, &list):
	case errors.As(err, &one):
		list = fault.List{one}
	default:
		return Response{Message: err.Error()}
	}
	r := Response{Faults: make([]Fault, len(list))}
	for i, f := range list {
		r.Faults[i] = q.told(f)
	}
	return r
}

// told is a fault in words.
func (q Request) told(f *fault.Fault) Fault {
	t := Fault{Fault: *f, Text: q.say.Sentence(f)}
	q.say.Tell(&t)
	return t
}

// encode writes JSON in one line. Signs such as < stay as they are, since no response is put into HTML unescaped.
func encode(r Response) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(r); err != nil {
		return nil, err
	}
	return bytes.TrimRight(b.Bytes(), "\n"), nil
}
