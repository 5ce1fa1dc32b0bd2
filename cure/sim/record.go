package sim

import (
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/route"
)

// recorder keeps the histories of a run.
type recorder struct {
	curves   result.Curves
	profiles []result.Profile
	scratch  []float64
}

// insidePoints is how many points of the dense output are recorded inside a step besides its end, so that a curve of
// long steps stays smooth.
const insidePoints = 1

// begin records the start of a stage.
func (r *run) begin(s *film.System, st *route.Stage, y []float64) {
	r.scratch = make([]float64, len(y))
	reading := s.Read(st.Start, y)
	r.point(st.Start, &reading)
	r.look(s, st.Start, y, &reading)
	r.openStage(st, &reading)
	if len(r.profiles) == 0 {
		r.profile(s, st.Start, y, "sprayed")
	}
}

// observe records one step.
func (r *run) observe(s *film.System, step *ode.Step) {
	for i := 1; i <= insidePoints+1; i++ {
		t, y := step.T1, step.Y1
		if i <= insidePoints {
			t = step.T0 + (step.T1-step.T0)*float64(i)/(insidePoints+1)
			step.At(t, r.scratch)
			y = r.scratch
		}
		reading := s.Read(t, y)
		r.point(t, &reading)
		r.look(s, t, y, &reading)
	}
}

// point appends one point to the curves; at the seam of two stages the later one replaces nothing, so that a jump of
// the air shows as a jump.
func (r *run) point(t float64, d *film.Reading) {
	c := &r.curves
	c.Time = append(c.Time, t)
	c.MeanWater = append(c.MeanWater, d.MeanWater)
	c.OuterWater = append(c.OuterWater, d.OuterWater)
	c.SurfaceWater = append(c.SurfaceWater, d.SurfaceWater)
	c.InnerWater = append(c.InnerWater, d.InnerWater)
	c.Equilibrium = append(c.Equilibrium, d.Equilibrium)
	c.MeanConversion = append(c.MeanConversion, d.MeanConversion)
	c.LeastConversion = append(c.LeastConversion, d.LeastConversion)
	c.FilmTemperature = append(c.FilmTemperature, d.Film)
	c.PartBack = append(c.PartBack, d.BackFace)
	c.AirTemperature = append(c.AirTemperature, d.Climate.Air.T)
	c.AirHumidity = append(c.AirHumidity, d.Climate.Air.HumidityRatio())
	c.Flux = append(c.Flux, d.Flux)
	c.Thickness = append(c.Thickness, d.Thickness)
}

// profile records the film cut through at one moment.
func (r *run) profile(s *film.System, t float64, y []float64, label result.MarkName) {
	p := result.Profile{Time: t, Label: string(label)}
	for i, x := range s.Water(y) {
		p.Depth = append(p.Depth, r.grid.Centre(i)/r.grid.Solids)
		p.Water = append(p.Water, x)
	}
	p.Conversion = append([]float64{}, s.Conversion(y)...)
	r.profiles = append(r.profiles, p)
}
