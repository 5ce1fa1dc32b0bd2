package route

import (
	"slices"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/transfer"
)

// workshop is the job's workshop and what every route has in common: faces, pile, moment of flocking.
type workshop struct {
	job   *job.Job
	air   *Schedule
	space *Space // nil: the air stays as stated
	pile  *transfer.Pile
}

func newWorkshop(j *job.Job) (*workshop, error) {
	w := &workshop{job: j}
	var err error
	if w.air, err = schedule(j, j.Workshop.Air); err != nil {
		return nil, err
	}
	w.air.wall = j.Workshop.WallTemperature
	if j.Workshop.Space != nil {
		if w.space, err = w.newSpace(j.Workshop.Space); err != nil {
			return nil, err
		}
	}
	if p := j.Pile; p != nil {
		w.pile = &transfer.Pile{Length: p.Length, Porosity: p.Porosity, Tortuosity: p.Tortuosity,
			Conductivity: p.Conductivity, Emissivity: p.Emissivity}
	}
	return w, nil
}

// schedule makes the air of a list of points.
func schedule(j *job.Job, points []job.AirPoint) (*Schedule, error) {
	var times, temperatures, humidities []float64
	for _, p := range points {
		s, err := p.Humidity.State(p.Temperature, j.Workshop.Pressure, j.Numerics.EnhancementFactor)
		if err != nil {
			return nil, err
		}
		times = append(times, p.Time)
		temperatures = append(temperatures, p.Temperature)
		humidities = append(humidities, s.RelativeHumidity())
	}
	t, err := num.NewLinear(times, temperatures)
	if err != nil {
		return nil, err
	}
	h, err := num.NewLinear(times, humidities)
	if err != nil {
		return nil, err
	}
	return &Schedule{temperature: t, humidity: h, pressure: j.Workshop.Pressure, real: j.Numerics.EnhancementFactor}, nil
}

// flocked is the moment from which the fibre is on the film; 0 without fibre.
func (w *workshop) flocked() float64 {
	if w.job.Pile == nil {
		return 0
	}
	return w.job.Pile.AppliedAfter
}

// stay is a stage in the workshop's air.
func (w *workshop) stay(name string, kind result.StageKind, start, end float64, piled bool) Stage {
	st := Stage{Name: name, Kind: kind, Start: start, End: end, Piled: piled && w.job.Pile != nil,
		Exposure: w.exposure(w.job.Workshop.Transfer, w.air.over(start, end), w.air.State(start), piled)}
	st.Stops = between(w.air.temperature.Knots(), start, end)
	return st
}

// between returns those of the moments that lie inside a stage, in order and each once.
func between(at []float64, start, end float64) []float64 {
	var inside []float64
	for _, t := range at {
		if t > start && t < end {
			inside = append(inside, t)
		}
	}
	slices.Sort(inside)
	return slices.Compact(inside)
}

// exposure joins surroundings with the part's faces; blown is the air that fans and nozzles move.
func (w *workshop) exposure(t job.Transfer, around film.Surroundings, blown air.State, piled bool) film.Exposure {
	part := &w.job.Part
	x := film.Exposure{
		Around: around,
		Front:  film.Face{Law: law(t, part, part.Orientation, blown), Emissivity: w.job.Film.Adhesive.Emissivity, Factor: 1},
		Back:   film.Face{Law: law(t, part, turned(part.Orientation), blown), Emissivity: part.BackEmissivity, Factor: 1},
	}
	if t.Multiplier != nil {
		x.Front.Factor, x.Back.Factor = *t.Multiplier, *t.Multiplier
	}
	if t.BackCoefficient != nil {
		x.Back.Factor = 1
		x.Back.Law = transfer.Given{H: *t.BackCoefficient}
	}
	if piled && w.pile != nil {
		x.Front.Pile = w.pile
		p := w.job.Pile
		mass := (1 - p.Porosity) * p.Length * p.FibreDensity
		x.PileCapacity, x.Regain = mass*p.FibreHeatCapacity, film.Regain(mass, p.Regain)
	}
	return x
}

// law builds the transfer law of one face.
func law(t job.Transfer, part *job.Part, o job.Orientation, blown air.State) transfer.Law {
	velocity := t.Velocity
	if t.Fan != nil {
		velocity = transfer.FreeVelocity(t.Fan.AirFlow, t.Fan.CrossSection)
	}
	forced := transfer.Parallel{Velocity: velocity, Length: part.Length, Tripped: t.Tripped}
	buoyant := transfer.Buoyant{Length: part.Length, Orientation: orientation(o)}
	switch t.Kind {
	case job.ParallelFlow:
		return forced
	case job.Natural:
		return buoyant
	case job.Combined:
		return transfer.Combined{Parallel: forced, Buoyant: buoyant}
	case job.SlotNozzles:
		n := t.Nozzles
		return transfer.SlotField{Width: n.Width, Pitch: n.Pitch, Distance: n.Distance, Velocity: jet(n, blown)}
	case job.RoundNozzles:
		n := t.Nozzles
		return transfer.RoundField{Diameter: n.Width, Pitch: n.Pitch, Distance: n.Distance, Velocity: jet(n, blown)}
	default:
		return transfer.Given{H: t.Coefficient}
	}
}

// jet is the exit velocity of nozzles, from the pressure before them where it is given.
func jet(n *job.Nozzles, blown air.State) float64 {
	if n.Pressure != nil {
		return transfer.JetVelocity(*n.Pressure, blown.Density())
	}
	return n.ExitVelocity
}

func orientation(o job.Orientation) transfer.Orientation {
	return map[job.Orientation]transfer.Orientation{
		job.Vertical: transfer.Vertical, job.FacingUp: transfer.FacingUp, job.FacingDown: transfer.FacingDown}[o]
}

// turned is the orientation of the other face.
func turned(o job.Orientation) job.Orientation {
	return map[job.Orientation]job.Orientation{
		job.Vertical: job.Vertical, job.FacingUp: job.FacingDown, job.FacingDown: job.FacingUp}[o]
}
