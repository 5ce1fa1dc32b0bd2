package validate

import (
	"math"
	"strings"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/material"
)

// diffusion is water moving in the film: Fick's slab, packing, skin number, late drying.
func diffusion() cases {
	return cases{
		"DIF-CRANK": func(e *entry) {
			e.check("fraction_remaining", each(e.in("Fo"), func(fo float64) float64 { return remaining(e, fo) })...)
		},
		"DIF-CRANK-SHORT": func(e *entry) {
			e.check("fraction_lost", each(e.in("Fo"), func(fo float64) float64 { return 1 - remaining(e, fo) })...)
		},
		"DIF-HALF": func(e *entry) {
			e.check("Fo", fourierOf(e, e.in("fraction_remaining"))...)
		},
		"FRP-06": func(e *entry) { e.check("Dt_over_L2", fourierOf(e, e.in("residual"))...) },
		"DIF-GEA-9.9-1": func(e *entry) {
			left := (e.one("X_final") - e.one("X_eq")) / (e.one("X_initial") - e.one("X_eq"))
			l := e.one("thickness_m") / e.one("sides")
			e.check("t_h", fourierOf(e, []float64{left})[0]*l*l/e.one("D_m2_per_h"))
		},
		"FRP-05": func(e *entry) {
			left := (e.one("X_mean_end") - e.one("X_eq")) / (e.one("X_mean_start") - e.one("X_eq"))
			fo, l := fourierOf(e, []float64{left})[0], e.one("thickness_m")/2
			e.check("Fourier_number", fo)
			e.check("time_h", fo*l*l/e.one("D_m2_s")/3600)
		},
		"FRP-07": func(e *entry) {
			const l = 0.03
			fo := fourierOf(e, []float64{e.one("mean_residual"), 0.2})
			d := fo[0] * l * l / e.one("time_h") / 3600
			e.check("D_m2_s", d)
			e.check("time_to_residual_0.2_h", fo[1]*l*l/d/3600)
			e.check("time_two_faces_h", fo[1]*l*l/4/d/3600)
		},
		"LTX-02": func(e *entry) {
			d := film.Diffusion{PolymerDensity: 1080}
			lost := func(critical float64) []float64 {
				return each(e.in("phi_start"), func(phi float64) float64 { return 1 - d.Water(critical)/d.Water(phi) })
			}
			e.check("lost_at_0.74", lost(0.74)...)
			e.check("lost_at_0.64", lost(0.64)...)
		},
		"LTX-05": func(e *entry) {
			a := job.Default().Film.Adhesive
			e.check("random_close_packing", a.Packing)
			e.check("hexagonal_close_packing", a.Closing)
		},
		"LTX-06": func(e *entry) {
			r, T, h, v := e.in("R_m"), e.kelvins("T_C"), e.in("H0_m"), e.in("E_m_s")
			var d0, pe []float64
			for i := range r {
				d := film.Diffusion{ParticleDiameter: 2 * r[i]}
				d0 = append(d0, d.Dilute(T[i]))
				pe = append(pe, h[i]*v[i]/d0[i])
			}
			e.check("D0_m2_s", d0...)
			e.check("Pe", pe...)
		},
		"LTX-12": surfaceAfterDehydration, "LTX-13": lateHumidity,
		"LTX-01-RUN": constantRateEnds, "LTX-09": squareRootLaw, "LTX-13-SKIN": skinAndHumidity,
		"LTX-16": func(e *entry) {
			chi, rho := e.in("chi"), e.in("polymer_density_kg_m3")
			var uptake []float64
			for i := range chi {
				uptake = append(uptake, film.FloryHuggins{Chi: chi[i], PolymerDensity: rho[i]}.Water(e.one("a_w")))
			}
			e.check("uptake_mass_frac_dry", uptake...)
		},
		"LTX-18": func(e *entry) {
			var labels []string
			var d []float64
			for _, a := range material.Adhesives() {
				if strings.HasPrefix(a.ID, "acrylic") {
					labels, d = append(labels, a.ID), append(d, a.Adhesive.DryDiffusion)
				}
			}
			e.checkAt("D_m2_s", labels, d...)
		},
	}
}

// porous is a film that dries through a porous skin, held at the air's temperature by its part.
func porous(water, solids, diffusivity float64, a air.State, h float64) *bench {
	b := acrylic(water, a, h)
	b.coat.Solids, b.coat.Transport = solids, film.PorousSkin{Diffusivity: diffusivity}
	b.back = given(1e6)
	return b
}

// constantRateEnds is the polymer's share where the rate of a porous film has fallen by 2 %.
func constantRateEnds(e *entry) {
	a := e.state(air.FromRelativeHumidity(e.kelvin("T_C"), atmosphere, e.one("RH"), true))
	phi := e.one("phi_start")
	d := acrylic(0, a, 1).coat.Diffusion
	b := porous(d.Water(phi), phi*e.one("wet_thickness_m")*d.PolymerDensity, e.one("D_eff_m2_s"), a, e.one("h_W_per_m2K"))
	first, ok := b.run(e, 60, nil)
	if !ok {
		return
	}
	constant := first.Read(first.time, first.y).Flux
	m, ok := b.run(e, 86400, func(m moment) float64 {
		if m.time < first.time {
			return -1
		}
		return 0.98*constant - m.Read(m.time, m.y).Flux
	})
	if ok {
		e.check("polymer_vol_frac", d.Fraction(m.MeanWater(m.y)))
	}
}

