// Package job is the question: a coated part, the air around it and the routes that might dry it.
//
// A Job is a versioned JSON document in SI units; the unit stands in each field's name. What each field means, its
// default, accepted and usual range, source and effect is written once, in the Fields table, from which the JSON
// Schema, the TypeScript types, the validation and the page's form are all made. Decode reads a document over the
// defaults, so a document may leave out whatever it does not care about, and reports every fault at once.
package job

// Version is the version of the document that this build writes.
const Version = 1

// Job is one coated part and the routes to compare. A route that is null is not computed.
type Job struct {
	Version    int         `json:"version"`
	Name       string      `json:"name"`
	Note       string      `json:"note"`
	Film       Film        `json:"film"`
	Pile       *Pile       `json:"pile"` // null: the part is coated but not flocked
	Part       Part        `json:"part"`
	Workshop   Workshop    `json:"workshop"`
	Room       *Room       `json:"room"`
	StaticOven *StaticOven `json:"static_oven"`
	Tunnel     *Tunnel     `json:"tunnel"`
	Targets    Targets     `json:"targets"`
	Tariffs    *Tariffs    `json:"tariffs"` // null: no prices
	Costs      *Costs      `json:"costs"`   // null: energy alone is priced
	Numerics   Numerics    `json:"numerics"`
	Fits       []Fit       `json:"fits"` // numbers that trials have told, in the order of adoption
}
