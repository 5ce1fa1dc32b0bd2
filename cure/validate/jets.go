package validate

import (
	"math"

	"github.com/drywright/drywright/cure/transfer"
)

// jets is air blown at the part from slots and round nozzles.
func jets() cases {
	return cases{
		"CNV-ASN-1": func(e *entry) {
			w, s, h, u := e.one("W_slot_m"), e.one("S_pitch_m"), e.one("H_m"), e.one("u_exit")
			re := u * 2 * w / e.one("nu_m2_per_s")
			nu := transfer.SlotArrayMartin(re, e.one("Pr"), w/s, h/w)
			e.check("Re", re)
			e.check("Ar", w/s)
			e.check("Nu", nu)
			e.check("h_W_per_m2K", nu*e.one("k")/(2*w))
			byLaw(e, transfer.SlotField{Width: w, Pitch: s, Distance: h, Velocity: u}, 350)
		},
		"CNV-ARN-1": func(e *entry) {
			d, s, h, u := e.one("D_m"), e.one("S_pitch_m"), e.one("H_m"), e.one("u_exit")
			re := u * d / e.one("nu_m2_per_s")
			area := transfer.TriangularArea(d, s)
			nu := transfer.RoundArrayMartin(re, e.one("Pr"), area, h/d)
			e.check("Re", re)
			e.check("Ar", area)
			e.check("Nu", nu)
			e.check("h_W_per_m2K", nu*e.one("k")/d)
			byLaw(e, transfer.RoundField{Diameter: d, Pitch: s, Distance: h, Velocity: u}, 393.15)
		},
		"CNV-SRN-1": func(e *entry) {
			d := e.one("D_m")
			nu := transfer.SingleRoundMartin(e.one("u_exit")*d/e.one("nu_m2_per_s"), e.one("Pr"), e.one("r_m")/d, e.one("H_m")/d)
			e.check("Nu", nu)
			e.check("h_W_per_m2K", nu*e.one("k")/d)
		},
		"CNV-SSN-1": func(e *entry) {
			w := e.one("W_m")
			nu := func(re float64) float64 {
				return transfer.SingleSlotMartin(re, e.one("Pr"), e.one("x_half_width_m")/w, e.one("H_m")/w)
			}
			re := e.one("u_exit") * 2 * w / e.one("nu_m2_per_s")
			e.check("m", math.Log(nu(2*re)/nu(re))/math.Ln2)
			e.check("Nu", nu(re))
			e.check("h_W_per_m2K", nu(re)*e.one("k")/(2*w))
		},
		"JET-VP": func(e *entry) {
			e.check("u_ideal_m_per_s", transfer.JetVelocity(e.one("pressure_Pa"), e.one("rho"))/transfer.NozzleCoefficient)
		},
	}
}

// byLaw asks the law of the product, in dry air of the temperature whose table values the entry has: 2 % for the tables.
func byLaw(e *entry, l transfer.Law, T float64) {
	e.richer("h_W_per_m2K", relative(0.02), "the product's law with its own properties of air", l.Coefficient(dryAir(T), T, 0))
}