// skinFilm is a film of a millimetre in air that takes whatever comes: the skin alone sets the rate.
func skinFilm(a air.State) *bench {
	d := acrylic(0, a, 1).coat.Diffusion
	return porous(d.Water(d.Closing), 1e-3*d.PolymerDensity*d.Closing, 7e-7, a, 1e5)
}

// squareRootLaw is the exponent of time in the water lost to a receding front.
func squareRootLaw(e *entry) {
	a := e.state(air.FromRelativeHumidity(293.15, atmosphere, 0.5, true))
	b := skinFilm(a)
	lost := func(time float64) float64 {
		m, ok := b.run(e, time, nil)
		if !ok {
			return math.NaN()
		}
		return b.water - m.MeanWater(m.y)
	}
	const early, late = 3600, 4 * 3600
	e.check("exponent_of_time", math.Log(lost(late)/lost(early))/math.Log(late/early))
}

// skinAndHumidity is the rate when the front has passed half of the film, in damp and in dry air; the dry layer holds the
// water at rest with the air.
func skinAndHumidity(e *entry) {
	flux := each(e.in("RH"), func(rh float64) float64 {
		b := skinFilm(e.state(air.FromRelativeHumidity(e.kelvin("T_C"), atmosphere, rh, true)))
		half := (b.water + b.coat.Isotherm.Water(rh)) / 2
		m, ok := b.run(e, 30*86400, func(m moment) float64 { return half - m.MeanWater(m.y) })
		if !ok {
			return math.NaN()
		}
		return m.Read(m.time, m.y).Flux
	})
	e.check("flux_ratio_RH60_over_RH20", flux[1]/flux[0])
}

// fickD is the constant diffusivity of the film that stands for Fick's slab [m2/s].
const fickD = 1e-11

// fick is a film of constant diffusivity on a sealed part, its surface held at zero: so dry that its density stays (0.005 %
// water changes it by as much), in dry air that takes whatever comes.
func fick() (b *bench, length float64) {
	const solids, start = 0.1, 5e-5
	d := film.Diffusion{PolymerDensity: 1080, ParticleDiameter: 1e-6, Packing: 0.64, Closing: 0.74, Capillary: fickD, Dry: fickD}
	coat := film.Coat{Solids: solids, Diffusion: d, Isotherm: softIsotherm(), HeatCapacity: 1500, Conductivity: 0.3}
	// 400 cells leave 1e-4: the error of the decay's rate, of second order, is multiplied by five late in it.
	return &bench{coat: coat, part: foil(film.Exposed), cells: 400, water: start, start: 300,
		tolerance: 1e-9, around: stillAir{air: dryAir(300), wall: 300}, front: given(1e7), back: given(1e7)}, solids / d.PolymerDensity
}

// remaining is the share of the water left at the Fourier number fo.
func remaining(e *entry, fo float64) float64 {
	b, l := fick()
	m, ok := b.run(e, fo*l*l/fickD, nil)
	if !ok {
		return math.NaN()
	}
	return m.MeanWater(m.y) / b.water
}

// fourierOf are the Fourier numbers at which the shares are left.
func fourierOf(e *entry, shares []float64) []float64 {
	return each(shares, func(left float64) float64 {
		b, l := fick()
		m, ok := b.run(e, 10*l*l/fickD, func(m moment) float64 { return left*b.water - m.MeanWater(m.y) })
		if !ok {
			return math.NaN()
		}
		return m.time * fickD / (l * l)
	})
}

// acrylic is the film of the reference adhesive, 75 g/m2 dry, on a foil in air.
func acrylic(water float64, a air.State, h float64) *bench {
	d := film.Diffusion{PolymerDensity: 1080, ParticleDiameter: 200e-9, Packing: 0.64, Closing: 0.74, Capillary: 1e-9, Dry: 5e-12,
		Activation: 40e3}
	coat := film.Coat{Solids: 0.075, Diffusion: d, Isotherm: softIsotherm(), HeatCapacity: 1500, Conductivity: 0.3}
	return &bench{coat: coat, part: foil(film.Exposed), cells: 48, water: water, start: a.T, around: stillAir{air: a, wall: a.T},
		front: given(h), back: given(h)}
}

// lateHumidity: how much the humidity of the air slows the last water, at the same mean water content.
func lateHumidity(e *entry) {
	flux := each(e.in("RH"), func(rh float64) float64 {
		a := e.state(air.FromRelativeHumidity(e.kelvin("T_C"), atmosphere, rh, true))
		b := acrylic(1, a, 25)
		m, ok := b.run(e, 86400, func(m moment) float64 { return lateWater - m.MeanWater(m.y) })
		if !ok {
			return math.NaN()
		}
		return m.Read(m.time, m.y).Flux
	})
	e.check("flux_ratio_RH60_over_RH20", flux[1]/flux[0])
}

// lateWater is the mean water content at which late drying is read: well in the falling rate, above any equilibrium.
const lateWater = 0.15

// surfaceAfterDehydration: the water at the surface once the film holds the same water as a whole, dried cold or hot in air
// of the same relative humidity, so that both go to the same end.
func surfaceAfterDehydration(e *entry) {
	x := each(e.kelvins("T_C"), func(T float64) float64 {
		a := e.state(air.FromRelativeHumidity(T, atmosphere, e.one("RH"), true))
		m, ok := acrylic(1, a, e.one("h_W_per_m2K")).run(e, 86400, func(m moment) float64 { return e.one("X_mean") - m.MeanWater(m.y) })
		if !ok {
			return math.NaN()
		}
		return m.Read(m.time, m.y).SurfaceWater
	})
	e.check("surface_water_27C_over_82C", x[0]/x[1])
}
