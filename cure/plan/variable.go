package plan

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/words"
)

// Variable is something that can be turned: a number of the job, or several that move together.
type Variable struct {
	ID        string      `json:"id"` // a name of Kinds, or the JSON path of a number of the job
	Label     string      `json:"label"`
	Help      string      `json:"help"`
	Unit      string      `json:"unit"`
	Display   job.Display `json:"display"`
	USDisplay job.Display `json:"us_display"`
	Low       float64     `json:"low"` // validation accepts nothing outside Low..High
	High      float64     `json:"high"`
	UsualLow  float64     `json:"usual_low"` // where a window looks first
	UsualHigh float64     `json:"usual_high"`
	Present   float64     `json:"present"` // the job's value
	Toward    Direction   `json:"toward"`  // which way is worth pushing
	Log       bool        `json:"log"`     // changes count as ratios
	Step      float64     `json:"step"`    // a change worth speaking of, as a difference, or as a share where Log
	Given     bool        `json:"given"`   // nobody\'s choice: the weather, or what the model does not know

	set func(j *job.Job, v float64)
}

// Direction is the way in which a variable is pushed.
type Direction string

// The directions.
const (
	Highest Direction = "highest"
	Lowest  Direction = "lowest"
)

// coordinate is what searches count in: the logarithm where changes count as ratios.
func (v *Variable) coordinate(x float64) float64 {
	if v.Log {
		return math.Log(x)
	}
	return x
}

// value is the inverse of coordinate, kept inside the accepted range against rounding.
func (v *Variable) value(u float64) float64 {
	if v.Log {
		u = math.Exp(u)
	}
	for _, end := range []float64{v.Low, v.High} {
		if math.Abs(u-end) <= 1e-14*math.Abs(end) {
			return end
		}
	}
	return math.Min(math.Max(u, v.Low), v.High)
}

// Variable finds one variable, by the name of a kind or by the JSON path of a number of the job.
func (s Study) Variable(name string) (Variable, error) {
	rules := s.rulebook()
	offered := variables(s.Job, rules, s.Route)
	for _, v := range offered {
		if v.ID == name {
			return v, nil
		}
	}
	present, ok := job.Number(s.Job, name)
	if !ok {
		return Variable{}, fault.New(fault.Choice, "variable", strconv.Quote(name),
			words.Told("Give one of {offered}, or the JSON path of a number of the job.", "offered", strings.Join(names(offered), ", ")))
	}
	f, _ := rules.Field(name)
	v := Variable{ID: name, Label: located(s.Job, name, f.Label), Help: f.Help, Unit: f.Unit, Display: f.Display, USDisplay: f.USDisplay, Low: f.Low, High: f.High,
		UsualLow: f.UsualLow, UsualHigh: f.UsualHigh, Present: present, Toward: Highest, Log: ratioScaled(f), Step: 0.1,
		set: func(j *job.Job, v float64) { setNumber(j, name, v) }}
	if !v.Log {
		v.Step = (f.UsualHigh - f.UsualLow) / 20
	}
	return v, nil
}

// located puts the zone before the label of a number that every zone has.
func located(j *job.Job, path, label string) string {
	for i := range tunnelZones(j) {
		if strings.HasPrefix(path, fmt.Sprintf("tunnel.zones[%d].", i)) {
			return inZone(j.Tunnel.Zones[i].Name, label)
		}
	}
	return label
}

func tunnelZones(j *job.Job) []job.Zone {
	if j.Tunnel == nil {
		return nil
	}
	return j.Tunnel.Zones
}

// setNumber writes a number that is known to be there.
func setNumber(j *job.Job, path string, v float64) {
	if err := job.SetNumber(j, path, v); err != nil {
		panic("plan: " + err.Error())
	}
}

// ratioScaled reports whether a field is a size, for which twice is the same step everywhere, rather than a place on a scale.
func ratioScaled(f job.Field) bool { return f.Low > 0 && f.Unit != "K" && f.High > 20*f.Low }

func names(vs []Variable) []string {
	var out []string
	for _, v := range vs {
		out = append(out, v.ID)
	}
	return out
}

// Named lists the variables with a name of their own that a route of a job has, in the order in which they are offered. The
// directions of fits are found by their names, but nobody turns them.
func Named(j *job.Job, kind result.Kind) []Variable {
	return slices.DeleteFunc(variables(j, job.NewRules(), kind), func(v Variable) bool { return strings.HasPrefix(v.ID, fittedPrefix) })
}

func variables(j *job.Job, rules *job.Rules, kind result.Kind) []Variable {
	alone, err := sim.Alone(j, kind)
	if err != nil {
		return nil
	}
	var vs []Variable
	for _, k := range kinds() {
		if k.routes != nil && !has(k.routes, kind) {
			continue
		}
		vs = append(vs, k.make(&alone, rules)...)
	}
	return vs
}

func has(kinds []result.Kind, kind result.Kind) bool {
	for _, k := range kinds {
		if k == kind {
			return true
		}
	}
	return false
}
