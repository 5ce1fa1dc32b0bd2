package trial

import (
	"fmt"

	"github.com/drywright/drywright/cure/fault"
)

// Limits of a text. A logger that writes every second fills 50 000 rows in fourteen hours.
const (
	MaxBytes   = 1 << 20
	MaxRows    = 50_000
	MaxColumns = 40
)

// Table is a text read into columns. Rows stand in the order of the text.
type Table struct {
	Separator string     // "tab", "semicolon", "comma", "bar" or "spaces"
	Decimal   string     // "point" or "comma"
	Encoding  string     // "UTF-8", "UTF-16" or "Latin-1"
	Header    bool       // whether a line of names stands above the data
	Columns   []Column   // what stands in the columns, left to right
	Lines     []int      // for every row its line in the text, counted from one
	Notes     []string   // what was skipped or taken in one of several ways, whole sentences
	Preview   [][]string // the first rows as they are written
	cells     [][]string
}

// Column is one column. Numbers are in SI; a gap is NaN. A column of words has Words instead.
type Column struct {
	Name    string    // as the header has it; "column 2" without a header
	Unit    string    // symbol of the unit that was found, "" where none was
	Kind    Quantity  // what it measures, as far as name and unit tell
	Clock   bool      // written as hh:mm, hh:mm:ss or with a date; in seconds
	Numbers []float64 // nil for words; in the unit as written until Use converts them
	Words   []string
}

// Rows is the number of rows.
func (t *Table) Rows() int { return len(t.Lines) }

func (t *Table) note(text string) { t.Notes = append(t.Notes, text) }

// at complains of one line of the text.
func at(line int, code fault.Code, got, advice string) *fault.Fault {
	return fault.New(code, fmt.Sprintf("line %d", line), got, advice)
}
