package air

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// Props are the properties of moist air that transfer needs: density kg/m3, isobaric heat capacity J/kg K (of mixture),
// conductivity W/m K, viscosity Pa s and the diffusivity of water vapour in air m2/s.
type Props struct {
	Density, HeatCapacity, Conductivity, Viscosity, Diffusivity float64
}

// KinematicViscosity in m2/s.
func (m Props) KinematicViscosity() float64 { return m.Viscosity / m.Density }

// ThermalDiffusivity in m2/s.
func (m Props) ThermalDiffusivity() float64 { return m.Conductivity / (m.Density * m.HeatCapacity) }

// Prandtl number, nu/alpha.
func (m Props) Prandtl() float64 { return m.Viscosity * m.HeatCapacity / m.Conductivity }

// Schmidt number, nu/D.
func (m Props) Schmidt() float64 { return m.Viscosity / (m.Density * m.Diffusivity) }

// Lewis number, alpha/D.
func (m Props) Lewis() float64 { return m.Conductivity / (m.Density * m.HeatCapacity * m.Diffusivity) }

// Temperatures at which the transport fits are held for trial states.
const (
	transportLow, transportHigh = 180, 750 // K
)

// Wilke's constants: fourth root of the mass ratio and the two denominators.
const (
	fourthRoot   = 0.8880512915093168     // (Mw/Ma)^(1/4)
	wilkeInverse = 1 / 4.567588773956176  // 1/sqrt(8 (1 + Ma/Mw))
	marreroMason = 4.6058512567237527e-05 // 1.87e-10 x 400^2.072, m2/s at 1 atm
	atmosphere   = 101325.                // Pa
)

// Mixture is the set of properties of moist air at T in K, total pressure p in Pa and vapour mole fraction y in [0, 1].
//
//   - Viscosity and conductivity of dry air: cubics within 0.01 % (273 to 523 K; 0.4 % from 200 to 700 K) of the dilute-gas
//     part of Lemmon and Jacobsen 2004, Int. J. Thermophys. 25, 21 (pressure adds 0.1 % at 1 atm).
//   - Of steam: cubics within 0.1 % (273 to 523 K) of the dilute-gas parts of the IAPWS formulations 2008 (viscosity; Huber et
//     al. 2009, J. Phys. Chem. Ref. Data 38, 101) and 2011 (conductivity; Huber et al. 2012, ibid. 41, 033102).
//   - Mixing: Wilke 1950, J. Chem. Phys. 18, 517; conductivity by Wassiljewa's equation with the same factors (Mason and
//     Saxena 1958, Phys. Fluids 1, 361).
//   - Diffusivity: D = 1.87e-10 T^2.072 / p[atm] m2/s, Marrero and Mason 1972, J. Phys. Chem. Ref. Data 1, 3, for 282 to 450 K;
//     the odd power is a quadratic within 0.03 %. Above 177 degC it is an extrapolation. Other published fits lie up to 11 %
//     lower at 150 degC.
//
// The fits are held at 180 and 750 K so that no trial state makes a property negative.
func Mixture(T, p, y float64) Props {
	x := centred(min(max(T, transportLow), transportHigh))
	muAir := 2.3044887e-05 + x*(8.5057299e-06+x*(-9.7762313e-07+x*2.0675477e-07))
	muVapour := 1.3347773e-05 + x*(7.7031888e-06+x*(8.2694496e-07-x*5.89184e-07))
	kAir := 0.033431676 + x*(0.01351125+x*(-0.0011729268+x*0.00025058984))
	kVapour := 0.026428608 + x*(0.017357498+x*(0.0029829352-x*0.00055961))
	cpAir := airHeat0 + x*(airHeat1+x*(airHeat2+x*airHeat3))
	cpVapour := vapourHeat0 + x*(vapourHeat1+x*(vapourHeat2+x*vapourHeat3))

	ratio := muAir / muVapour
	s := 1 + math.Sqrt(ratio)*fourthRoot
	airByVapour := s * s * wilkeInverse
	vapourByAir := airByVapour / (ratio * massRatio)
	dry := 1 - y
	shareAir := dry / (dry + y*airByVapour)
	shareVapour := y / (y + dry*vapourByAir)

	massAir, massVapour := dry*AirMolarMass, y*WaterMolarMass
	mass := massAir + massVapour
	return Props{
		Density:      mass * p / (GasConstant * T),
		HeatCapacity: (massAir*cpAir + massVapour*cpVapour) / mass,
		Conductivity: shareAir*kAir + shareVapour*kVapour,
		Viscosity:    shareAir*muAir + shareVapour*muVapour,
		Diffusivity:  diffusivity(x, p),
	}
}

// Diffusivity is that of water vapour in air, m2/s, as in Mixture (Marrero and Mason 1972).
func Diffusivity(T, p float64) float64 {
	return diffusivity(centred(min(max(T, transportLow), transportHigh)), p)
}

func diffusivity(x, p float64) float64 {
	t := 1 + x*0.5 // T/400
	return marreroMason * atmosphere / p * t * t * (1.0000163 + x*(0.036791364-x*0.0087698599))
}

// WaterViscosity is the viscosity of liquid water at 0.1 MPa, Pa s.
//
//	mu = 1e-6 sum a_i (T/300 K)^b_i
//
// Patek, Hruby, Klomfar, Souckova and Harvey 2009, "Reference correlations for thermophysical properties of liquid water at
// 0.1 MPa", J. Phys. Chem. Ref. Data 38, 21; in IAPWS SR6-08. Range 253.15 to 383.15 K; above it is an extrapolation
// that falls smoothly (within 3 % of IAPWS 2008 for saturated water up to 473 K). Worked value: 298.15 K gives 8.900e-4.
// Below 235 K, where no liquid is left, the value of 235 K is kept, because the last power would overflow.
func WaterViscosity(T float64) float64 {
	// All exponents are whole multiples of 0.1: one exponential and some products serve for four, to 1e-14.
	r := num.Exp(-0.1 * num.Log(max(T, 235)/300))
	r2 := r * r
	r4 := r2 * r2
	r8 := r4 * r4
	r16 := r8 * r8
	r64 := r16 * r16 * r16 * r16
	r128 := r64 * r64
	return 1e-6 * (280.68*(r16*r2*r) + 511.45*(r64*r8*r4*r) + 61.131*(r128*r64*r4) + 0.45903*(r128*r128*r128*r16))
}
