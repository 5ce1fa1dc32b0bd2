package transfer

import (
	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/words"
)

// SlotField is a field of slots blowing at the face: slot width, pitch and distance in m, exit velocity in m/s. The air
// at the nozzles is that of the oven.
type SlotField struct{ Width, Pitch, Distance, Velocity float64 }

// Coefficient is the average over the field, at film properties. In air at rest it is 0.
func (l SlotField) Coefficient(a air.State, Ts, ys float64) float64 {
	return l.film(a, Ts, ys, filmProps(a, Ts, ys))
}

func (l SlotField) film(_ air.State, _, _ float64, m air.Props) float64 {
	nu := SlotArrayMartin(l.reynolds(m), m.Prandtl(), l.Width/l.Pitch, l.Distance/l.Width)
	return nu * m.Conductivity / (2 * l.Width)
}

func (l SlotField) reynolds(m air.Props) float64 {
	return l.Velocity * 2 * l.Width / m.KinematicViscosity()
}

// Check looks at Reynolds number, distance and open area.
func (l SlotField) Check(a air.State, Ts, ys float64) []Caution {
	f0 := slotOptimum(l.Distance / l.Width)
	return outside([]bound{
		{"slots_reynolds", words.Told("The slots' Reynolds number"), l.reynolds(filmProps(a, Ts, ys)), 1500, 4e4},
		{"slots_distance", words.Told("The distance of the slots over their width"), l.Distance / l.Width, 2, 80},
		{"slots_open_area", words.Told("The slots' share of open area"), l.Width / l.Pitch, 0.008, 2.5 * f0},
	})
}

// Provenance of the slots.
func (l SlotField) Provenance() Provenance {
	return Provenance{
		Name:     words.Told("slot nozzles"),
		Equation: words.Told("Nu = (2/3) f0^(3/4) (2 Re/(f/f0 + f0/f))^(2/3) Pr^0.42, f = W/S, f0 = (60 + 4 (H/(2W) - 2)^2)^(-1/2); length 2W"),
		Source:   words.Told("Martin 1977, Adv. Heat Transfer 13, 1-60"),
		Range:    "1500 <= Re <= 4e4, 2 <= H/W <= 80, 0.008 <= W/S <= 2.5 f0",
	}
}

// RoundField is a field of round nozzles in equilateral triangles blowing at the face: diameter, pitch and distance in
// m, exit velocity in m/s. The air at the nozzles is that of the oven.
type RoundField struct{ Diameter, Pitch, Distance, Velocity float64 }

// roundOpenArea is the largest open area for which the law of round nozzles is published, and the largest that
// RoundField computes with. Beyond it the correlation soon falls and ends below zero; nozzles set closer take no air
// from each other, but their spent air is in the way, so that the coefficient of the published end is kept and Check
// says so.
const roundOpenArea = 0.04

// Coefficient is the average over the field, at film properties. In air at rest it is 0.
func (l RoundField) Coefficient(a air.State, Ts, ys float64) float64 {
	return l.film(a, Ts, ys, filmProps(a, Ts, ys))
}

func (l RoundField) film(_ air.State, _, _ float64, m air.Props) float64 {
	f := min(l.openArea(), roundOpenArea)
	nu := RoundArrayMartin(l.reynolds(m), m.Prandtl(), f, l.Distance/l.Diameter)
	return nu * m.Conductivity / l.Diameter
}

func (l RoundField) openArea() float64 { return TriangularArea(l.Diameter, l.Pitch) }

func (l RoundField) reynolds(m air.Props) float64 {
	return l.Velocity * l.Diameter / m.KinematicViscosity()
}

// Check looks at Reynolds number, distance and open area.
func (l RoundField) Check(a air.State, Ts, ys float64) []Caution {
	c := outside([]bound{
		{"round_reynolds", words.Told("The nozzles' Reynolds number"), l.reynolds(filmProps(a, Ts, ys)), 2000, 1e5},
		{"round_distance", words.Told("The distance of the nozzles over their diameter"), l.Distance / l.Diameter, 2, 12},
		{"round_open_area", words.Told("The nozzles' share of open area"), l.openArea(), 0.004, roundOpenArea},
	})
	if l.openArea() > roundOpenArea {
		c[len(c)-1].Text += words.Told(" The coefficient is that of {share}.", "share", short(roundOpenArea))
	}
	return c
}

// Provenance of the round nozzles.
func (l RoundField) Provenance() Provenance {
	return Provenance{
		Name:     words.Told("round nozzles"),
		Equation: words.Told("Nu = K G Re^(2/3)/2 Pr^0.42, f = 0.907 (D/S)^2, K = (1 + (H/D f^(1/2)/0.6)^6)^(-0.05), G = 2 f^(1/2) (1 - 2.2 f^(1/2))/(1 + 0.2 (H/D - 6) f^(1/2)); length D"),
		Source:   words.Told("Martin 1977, Adv. Heat Transfer 13, 1-60"),
		Range:    "2000 <= Re <= 1e5, 2 <= H/D <= 12, 0.004 <= f <= 0.04",
	}
}
