package validate

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/kinetics"
	"github.com/drywright/drywright/cure/material"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/ode/dense"
)

// kineticsCases are the rate laws of crosslinking and the records that use them.
func kineticsCases() cases {
	return cases{
		"K05": arrheniusRatios, "K51": arrheniusFit, "K52": doublingRule, "K53": temperatureIntegral, "K54": rampIntegral,
		"K55": kissinger, "K56": integratedLaws,
		"K19": isocyanateEnergy, "K20": isocyanateEnergy,
		"K39": func(e *entry) {
			e.check("cure_min", curedIn(e, "acrylic-methylol", e.kelvin("cure_C"), e.one("conversion"))/60)
		},
		"K43": func(e *entry) { cureRange(e, "pu-aziridine") },
		"K44": func(e *entry) { cureRange(e, "pu-carbodiimide") },
	}
}

// arrheniusRatios: ratios of rate constants at two temperatures.
func arrheniusRatios(e *entry) {
	ratio := func(hot, cold float64) []float64 {
		return each(e.in("Ea_kJ_mol"), func(energy float64) float64 {
			law := kinetics.Law{A1: 1e8, E1: energy * 1e3, N: 1, HinderingWater: math.Inf(1)}
			up, _ := law.Constants(hot + zero)
			down, _ := law.Constants(cold + zero)
			return up / down
		})
	}
	e.check("k140_over_k120", ratio(140, 120)...)
	e.check("k150_over_k140", ratio(150, 140)...)
	e.check("k60_over_k23", ratio(60, 23)...)
	e.check("k150_over_k80", ratio(150, 80)...)
}

// fitted is the fit of a first-order law to rate constants, given as times to 95 % conversion.
func fitted(e *entry, T, rates []float64) (a, energy float64) {
	pairs := make([]kinetics.Pair, len(T))
	for i := range T {
		pairs[i] = kinetics.Pair{T: T[i], Time: kinetics.OrderIntegral(0.95, 1) / rates[i]}
	}
	a, energy, _, err := kinetics.FitSchedule(pairs, 0.95, 1)
	if err != nil {
		e.fail(err.Error())
	}
	return a, energy / 1e3
}

func arrheniusFit(e *entry) {
	a, energy := fitted(e, e.in("T_K"), e.in("k_per_s"))
	e.check("Ea_kJ_mol", energy)
	e.check("A_per_s", a)
}

func doublingRule(e *entry) {
	_, energy := fitted(e, e.in("T_K"), []float64{1, e.one("k_ratio")})
	e.check("Ea_kJ_mol", energy)
}

// temperatureIntegral: int exp(-E/RT) dT from a temperature so low that nothing is left of it, up to 400 K where E/RT = x,
// is 400 K exp(-x) (1 - x exp(x) E1(x)); the reference temperature takes exp(-x) out.
func temperatureIntegral(e *entry) {
	e.check("x_exp_x_E1", each(e.in("x"), func(x float64) float64 {
		energy := x * kinetics.GasConstant * 400
		sum := kinetics.EquivalentTime([]kinetics.Moment{{Time: 0, T: 100}, {Time: 300, T: 400}}, 400, energy) +
			kinetics.EquivalentTime([]kinetics.Moment{{Time: 0, T: 10}, {Time: 90, T: 100}}, 400, energy)
		return 1 - sum/400
	})...)
}

// rampIntegral is the equivalent time of a film that warms at a constant rate.
func rampIntegral(e *entry) {
	from, to := e.one("T_start_K"), e.one("T_end_K")
	ramp := []kinetics.Moment{{Time: 0, T: from}, {Time: (to - from) / e.one("heating_K_per_s"), T: to}}
	e.check("equivalent_s", each(e.in("E_kJ_mol"), func(energy float64) float64 {
		return kinetics.EquivalentTime(ramp, e.one("reference_K"), energy*1e3)
	})...)
}

