package fit

import (
	"fmt"
	"math"
	"slices"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/words"
)

const (
	// filmStep is the increment, in a logarithm, by which the film's answer is differenced: far above the integration's own
	// noise, small against the bend of the curve.
	filmStep = 0.01
	// fine is the relative tolerance of runs that are fitted, so that their noise stays a ten-thousandth of the change of a step.
	fine = 1e-6
)

// weighing is a weight trial as the regression sees it: areal masses [kg/m2] over time, coupon by coupon.
type weighing struct {
	w      *work
	kind   result.Kind
	times  []float64 // all moments of all coupons, rising, each once
	at     []int     // of each datum in times
	coupon []int     // of each datum
	names  []string
	mass   []float64
	tared  bool
	runs   map[runKey][]float64
}

// runKey tells runs apart: the numbers of the film, then the coat.
type runKey [13]float64

// weight fits transfer multiplier, dry diffusivity (or that of vapour in a porous skin) and closing fraction to coupons on a scale. With the tare known
// each coupon's own wet coat is found beside; without it the coat is the job's and the zero of the scale is found.
func (w *work) weight() error {
	g, err := w.weighing()
	if err != nil {
		return err
	}
	offered, err := w.dryingUnknowns(g.kind)
	if err != nil {
		return err
	}
	candidates, chosen, err := w.candidates(offered)
	if err != nil {
		return err
	}
	d := regress.Data{Y: g.mass}
	try := func(set []unknown) (*regress.Result, error) {
		return regress.Fit(g.model(len(set)-len(g.names), set), d, parameters(set), w.options())
	}
	nuisances := g.nuisances()
	with := func(set []unknown) []unknown { return append(slices.Clone(set), nuisances...) }
	var best priced
	if chosen {
		set := with(candidates)
		r, err := try(set)
		if err != nil {
			return err
		}
		best = priced{set, r}
	} else {
		if best, err = w.choose(candidates, func(set []unknown) (*regress.Result, error) { return try(with(set)) }); err != nil {
			return err
		}
		best.unknowns = with(best.unknowns)
	}
	w.take(best.unknowns, best.result)
	g.draw(best, d)
	n := len(best.unknowns) - len(g.names)
	return w.resample(g.model(n, best.unknowns), d, best.unknowns, best.result)
}

// weighing reads the rows.
func (w *work) weighing() (*weighing, error) {
	g := &weighing{w: w, runs: map[runKey][]float64{}}
	var err error
	if g.kind, err = w.route(); err != nil {
		return nil, err
	}
	area := or(w.question.Area, or(w.job.Part.CoatedArea, math.NaN()))
	if math.IsNaN(area) {
		return nil, fault.New(fault.Missing, "area_m2", "", words.Told("State the coated area of one coupon."))
	}
	g.tared = w.question.Tare != nil
	start, tare := or(w.question.Start, 0), or(w.question.Tare, 0)
	for i, t := range w.data.Numbers[trial.Time] {
		name := ""
		if c := w.data.Words[trial.Coupon]; c != nil {
			name = c[i]
		}
		k := slices.Index(g.names, name)
		if k < 0 {
			k = len(g.names)
			g.names = append(g.names, name)
		}
		g.coupon, g.mass = append(g.coupon, k), append(g.mass, (w.data.Numbers[trial.Mass][i]-tare)/area)
		g.times = append(g.times, t+start)
	}
	if len(g.names) > 12 {
		return nil, fault.New(fault.Limit, "rows", words.Told("{count} coupons", "count", len(g.names)), words.Told("Fit at most 12 coupons at once."))
	}
	if len(g.mass) > 2000 {
		return nil, fault.New(fault.Limit, "rows", words.Told("{count} weighings", "count", len(g.mass)), words.Told("Keep every tenth row: the fit does not need more."))
	}
	all := slices.Clone(g.times)
	slices.Sort(all)
	all = slices.Compact(all)
	for _, t := range g.times {
		k, _ := slices.BinarySearch(all, t)
		g.at = append(g.at, k)
	}
	g.times = all
	w.reach(g.kind, all[len(all)-1])
	w.fit.Axes = result.FitAxes{X: words.Told("time"), XUnit: "s", Y: words.Told("mass of coat on the coated area"), YUnit: "kg/m²"}
	return g, g.plausible()
}

// plausible refuses a weighing whose first masses cannot be the coat's: a wrong tare, area or unit.
func (g *weighing) plausible() error {
	if !g.tared {
		return nil
	}
	coat := g.w.job.Film.WetCoat
	for k, name := range g.names {
		i := slices.Index(g.coupon, k)
		if m := g.mass[i]; m < coat/5 || m > 5*coat {
			return fault.OutOfRange(fmt.Sprintf("line %d", g.w.data.Lines[i]), m, coat/5, 5*coat, "kg/m²",
				words.Told("The coat that the scale shows first{name} is far from the job's: check tare, area and unit of mass.", "name", of(name)))
		}
	}
	return nil
}

func of(name string) string {
	if name == "" {
		return ""
	}
	return words.Told(" of coupon {name}", "name", name)
}

// route is the one along which the trial was made.
func (w *work) route() (result.Kind, error) {
	has := map[result.Kind]bool{result.Room: w.job.Room != nil, result.StaticOven: w.job.StaticOven != nil, result.Tunnel: w.job.Tunnel != nil}
	for _, k := range []result.Kind{result.Room, result.StaticOven, result.Tunnel} {
		if has[k] && (w.question.Route == "" || w.question.Route == k) {
			return k, nil
		}
	}
	return "", fault.New(fault.Missing, "route", string(w.question.Route), words.Told("Describe the place of the trial as a route of the job: room, static_oven or tunnel."))
}

// reach lengthens the route's horizon to the last datum, and refines the integration.
func (w *work) reach(kind result.Kind, last float64) {
	w.job.Numerics.RelativeTolerance = math.Min(fine, w.job.Numerics.RelativeTolerance)
	w.job.Part.Spots = nil
	switch kind {
	case result.Room:
		w.job.Room.Horizon = math.Max(w.job.Room.Horizon, last)
	case result.StaticOven:
		w.job.StaticOven.Horizon = math.Max(w.job.StaticOven.Horizon, last)
		w.job.StaticOven.Batches = 1
	case result.Tunnel:
		w.job.Tunnel.Horizon = math.Max(w.job.Tunnel.Horizon, last)
	}
}

// dryingUnknowns are what a weighing can tell.
func (w *work) dryingUnknowns(kind result.Kind) ([]unknown, error) {
	places := w.multipliers(kind)
	var all []unknown
	add := func(path string, further ...string) error {
		u, err := w.unknownAt(path, further...)
		u.parameter.Step = filmStep
		if path == closing {
			u.parameter.Step = filmStep / 10 // not a logarithm
		}
		all = append(all, u)
		return err
	}
	if err := add(places[0], places[1:]...); err != nil {
		return nil, err
	}
	late := dryDiffusivity
	if w.job.Film.Adhesive.Transport.Mechanism == job.PorousSkin {
		late = skinDiffusion
	}
	if err := add(late); err != nil {
		return nil, err
	}
	return all, add(closing)
}

// multipliers are the places of the transfer multiplier along a route: in a tunnel every zone's, which then move as one.
func (w *work) multipliers(kind result.Kind) []string {
	switch kind {
	case result.Room:
		return []string{"workshop." + multiplier}
	case result.StaticOven:
		return []string{"static_oven." + multiplier}
	}
	var all []string
	for i := range w.job.Tunnel.Zones {
		all = append(all, fmt.Sprintf("tunnel.zones[%d].%s", i, multiplier))
	}
	return all
}
