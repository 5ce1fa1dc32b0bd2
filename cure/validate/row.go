package validate

// Report is the whole table.
type Report struct {
	Rows    []Row     `json:"rows"`
	LeftOut []LeftOut `json:"left_out"`
}

// Failed counts the rows that miss.
func (r *Report) Failed() int {
	n := 0
	for i := range r.Rows {
		if !r.Rows[i].Pass {
			n++
		}
	}
	return n
}

// Row is one published number beside ours.
type Row struct {
	ID       string `json:"id"`
	Subject  string `json:"subject"`
	Quantity string `json:"quantity"` // with the place in its list, where the entry has several
	Unit     string `json:"unit"`     // empty for pure numbers
	Source   string `json:"source"`
	Basis    string `json:"basis"` // "published", "from memory" or "derived"

	Bound     Bound   `json:"bound"`
	Expected  float64 `json:"expected"`
	Upper     float64 `json:"upper"` // upper end of a Between; else Expected
	Ours      float64 `json:"ours"`
	Deviation float64 `json:"deviation"` // from the nearest value that Bound allows, in the measure below
	Tolerance float64 `json:"tolerance"`
	Measure   Measure `json:"measure"`
	Pass      bool    `json:"pass"`
	Note      string  `json:"note"` // why the comparison is not plain, else empty
}

// Bound says what the published value binds.
type Bound string

// The bounds.
const (
	Equal   Bound = "equal"
	Between Bound = "between"
	Least   Bound = "at least"
	Most    Bound = "at most"
)

// Measure says how deviation and tolerance count.
type Measure string

// The measures.
const (
	Absolute Measure = "absolute" // in the row's unit
	Relative Measure = "relative" // as a share of the published value
	Factor   Measure = "factor"   // the larger of the two over the smaller
)

// LeftOut is a published entry, or one output of it, that is not compared.
type LeftOut struct {
	ID      string `json:"id"`
	Subject string `json:"subject"`
	Output  string `json:"output"` // empty: the whole entry
	Topic   string `json:"topic"`
	Reason  string `json:"reason"`
}
