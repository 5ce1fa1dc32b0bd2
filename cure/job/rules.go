package job

import (
	"strconv"
	"strings"
)

// Rules are the tables of fields and blocks, made once where many jobs are read or checked: making them takes as long as
// checking a job. They never change, so that many may use them at a time.
type Rules struct{ table table }

// NewRules makes the tables.
func NewRules() *Rules { return &Rules{newTable()} }

// Validate is Validate of the package.
func (r *Rules) Validate(j Job) error {
	v := validator{table: r.table}
	v.job(&j)
	return v.result()
}

// Field is the entry of Fields for a concrete path ("tunnel.zones[1].length_m"), and whether there is one.
func (r *Rules) Field(path string) (Field, bool) {
	f, ok := r.table.fields[generic(path)]
	if !ok {
		return Field{}, false
	}
	return f.worded(), true
}

// Place names a field, block or list by the labels of what it lies in and its own, with the number of each entry: "Tunnel oven", "Zone 2",
// "Air speed", as texts on their way (package words). It is nil where the job knows no such path.
func (r *Rules) Place(path string) []string {
	if path == "" {
		return nil
	}
	var names []string
	at := ""
	for step := range strings.SplitSeq(path, ".") {
		at = under(at, step)
		pattern := generic(at)
		label := ""
		if f := r.table.fields[pattern]; f != nil {
			label = f.label()
		} else if b := r.table.blocks[pattern]; b != nil && (!b.OneOf || at == path) {
			label = b.word("label")
		} else if b == nil {
			return nil
		}
		if _, index, listed := strings.Cut(step, "["); listed {
			n, err := strconv.Atoi(strings.TrimSuffix(index, "]"))
			if err != nil {
				return nil
			}
			label += " " + strconv.Itoa(n+1)
		}
		if label != "" {
			names = append(names, label)
		}
	}
	return names
}