// kissinger: on a ramp the rate of a first-order reaction peaks where d rate/dt = (dr/dT) b + (dr/d alpha) r passes zero.
func kissinger(e *entry) {
	law := kinetics.FromPair(393.15, 60*e.one("cured_min_at_120C"), 0.95, e.one("E_kJ_mol")*1e3, 1)
	const start = 293.15
	e.check("T_peak_K", each(e.in("heating_K_per_min"), func(perMinute float64) float64 {
		b := perMinute / 60
		slope := func(t, alpha float64) float64 {
			T := start + b*t
			k1, k2 := law.Constants(T)
			rate, byAlpha, _ := law.RateAt(k1, k2, alpha, 0)
			d1, d2 := law.ConstantsSlope(T)
			byT, _, _ := law.RateAt(d1, d2, alpha, 0)
			return byT*b + byAlpha*rate
		}
		system := dense.New(1, func(t float64, y, f []float64) { f[0] = law.Rate(start+b*t, y[0], 0) },
			func(t float64, y []float64, j *mat.Dense) {
				k1, k2 := law.Constants(start + b*t)
				_, byAlpha, _ := law.RateAt(k1, k2, y[0], 0)
				j.Set(0, 0, byAlpha)
			})
		solver, err := ode.NewSolver(system, ode.Options{RelTol: 1e-9, AbsTol: []float64{1e-10}})
		if err != nil {
			e.fail(err.Error())
			return math.NaN()
		}
		peak := []ode.Event{{Dir: ode.Falling, Terminal: true, G: func(t float64, y []float64) float64 { return slope(t, y[0]) }}}
		end, err := solver.Integrate(0, 200/b, []float64{0}, peak, nil)
		if err != nil || end.Reason != ode.Terminated {
			e.fail("no peak of the rate")
			return math.NaN()
		}
		return start + b*end.T
	})...)
}

// integratedLaws: a dry film at one temperature.
func integratedLaws(e *entry) {
	const k = 1e-3 // 1/s
	e.check("conversion", each(e.in("order"), func(order float64) float64 {
		b := acrylic(0, dryAir(350), 50)
		b.coat.Cure = &kinetics.Law{A1: k, N: order, HinderingWater: math.Inf(1)}
		b.cells = 8
		m, ok := b.run(e, e.one("k_t")/k, nil)
		if !ok {
			return math.NaN()
		}
		return m.LeastConversion(m.y)
	})...)
}

// adhesive returns a record.
func adhesive(e *entry, id string) job.Adhesive {
	all := material.Adhesives()
	i := slices.IndexFunc(all, func(a material.Adhesive) bool { return a.ID == id })
	if i < 0 {
		e.fail("no adhesive " + id)
		return job.Adhesive{}
	}
	return all[i].Adhesive
}

// curedIn is the time in which a record's dry film reaches a conversion at one temperature [s].
func curedIn(e *entry, id string, T, conversion float64) float64 {
	a := adhesive(e, id)
	if a.Crosslinking == nil {
		e.fail(id + " does not crosslink")
		return math.NaN()
	}
	law, _, err := a.Crosslinking.Law()
	if err != nil {
		e.fail(err.Error())
		return math.NaN()
	}
	return law.IsothermalTime(T, conversion)
}

// isocyanateEnergy: the record of an uncatalysed isocyanate has the activation energy of the literature.
func isocyanateEnergy(e *entry) {
	a := adhesive(e, "pu-isocyanate")
	e.check("Ea_kJ_mol", a.Crosslinking.ActivationEnergy/1e3)
}

// cureRange: full cure of a record in a room and in an oven.
func cureRange(e *entry, id string) {
	e.check("ambient_full_days", curedIn(e, id, e.kelvin("ambient_C"), 0.95)/86400)
	e.check("oven_min", curedIn(e, id, e.kelvin("oven_C"), 0.95)/60)
}

var _ film.Coat
