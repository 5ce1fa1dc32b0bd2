package derive

import (
	"github.com/drywright/drywright/cure/unit"
	"github.com/drywright/drywright/cure/words"
)

// waterDensity is that of liquid water at 20 degC [kg/m3] (998.2; IAPWS-95, as handbook tables print it).
const waterDensity = 998.2

// DispersionDensity is the density of a wet dispersion [kg/m3] of which a mass fraction solids [0 to 1] has the density dry [kg/m3] and the
// rest is water: volumes add up. Exact for particles in water; a few per mille off with much co-solvent.
func DispersionDensity(solids, dry float64) float64 {
	return 1 / (solids/dry + (1-solids)/waterDensity)
}

// WetCoat is the coat weight [kg/m2] of a wet film of thickness [m].
func WetCoat(thickness, solids, dry float64) float64 {
	return thickness * DispersionDensity(solids, dry)
}

// LandedCoat is the coat weight [kg/m2] of a mass [kg] sprayed at an area [m2], of which a share overspray [0 to 1] misses.
func LandedCoat(mass, area, overspray float64) float64 { return mass * (1 - overspray) / area }

// Solids is the non-volatile matter [kg/kg] of a sample weighed in its dish [kg].
func Solids(dish, wet, dry float64) float64 { return (dry - dish) / (wet - dish) }

const coatField = "film.wet_coat_kg_per_m2"

func coatEntries() []entry {
	return []entry{
		{Helper{Kind: Comb, For: at(coatField, "", "film.adhesive.solids_fraction", "film.adhesive.polymer_density_kg_per_m3"),
			Title: words.Told("Coat weight from a wet-film comb"),
			Procedure: words.Told("Press the comb into the film at once after spraying, at right angles to the face. The thickness lies between the deepest tooth " +
				"that is wet and the next one that is dry: take the mean, at several places."),
			Equation: "w = t · ρ,  ρ = 1 / (s / ρₛ + (1 − s) / 998.2 kg/m³)",
			Source:   words.Told("Wet film thickness: ISO 2808, mechanical methods, comb gauge. Density: volumes of solids and water add up (water at 20 °C)."),
			Caution:  words.Told("Foam and a film that has begun to dry read wrong."),
			Inputs: []Input{
				ask("wet_thickness_m", "t", "Wet film thickness", unit.Length, "µm", "mil", 5e-6, 3e-3),
				ask("solids_fraction", "s", "Solids of the adhesive", unit.Share, "%", "%", 0.05, 0.95),
				ask("dry_density_kg_per_m3", "ρₛ", "Density of the dry film", unit.Density, "kg/m³", "lb/ft³", 800, 3000)}},
			func(x []float64, _ string) (float64, []Step, error) {
				density := DispersionDensity(x[1], x[2])
				return WetCoat(x[0], x[1], x[2]), []Step{step("ρ", "Density of the wet adhesive", density, unit.Density, "kg/m³", "lb/ft³")}, nil
			}},
		{Helper{Kind: Sprayed, For: at(coatField, "", "", ""),
			Title: words.Told("Coat weight from what was sprayed"),
			Procedure: words.Told("Weigh gun and cup before and after the part. The overspray is the share that missed it: weigh a part before and after, too, " +
				"and compare."),
			Equation: "w = m · (1 − o) / A",
			Source:   words.Told("Balance of mass; nothing evaporates on the way. The share that misses: common practice, no source (20 to 60 % with air, less with low pressure)."),
			Caution:  words.Told("Water lost between gun and part is taken as still there: the true film is a little drier."),
			Inputs: []Input{
				ask("mass_kg", "m", "Mass sprayed", unit.Mass, "g", "oz", 1e-6, 1000),
				ask("area_m2", "A", "Area coated with it", unit.Area, "m²", "ft²", 1e-6, 1e4),
				ask("overspray", "o", "Share that misses the part", unit.Share, "%", "%", 0, 0.98)}},
			func(x []float64, _ string) (float64, []Step, error) {
				return LandedCoat(x[0], x[1], x[2]), []Step{step("m − o · m", "Mass on the part", x[0]*(1-x[2]), unit.Mass, "g", "oz")}, nil
			}},
		{Helper{Kind: Dried, For: at("film.adhesive.solids_fraction", "", "", ""),
			Title:     words.Told("Solids from a dried sample"),
			Procedure: words.Told("Weigh the dish, weigh about a gram of adhesive into it, spread it, dry it, let it cool in a desiccator and weigh again. Follow ISO 3251 for the mass of the sample, the temperature and the time; take the mean of two."),
			Equation:  "s = (m₂ − m₀) / (m₁ − m₀)",
			Source:    words.Told("ISO 3251, non-volatile-matter content of paints, varnishes and plastics."),
			Caution:   words.Told("Some crosslinkers and co-solvents give off vapour in the oven: extract the air and read the safety data sheet first."),
			Inputs: []Input{
				ask("dish_kg", "m₀", "Dish, empty", unit.Mass, "g", "g", 0, 10),
				ask("wet_kg", "m₁", "Dish with wet adhesive", unit.Mass, "g", "g", 1e-6, 10),
				ask("dry_kg", "m₂", "Dish with dried adhesive", unit.Mass, "g", "g", 1e-6, 10)}},
			func(x []float64, _ string) (float64, []Step, error) {
				switch {
				case x[1] <= x[0]:
					return 0, nil, contradiction("wet_kg", "the dish with wet adhesive is no heavier than the empty dish", "Weigh again, on the same scale.")
				case x[2] < x[0] || x[2] > x[1]:
					return 0, nil, contradiction("dry_kg", "the dried sample is lighter than the dish or heavier than the wet one", "Weigh again, on the same scale.")
				}
				return Solids(x[0], x[1], x[2]), []Step{step("m₁ − m₀", "Wet sample", x[1]-x[0], unit.Mass, "g", "g")}, nil
			}},
	}
}

func entries() []entry {
	list := coatEntries()
	list = append(list, airEntries()...)
	return append(list, partEntries()...)
}
