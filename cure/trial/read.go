package trial

import (
	"fmt"
	"math"
	"strings"

	"github.com/drywright/drywright/cure/fault"
)

// Read recognises separator, decimal mark and header of a text and reads its columns. Errors are *fault.Fault whose path is
// the line ("line 14"): text that is too long or no text, no two columns of numbers, rows with more cells than the rest, a
// word among numbers, a number that could mean two.
func Read(data []byte) (*Table, error) {
	t := &Table{}
	lines, err := t.lines(data)
	if err != nil {
		return nil, err
	}
	declared := byte(0)
	if s, ok := strings.CutPrefix(strings.ToLower(strings.TrimSpace(lines[0].text)), "sep="); ok && len(s) == 1 {
		declared, lines = s[0], lines[1:]
	}
	f, width, ok := best(lines, declared)
	if !ok {
		return nil, nothing(lines)
	}
	t.Separator, t.Decimal = f.name, "point"
	if f.decimal == ',' {
		t.Decimal = "comma"
	}
	return t, t.fill(lines, f, width)
}

// nothing complains of a text in which no form finds a table.
func nothing(lines []line) error {
	if len(lines) == 0 {
		return at(1, fault.Missing, "", "The text holds no rows: give a table with two columns or more.")
	}
	return at(lines[0].number, fault.Syntax, fmt.Sprintf("%q starts a text without two columns of numbers", shorten(lines[0].text)),
		"Give one row a line, its cells parted by tabs, semicolons, commas or spaces.")
}

// previewed is how many rows a preview shows.
const previewed = 20

// fill cuts all lines into cells and makes columns of them.
func (t *Table) fill(lines []line, f form, width int) error {
	first := -1
	for i, l := range lines {
		cells := split(l.text, f.separator)
		if good := count(cells, f.decimal); len(cells) == width && good >= 2 {
			first = i
			break
		}
	}
	if first < 0 {
		return nothing(lines)
	}
	if width > MaxColumns {
		return at(lines[first].number, fault.Limit, fmt.Sprintf("%d columns", width), fmt.Sprintf("Give at most %d.", MaxColumns))
	}
	if n := len(lines) - first; n > MaxRows {
		return at(lines[first+MaxRows].number, fault.Limit, fmt.Sprintf("%d rows", n),
			fmt.Sprintf("Give at most %d: keep every tenth row.", MaxRows))
	}
	if err := t.head(lines[:first], f, width, lines[first]); err != nil {
		return err
	}
	for _, l := range lines[first:] {
		cells := split(l.text, f.separator)
		for len(cells) > width && cells[len(cells)-1] == "" {
			cells = cells[:len(cells)-1]
		}
		if len(cells) > width {
			return at(l.number, fault.Conflict, fmt.Sprintf("%d cells where the other rows have %d", len(cells), width),
				"Check the row; decimal commas beside separating commas cannot be told apart: export with semicolons.")
		}
		if len(cells) < 2 && width >= 2 {
			return at(l.number, fault.Syntax, fmt.Sprintf("%q is no row of the table", shorten(l.text)), "Delete the line or complete it.")
		}
		for len(cells) < width {
			cells = append(cells, "")
		}
		t.cells, t.Lines = append(t.cells, cells), append(t.Lines, l.number)
	}
	for i := range t.Columns {
		if err := t.column(i, f.decimal); err != nil {
			return err
		}
	}
	t.Preview = t.cells[:min(len(t.cells), previewed)]
	t.dropEmpty()
	t.cells = nil
	return nil
}

func count(cells []string, decimal byte) (good int) {
	for _, c := range cells {
		if _, kind := parse(c, decimal); kind == number || kind == clock {
			good++
		}
	}
	return good
}

// column decides what a column holds and reads it.
func (t *Table) column(i int, decimal byte) error {
	c := &t.Columns[i]
	var counts [5]int
	for _, cells := range t.cells {
		_, kind := parse(cells[i], decimal)
		counts[kind]++
	}
	if counts[word] > counts[number]+counts[clock]+counts[ambiguous] || c.Kind == Coupon {
		c.Words = make([]string, len(t.cells))
		for r, cells := range t.cells {
			c.Words[r] = strings.Trim(cells[i], `"' `)
		}
		return nil
	}
	c.Clock = counts[clock] > counts[number]
	c.Numbers = make([]float64, len(t.cells))
	for r, cells := range t.cells {
		v, kind := parse(cells[i], decimal)
		path := func(code fault.Code, got, advice string) error {
			return at(t.Lines[r], code, fmt.Sprintf("%s: %s", c.Name, got), advice)
		}
		switch {
		case kind == word:
			return path(fault.Type, fmt.Sprintf("%q is no number", shorten(cells[i])), "Correct the cell, or empty it if there is no value.")
		case kind == ambiguous:
			return path(fault.Conflict, fmt.Sprintf("%q could be thousands or a fraction", shorten(cells[i])),
				"The other cells have a decimal "+t.Decimal+": write the number without marks between thousands.")
		case kind == number && c.Clock:
			return path(fault.Type, fmt.Sprintf("%q is a plain number among clock times", shorten(cells[i])), "Write all times in one way.")
		case kind == clock && !c.Clock:
			return path(fault.Type, fmt.Sprintf("%q is a clock time among plain numbers", shorten(cells[i])), "Write all times in one way.")
		}
		c.Numbers[r] = v
	}
	if c.Clock {
		t.clockColumn(c, i)
	}
	return nil
}

// clockColumn settles what two-part times mean: the header's word, else hours and minutes.
func (t *Table) clockColumn(c *Column, i int) {
	twoParts := true
	for _, cells := range t.cells {
		twoParts = twoParts && (isGap(cells[i]) || strings.Count(cells[i], ":") == 1)
	}
	switch {
	case twoParts && c.Unit == "mm:ss":
		for r := range c.Numbers {
			c.Numbers[r] /= 60
		}
	case twoParts && c.Unit != "hh:mm" && c.Unit != "h:mm":
		t.note("The times of %q were read as hours and minutes; head the column [mm:ss] if they are minutes and seconds.", c.Name)
	}
	c.Unit = "s"
	if c.Kind == Unknown {
		c.Kind = Time
	}
}

// dropEmpty removes columns without a single value, which trailing separators make.
func (t *Table) dropEmpty() {
	kept := t.Columns[:0]
	var places []int
	for i, c := range t.Columns {
		empty := c.Words == nil
		for _, v := range c.Numbers {
			empty = empty && math.IsNaN(v)
		}
		if !empty {
			kept, places = append(kept, c), append(places, i)
		}
	}
	t.Columns = kept
	for r, cells := range t.Preview {
		row := make([]string, len(places))
		for k, i := range places {
			row[k] = cells[i]
		}
		t.Preview[r] = row
	}
}

// shorten keeps a message on one line.
func shorten(s string) string {
	const most = 40
	r := []rune(strings.TrimSpace(s))
	if len(r) <= most {
		return string(r)
	}
	return string(r[:most]) + "…"
}
