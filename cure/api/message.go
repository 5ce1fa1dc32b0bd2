package api

import (
	"encoding/json"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// Version is the version of requests and responses.
const Version = 1

// MaxRequest is the largest request that is read, in bytes. A job of the largest accepted lists takes a hundredth of it.
const MaxRequest = 2 << 20

// Op says what is asked for.
type Op string

// The operations.
const (
	Describe Op = "describe" // the catalogue: everything a form needs before there is a job
	Predict  Op = "predict"  // the result for the job
	Check    Op = "check"    // the faults of the job; the job completed by the defaults when it has none
	Demo     Op = "demo"     // the demo job
	Schema   Op = "schema"   // the JSON Schema of the job
)

// Request is one question. Job is the job document for predict and check; what it leaves out is taken from the
// defaults.
type Request struct {
	Op  Op              `json:"op"`
	Job json.RawMessage `json:"job,omitempty"`
}

// Response is the answer to one request. OK tells whether the operation was carried out; of the last four fields it
// holds the one that was asked for.
type Response struct {
	OK        bool            `json:"ok"`
	Version   int             `json:"version"`
	Faults    []Fault         `json:"faults"`
	Message   string          `json:"message"`
	Result    *result.Result  `json:"result,omitempty"`
	Catalogue *Catalogue      `json:"catalogue,omitempty"`
	Job       *job.Job        `json:"job,omitempty"`
	Schema    json.RawMessage `json:"schema,omitempty"`
}

// Fault is one complaint with its sentence.
type Fault struct {
	fault.Fault
	Text string `json:"text"`
}
