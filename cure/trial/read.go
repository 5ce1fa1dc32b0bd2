package trial

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
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
		return at(1, fault.Missing, "", words.Told("The text holds no rows: give a table with two columns or more."))
	}
	return at(lines[0].number, fault.Syntax, words.Told("{text} starts a text without two columns of numbers", "text", strconv.Quote(shorten(lines[0].text))),
		words.Told("Give one row a line, its cells parted by tabs, semicolons, commas or spaces."))
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
		return at(lines[first].number, fault.Limit, words.Told("{width} columns", "width", width), words.Told("Give at most {max_columns}.", "max_columns", MaxColumns))
	}
	if n := len(lines) - first; n > MaxRows {
		return at(lines[first+MaxRows].number, fault.Limit, words.Told("{count} rows", "count", n),
			words.Told("Give at most {max_rows}: keep every tenth row.", "max_rows", MaxRows))
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
			return at(l.number, fault.Conflict, words.Told("{count} cells where the other rows have {width}", "count", len(cells), "width", width),
				words.Told("Check the row; decimal commas beside separating commas cannot be told apart: export with semicolons."))
		}
		if len(cells) < 2 && width >= 2 {
			return at(l.number, fault.Syntax, words.Told("{text} is no row of the table", "text", strconv.Quote(shorten(l.text))), words.Told("Delete the line or complete it."))
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
			return path(fault.Type, words.Told("{cells} is no number", "cells", strconv.Quote(shorten(cells[i]))), words.Told("Correct the cell, or empty it if there is no value."))
		case kind == ambiguous:
			return path(fault.Conflict, words.Told("{cells} could be thousands or a fraction", "cells", strconv.Quote(shorten(cells[i]))),
				words.Told("The other cells have a decimal {decimal}: write the number without marks between thousands.", "decimal", map[string]string{"point": words.Told("point"), "comma": words.Told("comma")}[t.Decimal]))
		case kind == number && c.Clock:
			return path(fault.Type, words.Told("{cells} is a plain number among clock times", "cells", strconv.Quote(shorten(cells[i]))), words.Told("Write all times in one way."))
		case kind == clock && !c.Clock:
			return path(fault.Type, words.Told("{cells} is a clock time among plain numbers", "cells", strconv.Quote(shorten(cells[i]))), words.Told("Write all times in one way."))
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
		t.note(words.Told("The times of {name} were read as hours and minutes; head the column [mm:ss] if they are minutes and seconds.", "name", strconv.Quote(c.Name)))
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
