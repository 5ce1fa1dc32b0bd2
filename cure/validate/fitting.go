package validate

import (
	"fmt"
	"math"
	"strings"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/fit"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/trial"
)

// fitting puts published and made-up trials to the fit.
func fitting() cases {
	return cases{
		"FIT-GEA-FOOD": weighedFood, "FIT-TRE-BOARD": rateOfBoard, "FIT-K51": arrheniusTrial, "FIT-COVER-*": coverage,
	}
}

// drying is a published drying curve that the film's own equations are fitted to: area-specific solids, water when it began, the water
// at rest with the air. The air itself is not published; 60 degC and half saturated stands for it, and what the coefficient makes of it
// is compared as a rate.
type dryingCurve struct {
	e             *entry
	solids        float64 // [kg/m2]
	start, atRest float64 // X [kg/kg]
	times, water  []float64
	parameters    []regress.Parameter
	fitted        *regress.Result
}

const (
	slabAir      = 333.15 // K
	slabHumidity = 0.5
	slabDensity  = 1000.0 // of the dry matter; with water's own the closing fraction is 1/(1 + X_c)
	slabCells    = 24
)

// bench of a slab for the three numbers: h [W/(m2 K)], dry diffusivity [m2/s], water at which the paths close [kg/kg].
func (c *dryingCurve) bench(p []float64) bench {
	a := air.State{T: slabAir, P: atmosphere}
	a.Y = slabHumidity * a.SaturatedFraction()
	curve := film.GAB{Monolayer: 1, C: 10, K: 0.7}
	curve.Monolayer = c.atRest / curve.Water(slabHumidity)
	return bench{
		coat: film.Coat{Solids: c.solids, HeatCapacity: 1500, Conductivity: 0.3, Isotherm: curve, Diffusion: film.Diffusion{
			PolymerDensity: slabDensity, ParticleDiameter: 2e-7, Packing: 0.5, Closing: 1 / (1 + p[2]), Capillary: 1e-6, Dry: p[1]}},
		part:  film.Part{Thickness: 1e-3, Density: 1000, HeatCapacity: 1000, Conductivity: 1, Back: film.Insulated, Cells: 2},
		cells: slabCells, water: c.start, start: a.WetBulb(), // published curves leave the warming out
		around: stillAir{air: a, wall: slabAir}, front: given(p[0]), tolerance: 1e-6,
	}
}

// follow returns the mean water at the times, from the film's own system.
func (c *dryingCurve) follow(p, out []float64) error {
	b := c.bench(p)
	grid := film.NewGrid(b.coat.Solids, b.cells)
	state := film.NewState(&b.coat, &grid, &b.part, b.water, b.start)
	s := film.NewSystem(&b.coat, &grid, &b.part, &film.Exposure{Around: &b.around, Front: b.front, Back: b.back})
	y, inside := make([]float64, s.Dim()), make([]float64, s.Dim())
	s.Pack(&state, nil, y)
	solver, err := ode.NewSolver(s, ode.Options{RelTol: b.tolerance, AbsTol: s.Tolerances(b.tolerance)})
	if err != nil {
		return err
	}
	out[0] = c.start
	next := 1
	_, err = solver.Integrate(0, c.times[len(c.times)-1], y, nil, func(step *ode.Step) bool {
		for ; next < len(c.times) && c.times[next] <= step.T1; next++ {
			step.At(c.times[next], inside)
			out[next] = s.MeanWater(inside)
		}
		return true
	})
	return err
}

// fit finds the three numbers.
func (c *dryingCurve) fit() bool {
	c.parameters = []regress.Parameter{
		{Start: 20, Low: 0.5, High: 500, Log: true, Step: 0.01}, {Start: 1e-8, Low: 1e-11, High: 9e-7, Log: true, Step: 0.01},
		{Start: 0.2, Low: 0.06, High: 0.9, Log: true, Step: 0.01}}
	var err error
	if c.fitted, err = regress.Fit(c.follow, regress.Data{Y: c.water}, c.parameters, regress.Options{Tolerance: 1e-3}); err != nil {
		c.e.fail(err.Error())
		return false
	}
	return true
}

// values are the numbers found.
func (c *dryingCurve) values() []float64 {
	var v []float64
	for _, p := range c.fitted.Parameters {
		v = append(v, p.Value)
	}
	return v
}

// rates follows the fitted slab and returns the rate [kg/(m2 s)] of its constant period, the mean water where it has fallen by a tenth, and
// the times at which two waters are reached.
func (c *dryingCurve) rates(from, to float64) (constant, critical, between float64) {
	b := c.bench(c.values())
	flux := func(m moment) float64 { return m.Read(m.time, m.y).Flux }
	warm, ok := b.run(c.e, c.times[1], nil)
	if !ok {
		return math.NaN(), math.NaN(), math.NaN()
	}
	constant = flux(warm)
	span := 2 * c.times[len(c.times)-1]
	fallen, ok := b.run(c.e, span, func(m moment) float64 {
		if m.time < c.times[1] {
			return -1
		}
		return 0.9*constant - flux(m)
	})
	if !ok {
		return constant, math.NaN(), math.NaN()
	}
	at := func(x float64) float64 {
		m, _ := b.run(c.e, span, func(m moment) float64 { return x - m.MeanWater(m.y) })
		return m.time
	}
	return constant, fallen.MeanWater(fallen.y), at(to) - at(from)
}

