package trial

import (
	"fmt"
	"strings"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// head reads names and units from the lines above the data: the last line that is as wide as the data, or the two last where
// the lower one holds nothing but units. What stands further up is skipped and said.
func (t *Table) head(above []line, f form, width int, data line) error {
	t.Columns = make([]Column, width)
	for i := range t.Columns {
		t.Columns[i].Name = fmt.Sprintf("column %d", i+1)
	}
	if len(above) == 0 {
		return nil
	}
	row := func(i int) []string {
		if i < 0 {
			return nil
		}
		cells := split(above[i].text, f.separator)
		for len(cells) > width && cells[len(cells)-1] == "" {
			cells = cells[:len(cells)-1]
		}
		return cells
	}
	last := len(above) - 1
	names := row(last)
	if f.separator == ' ' && len(names) != width { // "time [min] mass [g]" with names of several words
		names = joined(names, width)
	}
	if len(names) != width {
		if len(names) > 1 {
			return at(above[last].number, fault.Conflict, words.Told("{count} names over {width} columns (line {number})", "count", len(names), "width", width, "number", data.number),
				words.Told("Give every column one name; decimal commas beside separating commas cannot be told apart: export with semicolons."))
		}
		t.note(words.Told("{count, plural, one {# line above the data skipped.} other {# lines above the data skipped.}}", "count", len(above)))
		return nil
	}
	t.Header = true
	unitsOnly := allUnits(names)
	var upper []string
	if unitsOnly {
		if upper = row(last - 1); len(upper) == width {
			last--
		} else {
			upper = nil
		}
	}
	for i, cell := range names {
		c := &t.Columns[i]
		if upper != nil {
			cell = strings.TrimSpace(upper[i]) + " [" + strings.Trim(strings.TrimSpace(cell), "[]()") + "]"
		} else if unitsOnly {
			cell = "[" + strings.Trim(strings.TrimSpace(cell), "[]()") + "]"
		}
		name, u, found := header(cell)
		if found {
			c.Unit = u.Symbol
		} else if name = strings.TrimSpace(strings.TrimSuffix(name, "[]")); clockFormat(strings.Trim(cell[len(name):], " []()")) {
			c.Unit = strings.ToLower(strings.Trim(cell[len(name):], " []()"))
		}
		if name != "" {
			c.Name = name
		}
		c.Kind = named(name, u)
	}
	if last > 0 {
		t.note(words.Told("{count, plural, one {# line above the names skipped.} other {# lines above the names skipped.}}", "count", last))
	}
	return nil
}

// joined puts the words of a header back together where the columns are parted by spaces: a bracketed unit ends a name.
func joined(words []string, width int) []string {
	var names []string
	current := ""
	for _, w := range words {
		current = strings.TrimSpace(current + " " + w)
		if strings.HasSuffix(w, "]") || strings.HasSuffix(w, ")") {
			names, current = append(names, current), ""
		}
	}
	if current != "" {
		names = append(names, current)
	}
	if len(names) != width {
		return words
	}
	return names
}

// allUnits reports whether a row holds units alone.
func allUnits(cells []string) bool {
	found := false
	for _, c := range cells {
		c = strings.ToLower(strings.Trim(strings.TrimSpace(c), "[]()"))
		_, known := unitNamed(c)
		if !known && !clockFormat(c) && c != "" {
			return false
		}
		found = found || known
	}
	return found
}
