package main

import (
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/validate"
)

func TestTable(t *testing.T) {
	report := validate.Report{
		Rows: []validate.Row{
			{ID: "A-1", Subject: "plates", Quantity: "Nu", Source: "a book", Basis: "published", Bound: validate.Equal, Expected: 57.4,
				Upper: 57.4, Ours: 57.41, Deviation: 0.0002, Tolerance: 0.005, Measure: validate.Relative, Pass: true},
			{ID: "A-1", Subject: "plates", Quantity: "T", Unit: "degC", Source: "a book", Basis: "published", Bound: validate.Between,
				Expected: 1, Upper: 3, Ours: 4, Deviation: 1, Tolerance: 0.5, Measure: validate.Absolute, Note: "a reason"},
			{ID: "B-1", Subject: "jets", Quantity: "A", Source: "a table", Basis: "from memory", Bound: validate.Least, Expected: 2,
				Upper: 2, Ours: 3, Deviation: 1, Tolerance: 2, Measure: validate.Factor, Pass: true, Note: "another"},
		},
		LeftOut: []validate.LeftOut{{ID: "C-1", Output: "x", Topic: "words", Reason: "qualitative"}},
	}
	var b strings.Builder
	write(&b, &report)
	text := b.String()
	for _, want := range []string{"PLATES\n", "JETS\n", "0.02 %", "1..3", ">= 2", "x 2", "MISS", "T [1]", "  [1] a reason\n", "  [1] another\n",
		"from memory; a table", "LEFT OUT\n", "words: qualitative",
		"3 rows, 2 passed, 1 failed, 1 left out; the rows are of 2 published entries\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	// Rows of one table are in line: the verdicts stand in one column.
	column := -1
	for _, line := range strings.Split(text, "\n") {
		at := strings.Index(line, " ok ")
		if at < 0 {
			continue
		}
		if column >= 0 && at != column {
			t.Errorf("%q is out of line", line)
		}
		column = at
	}
}

func TestPageTable(t *testing.T) {
	report := validate.Report{
		Rows: []validate.Row{
			{ID: "A-1", Subject: "plates", Quantity: "Nu", Source: "a book", Basis: "published", Bound: validate.Equal, Expected: 57.4,
				Ours: 57.41, Deviation: 0.0002, Tolerance: 0.005, Measure: validate.Relative, Pass: true},
			{ID: "A-2", Subject: "plates", Quantity: "T", Unit: "degC", Source: "a book", Basis: "derived", Bound: validate.Between,
				Expected: 1, Upper: 3, Ours: 4, Deviation: 1, Tolerance: 0.5, Measure: validate.Absolute, Note: "a reason"},
		},
		LeftOut: []validate.LeftOut{{ID: "C-1", Output: "x", Topic: "words", Reason: "qualitative"}},
	}
	p := pageOf("b1", &report)
	if p.Build != "b1" || p.Passed != 1 || p.Failed != 1 || len(p.Subjects) != 1 || len(p.Sources) != 1 {
		t.Errorf("%+v", p)
	}
	c := p.Rows
	if c.Published[1] != "1..3" || c.Deviation[0] != "0.02 %" || c.Note[0] != -1 || p.Notes[c.Note[1]] != "a reason" || c.Pass[1] {
		t.Errorf("%+v", c)
	}
	if len(p.LeftOut) != 1 || p.LeftOut[0][3] != "qualitative" {
		t.Errorf("%v", p.LeftOut)
	}
}