// weighedFood is a weighed sample of a textbook problem.
func weighedFood(e *entry) {
	c := &dryingCurve{e: e, solids: e.one("bone_dry_kg") / e.one("area_m2")}
	for i, m := range e.in("mass_kg") {
		c.times, c.water = append(c.times, 3600*e.in("time_h")[i]), append(c.water, m/e.one("bone_dry_kg")-1)
	}
	c.start, c.atRest = c.water[0], e.one("X_at_rest")
	if !c.fit() {
		return
	}
	free := e.in("X_free_from_to")
	constant, critical, between := c.rates(c.atRest+free[0], c.atRest+free[1])
	e.check("rate_kg_per_m2h", 3600*constant)
	e.check("X_critical_free", critical-c.atRest)
	e.check("time_h", between/3600)
	e.check("scatter_of_water", c.fitted.Sigma)
}

// rateOfBoard is a published rate curve, turned into water over time by the trapezoidal rule on 1/N.
func rateOfBoard(e *entry) {
	x, n := e.in("X"), e.in("N_1e-3_kg_m2s")
	c := &dryingCurve{e: e, solids: e.one("solid_per_area_kg_m2"), start: e.one("X_start"), atRest: e.one("X_at_rest")}
	t := c.solids * (c.start - x[0]) / (1e-3 * n[0])
	for i := range 8 {
		share := float64(i) / 8
		c.times, c.water = append(c.times, share*t), append(c.water, c.start+share*(x[0]-c.start))
	}
	for i := range x {
		if i > 0 {
			t += c.solids * (x[i-1] - x[i]) / 1e-3 * (1/n[i-1] + 1/n[i]) / 2
		}
		c.times, c.water = append(c.times, t), append(c.water, x[i])
	}
	if !c.fit() {
		return
	}
	constant, critical, between := c.rates(c.start-1e-6, e.one("X_end"))
	e.check("Nc_kg_m2s", constant)
	e.check("X_tenth_fallen", critical)
	e.check("t_total_h", between/3600)
	e.check("scatter_of_water", c.fitted.Sigma)
}

// arrheniusTrial turns published rate constants into times to half conversion, as a data sheet gives them, and fits them.
func arrheniusTrial(e *entry) {
	var b strings.Builder
	b.WriteString("time [s];temperature [K];conversion\n")
	for i, T := range e.in("T_K") {
		fmt.Fprintf(&b, "%.8g;%.8g;0.5\n", math.Ln2/e.in("k_per_s")[i], T)
	}
	o, err := fit.Run(job.Demo(), []byte(b.String()), fit.Question{Kind: trial.Cure, Free: true, Plain: true,
		Parameters: []string{"film.adhesive.crosslinking.activation_energy_J_per_mol"}})
	if err != nil {
		e.fail(err.Error())
		return
	}
	for _, p := range o.Fit.Parameters {
		switch p.Path {
		case "film.adhesive.crosslinking.activation_energy_J_per_mol":
			e.check("Ea_kJ_mol", p.Value/1e3)
		case "film.adhesive.crosslinking.frequency_factor_per_s":
			e.check("ln_A_per_s", math.Log(p.Value))
		}
	}
}

// coverage weighs a made-up coupon many times, each time with other scatter, and counts how often the 95 % intervals hold the numbers that
// made the curve. The curve comes from twice as many cells and a tighter integration than the fit's.
func coverage(e *entry) {
	j := job.Default()
	j.Pile = nil
	j.Numerics.FilmCells = int(e.one("cells"))
	places := e.texts("paths")
	w := fit.Weighing{Route: result.Room, Area: e.one("area_m2"), Tare: e.one("tare_kg"), Scatter: e.one("scatter")}
	n := int(e.one("weighings"))
	for i := range n {
		w.Times = append(w.Times, e.one("end_h")*3600*float64(i)/float64(n-1))
	}
	if e.texts("route")[0] == string(result.StaticOven) {
		w.Route = result.StaticOven
		j.Room, j.StaticOven = nil, job.NewStaticOven()
		j.StaticOven.LoadedAfter, j.StaticOven.SetPoint = 60, e.kelvin("oven_C")
	}
	truth := job.Clone(j)
	truth.Numerics.FilmCells, truth.Numerics.RelativeTolerance = 2*j.Numerics.FilmCells, 1e-7
	for i, p := range places {
		if err := job.SetNumber(&truth, p, e.in("truth")[i]); err != nil {
			e.fail(err.Error())
			return
		}
	}
	curve, err := w.Curve(truth)
	if err != nil {
		e.fail(err.Error())
		return
	}
	q := fit.Question{Kind: trial.Weight, Area: &w.Area, Tare: &w.Tare, Parameters: places, Free: true}
	held := make([]float64, len(places))
	seeds := int(e.one("seeds"))
	for seed := range seeds {
		o, err := fit.Run(j, []byte(w.Table(truth, curve, regress.NewRandom(uint64(seed)))), q)
		if err != nil {
			e.fail(fmt.Sprintf("seed %d: %v", seed, err))
			return
		}
		for i, p := range o.Fit.Parameters {
			if want := e.in("truth")[i]; p.Low != nil && *p.Low <= want && want <= *p.High {
				held[i] += 1 / float64(seeds)
			}
		}
	}
	e.checkAt("share_covered", places, held...)
}
