package validate

import (
	"math"
	"slices"

	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/material"
)

// materials are the records of parts, adhesives and fibres against the tables.
func materials() cases {
	return cases{
		"M0*": partRecord, "M1*": partRecord, "M40": partRecord, "M20": arealHeat, "M26": lowestLimit, "M35": polymers,
		"T04": func(e *entry) {
			cover := 1 - fibre(e, "polyamide").Porosity
			e.check("area_fraction", cover)
			e.check("area_fraction_max", cover)
		},
		"T06": fibreCount,
		"T07": func(e *entry) {
			var labels []string
			var l []float64
			for _, f := range material.Fibres() {
				labels, l = append(labels, f.ID), append(l, 1e3*f.Pile.Length)
			}
			e.checkAt("length_mm", labels, l...)
		},
		"T26": fibreRegain,
		"T26-65": func(e *entry) {
			ids := e.texts("records")
			var regain []float64
			for _, id := range ids {
				regain = append(regain, 100*fibre(e, id).Regain)
			}
			e.checkAt("regain_pct", ids, regain...)
		},
		"T10": func(e *entry) {
			var labels []string
			var s []float64
			for _, a := range material.Adhesives() {
				labels, s = append(labels, a.ID), append(s, 100*a.Adhesive.Solids)
			}
			e.checkAt("solids_wt_pct", labels, s...)
		},
	}
}

// fibreRegain is what a kilogram of fibre holds at rest with air of some humidity.
func fibreRegain(e *entry) {
	full := 100 * film.Regain(1, fibre(e, "polyamide").Regain)
	e.check("regain_pct", each(e.in("RH_pct"), func(rh float64) float64 { return full * rh / 100 })...)
	e.richer("regain_90_pct", within(0.6), "the fibre's isotherm is a straight line through 65 %: the bend near saturation is left out", full*0.9)
}

// part returns a record.
func part(e *entry, id string) job.Part {
	all := material.Parts()
	i := slices.IndexFunc(all, func(p material.Part) bool { return p.ID == id })
	if i < 0 {
		e.fail("no part material " + id)
		return job.Part{}
	}
	return all[i].Part
}

// fibre returns a record.
func fibre(e *entry, id string) job.Pile {
	all := material.Fibres()
	i := slices.IndexFunc(all, func(f material.Fibre) bool { return f.ID == id })
	if i < 0 {
		e.fail("no fibre " + id)
		return job.Pile{}
	}
	return all[i].Pile
}

// partRecord: density, conductivity and heat capacity, as far as the entry has them.
func partRecord(e *entry) {
	id, _ := e.Inputs["record"].(string)
	p := part(e, id)
	for key, v := range map[string]float64{"rho_kg_m3": p.Density, "k_W_mK": p.Conductivity, "cp_J_kgK": p.HeatCapacity} {
		if _, ok := e.Outputs[key]; ok {
			e.check(key, v)
		}
	}
}

// arealHeat: what a plate of 3 mm holds, and its thermal diffusivity.
func arealHeat(e *entry) {
	ids := e.texts("records")
	var heat, diffusivity []float64
	for _, id := range ids {
		p := part(e, id)
		heat = append(heat, e.one("plate_mm")*1e-3*p.Density*p.HeatCapacity/1e3)
		diffusivity = append(diffusivity, p.Conductivity/(p.Density*p.HeatCapacity)*1e7)
	}
	e.checkAt("kJ_m2K", ids, heat...)
	e.checkAt("diffusivity_1e-7_m2_s", ids, diffusivity...)
}

// lowestLimit: the record takes the lowest of the published continuous temperatures.
func lowestLimit(e *entry) {
	ids := e.texts("records")
	var limits []float64
	for _, id := range ids {
		limits = append(limits, part(e, id).LimitTemperature-zero)
	}
	e.checkAt("lowest_limit_C", ids, limits...)
}

// polymers: density and film-forming temperature of each kind. The firm acrylic is outside of "flock binder" on purpose.
func polymers(e *entry) {
	density, forming := e.want("polymer_density_g_cm3"), e.want("MFFT_C")
	kinds := [...]struct {
		id   string
		kind int
	}{{"acrylic-soft", 0}, {"acrylic-methylol", 0}, {"vinyl-acetate-ethylene", 1}, {"styrene-butadiene", 2}, {"pu-isocyanate", 3},
		{"pu-aziridine", 3}, {"pu-carbodiimide", 3}}
	for _, k := range kinds {
		a := adhesive(e, k.id)
		e.checkPair("polymer_density_g_cm3", k.id, density[2*k.kind:2*k.kind+2], a.PolymerDensity/1e3)
		e.checkPair("MFFT_C", k.id, forming[2*k.kind:2*k.kind+2], a.FilmForming-zero)
	}
}

// checkPair compares one value with one pair of an output that is a list of pairs.
func (e *entry) checkPair(key, label string, pair []float64, ours float64) {
	e.done[key] = true
	r := e.row("")
	r.Quantity, r.Unit = split(key)
	r.Quantity += ", " + label
	r.Expected, r.Upper, r.Ours = pair[0], pair[1], ours
	r.judge(e.Tolerance[key], 0)
	e.rows = append(e.rows, r)
}

// fibreCount: diameters from dtex (grams per 10 km) and the record's density, and fibres per square millimetre.
func fibreCount(e *entry) {
	rho := fibre(e, "polyamide").FibreDensity
	area := each(e.in("dtex"), func(d float64) float64 { return d * 1e-7 / rho })
	count := func(cover float64) []float64 {
		return each(area, func(a float64) float64 { return cover / (a * 1e6) })
	}
	e.check("diameter_um", each(area, func(a float64) float64 { return math.Sqrt(4*a/math.Pi) * 1e6 })...)
	e.check("n_at_10pct", count(0.10)...)
	e.check("n_at_14pct", count(0.14)...)
}
