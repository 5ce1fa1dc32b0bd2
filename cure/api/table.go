package api

import (
	"errors"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/trial"
)

// Table is a text as it was recognised, to be shown before it is used. Use says how the kind of trial that was named takes it; null
// where none was named.
type Table struct {
	Separator string        `json:"separator"` // tab, semicolon, comma, bar, spaces
	Decimal   string        `json:"decimal"`   // point, comma
	Encoding  string        `json:"encoding"`
	Header    bool          `json:"header"`
	Columns   []TableColumn `json:"columns"`
	Preview   [][]string    `json:"preview"` // the first rows as they are written
	Rows      int           `json:"rows"`
	Notes     []string      `json:"notes"`
	Use       *TableUse     `json:"use"`
}

// TableColumn is one column as it was recognised.
type TableColumn struct {
	Name  string         `json:"name"`
	Unit  string         `json:"unit"` // empty: none was found
	Kind  trial.Quantity `json:"kind"` // empty: not recognised
	Clock bool           `json:"clock"`
	Words bool           `json:"words"` // holds words, not numbers
}

// TableUse is how a kind of trial takes the table: which quantity it found, in SI, in the first rows that count.
type TableUse struct {
	Rows    int          `json:"rows"` // that count
	Columns []UsedColumn `json:"columns"`
	Notes   []string     `json:"notes"`
	Fault   *Fault       `json:"fault"` // why it cannot be taken so; null: it can
}

// UsedColumn is one quantity in SI; a gap is null.
type UsedColumn struct {
	Kind   trial.Quantity `json:"kind"`
	Values []*float64     `json:"values"`
}

// firstRows is how many converted rows are shown.
const firstRows = 20

// readTable answers read_table.
func (q Request) readTable() (Response, error) {
	t, err := trial.Read([]byte(q.Table))
	if err != nil {
		return Response{}, err
	}
	out := &Table{Separator: t.Separator, Decimal: t.Decimal, Encoding: t.Encoding, Header: t.Header, Columns: []TableColumn{},
		Preview: t.Preview, Rows: t.Rows(), Notes: append([]string{}, t.Notes...)}
	for _, c := range t.Columns {
		out.Columns = append(out.Columns, TableColumn{Name: c.Name, Unit: c.Unit, Kind: c.Kind, Clock: c.Clock, Words: c.Words != nil})
	}
	if q.Trial != nil && q.Trial.Kind != "" {
		out.Use = q.use(t, q.Trial.Kind, q.Trial.Columns)
	}
	return Response{Table: out}, nil
}

// use says how a kind of trial takes a table.
func (q Request) use(t *trial.Table, kind trial.Kind, choices []trial.Choice) *TableUse {
	out := &TableUse{Columns: []UsedColumn{}, Notes: []string{}}
	d, err := t.Use(kind, choices)
	if err != nil {
		var f *fault.Fault
		if errors.As(err, &f) {
			told := q.told(f)
			out.Fault = &told
		}
		return out
	}
	out.Rows, out.Notes = len(d.Lines), append(out.Notes, d.Notes...)
	for _, quantity := range trial.Quantities() {
		values := d.Numbers[quantity]
		if values == nil {
			continue
		}
		c := UsedColumn{Kind: quantity}
		for _, v := range values[:min(len(values), firstRows)] {
			if v == v { // a gap is not a number
				c.Values = append(c.Values, &v)
			} else {
				c.Values = append(c.Values, nil)
			}
		}
		out.Columns = append(out.Columns, c)
	}
	return out
}
