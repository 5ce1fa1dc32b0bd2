package validate

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
)

// subject is one file of testdata with the cases that put its entries to the product.
type subject struct {
	name  string
	cases cases
}

// cases finds the case of an entry by its id, or by the family that it belongs to: a key ending in * stands for all ids
// that start with it, the longest key first.
type cases map[string]func(e *entry)

func (c cases) find(id string) func(e *entry) {
	if f := c[id]; f != nil {
		return f
	}
	for n := len(id); n > 0; n-- {
		if f := c[id[:n]+"*"]; f != nil {
			return f
		}
	}
	return nil
}

// subjects lists all of them in the order of the table.
func subjects() []subject {
	return []subject{
		{"constants", constants()},
		{"saturation", saturation()},
		{"moistair", moistAir()},
		{"transport", transport()},
		{"plates", plates()},
		{"natural", natural()},
		{"jets", jets()},
		{"surface", surface()},
		{"conduction", conduction()},
		{"diffusion", diffusion()},
		{"drying", drying()},
		{"kinetics", kineticsCases()},
		{"materials", materials()},
		{"trade", trade()},
		{"balances", balances()},
		{"stiff", stiff()},
		{"spread", spread()},
		{"regression", regression()},
		{"fitting", fitting()},
	}
}

// Subjects lists the names of the subjects in the order of the table.
func Subjects() []string {
	var names []string
	for _, s := range subjects() {
		names = append(names, s.name)
	}
	return names
}

// File is where the published entries of a subject are, under testdata.
func File(subject string) string { return subject + "/rows.json" }

// Run evaluates all published entries. read returns a file under testdata by its slash-separated name; the embedded files
// of package testdata serve. An error means that the data cannot be read, not that a row misses.
func Run(read func(name string) ([]byte, error)) (Report, error) { return evaluated(read, false) }

// RunQuick is Run without the entries that take minutes, which it lists as left out.
func RunQuick(read func(name string) ([]byte, error)) (Report, error) { return evaluated(read, true) }

func evaluated(read func(name string) ([]byte, error), quick bool) (Report, error) {
	var r Report
	for _, s := range subjects() {
		if err := r.run(s, read, quick); err != nil {
			return Report{}, err
		}
	}
	return r, nil
}

// RunSubject evaluates one subject.
func RunSubject(name string, read func(name string) ([]byte, error)) (Report, error) {
	var r Report
	for _, s := range subjects() {
		if s.name == name {
			return r, r.run(s, read, false)
		}
	}
	return r, fmt.Errorf("no subject %q among %s", name, strings.Join(Subjects(), ", "))
}

func (r *Report) run(s subject, read func(name string) ([]byte, error), quick bool) error {
	data, err := read(File(s.name))
	if err != nil {
		return err
	}
	var entries []*entry
	if err := json.Unmarshal(data, &entries); err != nil {
		return fmt.Errorf("%s: %w", File(s.name), err)
	}
	for _, e := range entries {
		e.subject, e.done = s.name, map[string]bool{}
		if quick && e.Slow {
			r.LeftOut = append(r.LeftOut, LeftOut{e.ID, s.name, "", e.Topic, "takes minutes: make validate runs it"})
			continue
		}
		if e.LeftOut != "" {
			r.LeftOut = append(r.LeftOut, LeftOut{e.ID, s.name, "", e.Topic, e.LeftOut})
			continue
		}
		r.evaluate(e, s.cases.find(e.ID))
	}
	return nil
}

func (r *Report) evaluate(e *entry, run func(e *entry)) {
	if run == nil {
		e.fail("no case puts this entry to the product")
	} else {
		run(e)
		for _, key := range sorted(e.Outputs) {
			if reason := e.LeftOutOutputs[key]; reason != "" {
				r.LeftOut = append(r.LeftOut, LeftOut{e.ID, e.subject, key, e.Topic, reason})
			} else if !e.done[key] {
				e.fail("no case compares " + key)
			}
		}
	}
	r.Rows = append(r.Rows, e.rows...)
}

func sorted(m map[string]any) []string {
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
