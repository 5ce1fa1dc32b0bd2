package job

// Rules are the tables of fields and blocks, made once where many jobs are checked against them: making them takes as long
// as checking a job.
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
