package validate

import (
	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/transfer"
)

// constants are the natural constants as the product has them.
func constants() cases {
	return cases{
		"CST-R":     func(e *entry) { e.check("R_J_per_molK", air.GasConstant) },
		"CST-SIGMA": func(e *entry) { e.check("sigma_W_per_m2K4", transfer.StefanBoltzmann) },
		"CST-G":     func(e *entry) { e.check("g_m_per_s2", transfer.Gravity) },
		"CST-MW":    func(e *entry) { e.check("M_g_per_mol", 1e3*air.WaterMolarMass) },
		"CST-MA":    func(e *entry) { e.check("M_g_per_mol", 1e3*air.AirMolarMass) },
	}
}
