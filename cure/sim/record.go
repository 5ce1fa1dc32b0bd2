package sim

import (
	"slices"

	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/route"
)

// recorder keeps the histories of a run.
type recorder struct {
	curves   result.Curves
	profiles []result.Profile
	climates []film.Climate // with the curves
	surfaces []float64      // water activity of the film's surface, with the curves
	taken    []route.Taken
	books    film.State // scratch
}

// begin records the start of a stage. The last one may have left the state outside its bounds by the tolerance.
func (r *run) begin(s *film.System, st *route.Stage, y []float64) {
	y = slices.Clone(y)
	s.Bound(y)
	reading := s.Read(st.Start, y)
	r.point(st.Start, &reading)
	r.take(st.Start, &r.state.Ledger, r.state.Mass, &reading)
	r.openStage(st, &reading)
	r.look(s, st.Start, y, &reading)
	if len(r.profiles) == 0 {
		r.profile(s, st.Start, y, "sprayed")
	}
}

// observe records the end of one step, which is interpolated where a run is cut off.
func (r *run) observe(s *film.System, step *ode.Step) {
	y := slices.Clone(step.Y1)
	s.Bound(y)
	reading := s.Read(step.T1, y)
	r.point(step.T1, &reading)
	s.Unpack(y, &r.books)
	r.take(step.T1, &r.books.Ledger, r.books.Mass, &reading)
	r.look(s, step.T1, y, &reading)
}

// point appends one point to the curves; at the seam of two stages the later one replaces nothing, so that a jump of
// the air shows as a jump.
func (r *run) point(t float64, d *film.Reading) {
	c := &r.curves
	c.Time = append(c.Time, t)
	r.climates = append(r.climates, d.Climate)
	r.surfaces = append(r.surfaces, d.SurfaceActivity)
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
