package derive

import (
	"github.com/drywright/drywright/cure/unit"
	"github.com/drywright/drywright/cure/words"
)

// WallThickness is the mean thickness [m] of a plate of a mass [kg], an area of one face [m2] and a density [kg/m3].
func WallThickness(mass, area, density float64) float64 { return mass / (density * area) }

// Cover is the share of the area that upright fibres of a mass per area [kg/m2] stand on; length [m], density [kg/m3].
func Cover(addOn, length, density float64) float64 { return addOn / (length * density) }

// CountCover is that share for fibres of a linear density [kg/m], count of them a square metre [1/m2].
func CountCover(linear, count, density float64) float64 { return linear * count / density }

const poreField = "pile.porosity"

func partEntries() []entry {
	upright := words.Told("Upright fibres of even thickness: their share of the area is their share of the volume. Round fibres fill 91 % of an area at most; flocked faces reach 8 to 10 % (flocking technology texts).")
	length := ask("length_m", "L", "Fibre length", unit.Length, "mm", "in", 1e-4, 0.02)
	density := ask("fibre_density_kg_per_m3", "ρ", "Density of the fibre", unit.Density, "kg/m³", "lb/ft³", 800, 3000)
	return []entry{
		{Helper{Kind: Weighed, For: at("part.thickness_m", "", "", "part.density_kg_per_m3"),
			Title:     words.Told("Wall thickness from weight and area"),
			Procedure: words.Told("Weigh the uncoated part, or a piece cut from it, and measure the area of one face."),
			Equation:  "d = m / (ρ · A)",
			Source:    words.Told("Definition of density; the mean over the part."),
			Caution:   words.Told("Ribs and bosses count into the mean. Where the wall changes, give the thickest place as a spot."),
			Inputs: []Input{
				ask("mass_kg", "m", "Mass", unit.Mass, "g", "lb", 1e-6, 1e4),
				ask("area_m2", "A", "Area of one face", unit.Area, "m²", "ft²", 1e-6, 1e4),
				ask("density_kg_per_m3", "ρ", "Density of the part", unit.Density, "kg/m³", "lb/ft³", 10, 25000)}},
			func(x []float64, _ string) (float64, []Step, error) {
				return WallThickness(x[0], x[1], x[2]), []Step{step("m / A", "Mass of the wall", x[0]/x[1], unit.ArealMass, "kg/m²", "lb/ft²")}, nil
			}},
		{Helper{Kind: AddOn, For: at(poreField, "", "pile.length_m", "pile.fibre_density_kg_per_m3"),
			Title:     words.Told("Share of air from the add-on of fibre"),
			Procedure: words.Told("Weigh a card with its wet coat, flock it, shake and blow the loose fibre off and weigh again at once. The add-on is the difference over the area."),
			Equation:  "ε = 1 − w / (L · ρ)",
			Source:    upright,
			Caution:   words.Told("Water dries off between the two weighings: be quick, or weigh the dried card and subtract the dry film."),
			Inputs:    []Input{ask("add_on_kg_per_m2", "w", "Add-on: mass of fibre on the area", unit.ArealMass, "g/m²", "oz/yd²", 1e-4, 2), length, density}},
			func(x []float64, _ string) (float64, []Step, error) {
				cover := Cover(x[0], x[1], x[2])
				if cover >= roundFibres {
					return 0, nil, contradiction("add_on_kg_per_m2", "so much fibre of that length has no room on the area", "Check the add-on and the fibre length.")
				}
				return 1 - cover, []Step{step("1 − ε", "Share of the area under fibres", cover, unit.Share, "%", "%")}, nil
			}},
		{Helper{Kind: FibreCount, For: at(poreField, "", "", "pile.length_m", "pile.fibre_density_kg_per_m3"),
			Title:     words.Told("Share of air from the count of fibres"),
			Procedure: words.Told("Take the linear density from the fibre's data sheet, and count fibres under a microscope on a known area, at several places."),
			Equation:  "ε = 1 − n · T / ρ,  w = n · T · L",
			Source:    upright,
			Caution:   words.Told("Leaning and lost fibres make the true pile airier than the count at the foot."),
			Inputs: []Input{
				ask("linear_density_kg_per_m", "T", "Linear density of one fibre", unit.LinearDensity, "dtex", "den", 1e-8, 1e-4),
				ask("count_per_m2", "n", "Fibres on the area", unit.PerArea, "1/mm²", "1/in²", 1e5, 1e10), length, density}},
			func(x []float64, _ string) (float64, []Step, error) {
				cover := CountCover(x[0], x[1], x[3])
				if cover >= roundFibres {
					return 0, nil, contradiction("count_per_m2", "so many fibres of that thickness have no room on the area", "Check the count and the linear density.")
				}
				return 1 - cover, []Step{step("1 − ε", "Share of the area under fibres", cover, unit.Share, "%", "%"),
					step("w", "Add-on: mass of fibre on the area", x[0]*x[1]*x[2], unit.ArealMass, "g/m²", "oz/yd²")}, nil
			}},
	}
}

// roundFibres is the share of an area that circles fill when packed most closely, π/√12 (Thue's theorem).
const roundFibres = 0.9069
