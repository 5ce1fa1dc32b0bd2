// Package material holds generic records of adhesives, fibres and part materials to start a job from. They are typical
// values, not those of any product: the maker's data sheet goes before them. Each record says where its numbers come
// from and which cautions belong to it; its words are texts on their way (package words), by its ID. Numbers of part materials were
// read as transcribed in the open-source library CalebBell/ht, ht/insulation.py.
//
// A job copies the numbers and keeps the record's ID as a note only, so that a record may be corrected here without
// changing the jobs that were made with it.
package material

import "github.com/drywright/drywright/cure/job"

// Adhesive is one kind of dispersion adhesive. Note says how it dries and cures.
type Adhesive struct {
	ID       string       `json:"id"`
	Label    string       `json:"label"`
	Note     string       `json:"note"`
	Source   string       `json:"source"`
	Cautions []Caution    `json:"cautions"`
	Adhesive job.Adhesive `json:"adhesive"`
}

// Part is one material of a part. Sets names the members of Part that belong to the material; the others (thickness,
// position, carrier and so on) belong to the part and hold their defaults here.
type Part struct {
	ID       string    `json:"id"`
	Label    string    `json:"label"`
	Note     string    `json:"note"`
	Source   string    `json:"source"`
	Cautions []Caution `json:"cautions"`
	Sets     []string  `json:"sets"`
	Part     job.Part  `json:"part"`
}

// Fibre is one fibre. Sets names the members of Pile that belong to the fibre; the others belong to the pile.
type Fibre struct {
	ID       string    `json:"id"`
	Label    string    `json:"label"`
	Note     string    `json:"note"`
	Source   string    `json:"source"`
	Cautions []Caution `json:"cautions"`
	Sets     []string  `json:"sets"`
	Pile     job.Pile  `json:"pile"`
}

// celsius turns a round temperature into kelvin.
func celsius(t float64) float64 {
	const zero = 273.15
	return t + zero
}
