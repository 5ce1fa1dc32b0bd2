package plan

import (
	"fmt"
	"math"
	"strconv"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/words"
)

// at is the value of a variable at a place of the unit interval: the inverse of the tolerance's distribution.
func (t *Tolerance) at(v *Variable, u float64) float64 {
	z := 2*u - 1
	if t.Shape == Normal {
		z = math.Sqrt2 * math.Erfinv(z)
	}
	return v.Present + z*t.width(v)
}

// width is the tolerance's width in the variable's unit.
func (t *Tolerance) width(v *Variable) float64 {
	if t.Relative {
		return t.Width * math.Abs(v.Present)
	}
	return t.Width
}

// deviation is its standard deviation.
func (t *Tolerance) deviation(v *Variable) float64 {
	if t.Shape == Uniform {
		return t.width(v) / math.Sqrt(3)
	}
	return t.width(v)
}

// reach is how far values lie from the present one, all of a uniform spread and 997 of 1000 of a normal one.
func (t *Tolerance) reach(v *Variable) float64 {
	if t.Shape == Uniform {
		return t.width(v)
	}
	return 3 * t.width(v)
}

// toleratedVariables finds the variables of tolerances, and refuses tolerances that mean nothing.
func toleratedVariables(s Study, tolerances []Tolerance) ([]Variable, error) {
	if len(tolerances) == 0 {
		return nil, fault.New(fault.Missing, "tolerances", "", words.Told("Say what varies, and by how much."))
	}
	variables, seen := make([]Variable, len(tolerances)), map[string]bool{}
	for i := range tolerances {
		t, at := &tolerances[i], fmt.Sprintf("tolerances[%d]", i)
		v, err := s.Variable(t.Variable)
		if err != nil {
			return nil, err
		}
		variables[i] = v
		low, high := v.Present-t.reach(&v), v.Present+t.reach(&v)
		switch {
		case seen[t.Variable]:
			return nil, fault.New(fault.Conflict, at+".variable", words.Told("{variable} varies twice", "variable", strconv.Quote(t.Variable)), words.Told("Keep one of the two."))
		case t.Shape != Normal && t.Shape != Uniform:
			return nil, fault.New(fault.Choice, at+".shape", strconv.Quote(string(t.Shape)), words.Told("Give normal or uniform."))
		case !(t.width(&v) > 0):
			return nil, fault.New(fault.Conflict, at+".width", words.Told("a width of {value}", "value", words.Figure(fault.Number(t.width(&v)))),
				words.Told("Give a width above 0; of a value that is 0, no share."))
		case low < v.Low || high > v.High:
			return nil, fault.New(fault.Conflict, at+".width", words.Told("{variable} would reach from {low} to {high} {unit}", "variable", t.Variable, "low", words.Figure(fault.Number(low)), "high", words.Figure(fault.Number(high)), "unit", v.Unit), words.Told("Accepted is {low} to {high} {unit}: make the tolerance smaller.", "low", words.Figure(fault.Number(v.Low)), "high", words.Figure(fault.Number(v.High)), "unit", v.Unit))
		}
		seen[t.Variable] = true
	}
	return variables, nil
}

// DefaultTolerances is how much inputs of a route usually vary. None of the widths has a published source; they are common
// practice or from memory, each with its reason here, and are there to be replaced by what the shop has measured. What cannot
// vary so far in this job is left out.
//
// Errors: fault.Missing where the job has no such route.
func DefaultTolerances(j *job.Job, kind result.Kind) ([]Tolerance, error) {
	if _, err := sim.Alone(j, kind); err != nil {
		return nil, err
	}
	list := []Tolerance{
		// Hand and robot guns hold a coat within a tenth, 95 parts out of 100. Common practice, no source.
		{Coat, Normal, 0.05, true},
		// Data sheets of dispersions state solids within one per cent of the total mass. From memory.
		{"film.adhesive.solids_fraction", Normal, 0.005, false},
		// Hygrometers are good for 3 %, the weather for the rest. Common practice, no source.
		{RoomHumidity, Normal, 0.05, false},
		// A thermostat with a dead band of 1 to 2 K, and draughts. Common practice, no source.
		{RoomTemperature, Normal, 1, false},
	}
	switch kind {
	case result.Room:
		list = append(list,
			// Nobody measures the leaks of a room: half as many or half as many again. Common practice, no source.
			Tolerance{AirChanges, Uniform, 0.5, true})
	case result.StaticOven:
		list = append(list,
			// From corner to corner a box oven differs by 5 to 10 K. Common practice, no source.
			Tolerance{SetPoint, Normal, 3, false},
			// Somebody opens the door when the clock rings, or finishes something else first. Common practice, no source.
			Tolerance{Dwell, Normal, 0.03, true})
	case result.Tunnel:
		list = append(list,
			// The thermocouple's class (2.5 K) and the unevenness across the tunnel. From memory (IEC 60584-1, class 2).
			Tolerance{ZonesInStep, Normal, 2, false},
			// Drives without feedback slip by one or two per cent. Common practice, no source.
			Tolerance{LineSpeed, Normal, 0.01, true})
	}
	list = append(list, transferTolerances(j, kind)...)
	list = append(list, fittedTolerances(j)...)
	study, kept := Study{Job: j, Route: kind}, []Tolerance{}
	for _, t := range list {
		if _, err := toleratedVariables(study, []Tolerance{t}); err == nil {
			kept = append(kept, t)
		}
	}
	return kept, nil
}

// transferTolerances are what the air's movement and the model's coefficients leave open. Correlations of convection scatter
// by 10 to 25 % about their measurements (from memory: textbooks of heat transfer say so of nearly every one). A trial that has
// told the multiplier of the place knows better.
func transferTolerances(j *job.Job, kind result.Kind) []Tolerance {
	if multiplierFitted(j, kind) {
		return nil
	}
	return []Tolerance{{TransferTimes, Normal, 0.1, true}}
}

// fittedTolerances are the uncertainties of the numbers that trials have told.
func fittedTolerances(j *job.Job) []Tolerance {
	var list []Tolerance
	for _, v := range fitted(j, job.NewRules()) {
		list = append(list, Tolerance{v.ID, Normal, 1, false})
	}
	return list
}

// UsuallyVaried are the usual tolerances of a study's route with what they are of.
func UsuallyVaried(s Study) ([]Tolerance, []Variable, error) {
	tolerances, err := DefaultTolerances(s.Job, s.Route)
	if err != nil {
		return nil, nil, err
	}
	varied, err := toleratedVariables(s, tolerances)
	return tolerances, varied, err
}
