package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/drywright/drywright/cure/validate"
)

// columns are the widths of the table; the source ends the line.
const columns = "%-22s %-4s %-52s %13s %13s %11s %9s  %-13s %s\n"

// write prints the table by subject, then what was left out, then the sum.
func write(w io.Writer, r *validate.Report) {
	subject := ""
	var notes []string
	closeGroup := func() {
		for i, n := range notes {
			fmt.Fprintf(w, "  [%d] %s\n", i+1, n)
		}
		notes = nil
	}
	for i := range r.Rows {
		row := &r.Rows[i]
		if row.Subject != subject {
			closeGroup()
			subject = row.Subject
			fmt.Fprintf(w, "\n%s\n", strings.ToUpper(subject))
			fmt.Fprintf(w, columns, "id", "", "quantity", "expected", "ours", "deviation", "tolerance", "unit", "basis; source")
		}
		mark := ""
		if row.Note != "" {
			mark, notes = note(notes, row.Note)
		}
		fmt.Fprintf(w, columns, row.ID, verdict(row.Pass), quantity(row, mark), expected(row), number(row.Ours),
			share(row, row.Deviation), share(row, row.Tolerance), row.Unit, row.Basis+"; "+row.Source)
	}
	closeGroup()
	fmt.Fprintf(w, "\nLEFT OUT\n")
	for _, l := range r.LeftOut {
		fmt.Fprintf(w, "%-22s %-32s %s: %s\n", l.ID, l.Output, l.Topic, l.Reason)
	}
	failed := r.Failed()
	entries := map[string]bool{}
	for i := range r.Rows {
		entries[r.Rows[i].ID] = true
	}
	fmt.Fprintf(w, "\n%d rows, %d passed, %d failed, %d left out; the rows are of %d published entries\n", len(r.Rows),
		len(r.Rows)-failed, failed, len(r.LeftOut), len(entries))
}

// note numbers a remark within its group.
func note(notes []string, text string) (mark string, all []string) {
	for i, n := range notes {
		if n == text {
			return fmt.Sprintf(" [%d]", i+1), notes
		}
	}
	notes = append(notes, text)
	return fmt.Sprintf(" [%d]", len(notes)), notes
}

func verdict(pass bool) string {
	if pass {
		return "ok"
	}
	return "MISS"
}

func quantity(row *validate.Row, mark string) string { return row.Quantity + mark }

func expected(row *validate.Row) string {
	switch row.Bound {
	case validate.Between:
		return number(row.Expected) + ".." + number(row.Upper)
	case validate.Least:
		return ">= " + number(row.Expected)
	case validate.Most:
		return "<= " + number(row.Expected)
	}
	return number(row.Expected)
}

func number(v float64) string { return fmt.Sprintf("%.6g", v) }

// share prints a deviation or a tolerance in its measure.
func share(row *validate.Row, v float64) string {
	switch row.Measure {
	case validate.Relative:
		return fmt.Sprintf("%.3g %%", 100*v)
	case validate.Factor:
		return fmt.Sprintf("x %.3g", v)
	}
	return fmt.Sprintf("%.3g", v)
}
