package main

import (
	"encoding/json"
	"os"
	"slices"

	"github.com/drywright/drywright/cure/validate"
)

// pageTable is the table as the page shows it: a list for each column, numbers as the command prints them, and what many
// rows share said once.
type pageTable struct {
	Build    string      `json:"build"` // of which sources
	Passed   int         `json:"passed"`
	Failed   int         `json:"failed"`
	Subjects []string    `json:"subjects"`
	Sources  []string    `json:"sources"`
	Notes    []string    `json:"notes"`
	Rows     pageColumns `json:"rows"`
	LeftOut  [][]string  `json:"left_out"` // id, topic, output, reason
}

type pageColumns struct {
	Subject   []int    `json:"subject"` // places in the lists above
	ID        []string `json:"id"`
	Quantity  []string `json:"quantity"`
	Unit      []string `json:"unit"`
	Published []string `json:"published"`
	Ours      []string `json:"ours"`
	Deviation []string `json:"deviation"`
	Tolerance []string `json:"tolerance"`
	Basis     []string `json:"basis"`
	Source    []int    `json:"source"`
	Note      []int    `json:"note"` // -1: none
	Pass      []bool   `json:"pass"`
}

// writePage writes the table for the page.
func writePage(path, build string, r *validate.Report) error {
	text, err := json.Marshal(pageOf(build, r))
	if err != nil {
		return err
	}
	return os.WriteFile(path, append(text, '\n'), 0o644)
}

func pageOf(build string, r *validate.Report) pageTable {
	p := pageTable{Build: build, Failed: r.Failed(), Notes: []string{}, LeftOut: [][]string{}}
	p.Passed = len(r.Rows) - p.Failed
	c := &p.Rows
	for i := range r.Rows {
		row := &r.Rows[i]
		c.Subject = append(c.Subject, place(&p.Subjects, row.Subject))
		c.ID = append(c.ID, row.ID)
		c.Quantity = append(c.Quantity, row.Quantity)
		c.Unit = append(c.Unit, row.Unit)
		c.Published = append(c.Published, expected(row))
		c.Ours = append(c.Ours, number(row.Ours))
		c.Deviation = append(c.Deviation, share(row, row.Deviation))
		c.Tolerance = append(c.Tolerance, share(row, row.Tolerance))
		c.Basis = append(c.Basis, row.Basis)
		c.Source = append(c.Source, place(&p.Sources, row.Source))
		at := -1
		if row.Note != "" {
			at = place(&p.Notes, row.Note)
		}
		c.Note = append(c.Note, at)
		c.Pass = append(c.Pass, row.Pass)
	}
	for _, l := range r.LeftOut {
		p.LeftOut = append(p.LeftOut, []string{l.ID, l.Topic, l.Output, l.Reason})
	}
	return p
}

// place finds a text in a list, and adds it where it is new.
func place(list *[]string, text string) int {
	if i := slices.Index(*list, text); i >= 0 {
		return i
	}
	*list = append(*list, text)
	return len(*list) - 1
}
