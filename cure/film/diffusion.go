package film

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/num"
)

const (
	boltzmann   = 1.380649e-23 // J/K, CODATA 2018
	gasConstant = 8.314462618  // J/(mol K), CODATA 2018
	// WaterDensity is the density of the water in the film [kg/m3]; its change with temperature (4 % from 20 to 100
	// degC) is left out, as the model's volume fractions are.
	WaterDensity = 1000.0
	// diffusionReference is the temperature at which the dry film's diffusivity is stated [K].
	diffusionReference = 298.15
)

// Diffusion is the diffusivity of water in a film of dispersion in three regimes, joined continuously:
//
//  1. phi < phi_m: collective diffusion of particles, D0 (1-phi)^6 phi_m^2/(phi_m-phi)^2 with D0 = kB T/(3 pi mu d)
//     (Routh and Zimmerman 2004, Chem. Eng. Sci. 59, 2961), capped at D_cap;
//  2. phi_m <= phi < phi_c: capillary flow between packed particles, D_cap;
//  3. phi >= phi_c: log D falls linearly in X from D_cap at X_c to D_dry(T) at X = 0, with
//     D_dry = D_25 exp(-E_D/R (1/T - 1/298.15 K)), never above D_cap.
//
// phi is the polymer's volume fraction [-], X the water content [kg per kg solids].
type Diffusion struct {
	PolymerDensity   float64 // rho_p [kg/m3]
	ParticleDiameter float64 // d [m]
	Packing          float64 // phi_m [-]
	Closing          float64 // phi_c [-]
	Capillary        float64 // D_cap [m2/s]
	Dry              float64 // D_25 [m2/s]
	Activation       float64 // E_D [J/mol]
}

// Fraction returns the polymer's volume fraction [-] at the water content x [kg/kg].
func (d Diffusion) Fraction(x float64) float64 { return 1 / (1 + x*d.PolymerDensity/WaterDensity) }

// Water returns the water content [kg/kg] at the polymer's volume fraction phi [-].
func (d Diffusion) Water(phi float64) float64 { return (1/phi - 1) * WaterDensity / d.PolymerDensity }

// Dilute returns D0(T) [m2/s], the diffusivity of one particle in serum (Stokes and Einstein).
func (d Diffusion) Dilute(T float64) float64 {
	return boltzmann * T / (3 * math.Pi * air.WaterViscosity(T) * d.ParticleDiameter)
}

// At prepares the diffusivity for the temperature T [K].
func (d Diffusion) At(T float64) Potential {
	p := Potential{
		ratio:  d.PolymerDensity / WaterDensity,
		scale:  d.PolymerDensity * WaterDensity,
		pack:   d.Packing,
		close:  d.Closing,
		cap:    d.Capillary,
		dilute: d.Dilute(T),
		dry:    math.Min(d.Capillary, d.Dry*num.Exp(-d.Activation/gasConstant*(1/T-1/diffusionReference))),
	}
	vc := 1/d.Closing - 1
	p.kappa = num.Log(p.cap/p.dry) / vc
	p.join = d.Packing - joinGap(p.dilute/p.cap, d.Packing)
	// The constants of integration make the potential continuous and zero at phi = 1, the dry film.
	p.closeWater = vc
	p.base3 = p.regime3(0)
	p.base2 = p.cap*d.Closing + p.regime3(vc) - p.base3
	p.base1 = p.base2 - p.cap*p.join - p.regime1(p.join)
	return p
}

// warm prepares slopes, which only a Jacobian asks for, of the potential at T [K].
func (d Diffusion) warm(p *Potential, T float64) {
	p.diluteRise = (d.Dilute(T+temperatureStep)/p.dilute - 1) / temperatureStep
	p.dryRise, p.warm3 = 0, 0
	if p.dry < p.cap {
		p.dryRise = d.Activation / (gasConstant * T * T)
		p.moment0 = p.dry * (1 + eiRest(p.kappa)) / p.kappa
		p.warm3 = p.dryWarming(p.cap, d.Closing, p.closeWater)
	}
}

// joinGap returns u = phi_m - phi where regime 1 reaches its cap: the smaller root of u = sqrt(D0/D_cap) phi_m (c+u)^3,
// c = 1 - phi_m. Iterating from zero climbs to that root; Newton steps make it quadratic.
func joinGap(ratio, pack float64) float64 {
	r, c := math.Sqrt(ratio)*pack, 1-pack
	u := 0.0
	for range 50 {
		q := c + u
		step := (r*q*q*q - u) / (1 - 3*r*q*q)
		if !(step > 0) || step < 1e-16 {
			break
		}
		u += step
	}
	return u
}

// Potential is the diffusivity at one temperature together with its integral, from which the fluxes follow:
// F(X) = integral from 0 to X of D rho_s^2 dX' = rho_p rho_w integral from phi to 1 of D dphi' [kg2/(m4 s)], closed form in all three
// regimes. A flux between two points of the solids coordinate s [kg/m2] is the difference of F over the distance.
type Potential struct {
	ratio, scale        float64 // rho_p/rho_w [-], rho_p rho_w [kg2/m6]
	pack, close, join   float64
	cap, dilute, dry    float64
	kappa               float64
	base1, base2, base3 float64

	closeWater          float64 // v at phi_c
	diluteRise, dryRise float64 // d ln D0/dT, d ln D_dry/dT [1/K]; this and what follows is set by warm
	moment0             float64 // see dryWarming
	warm3               float64 // dryWarming at phi_c
}

// regime1 is an antiderivative of -D in the dispersion.
func (p *Potential) regime1(phi float64) float64 {
	u, c := p.pack-phi, 1-p.pack
	c2 := c * c
	c4 := c2 * c2
	poly := u * (15*c4 + u*(10*c2*c+u*(5*c2+u*(1.5*c+u*0.2))))
	return p.dilute * p.pack * p.pack * (-c4*c2/u + 6*c4*c*num.Log(u) + poly)
}

// regime3 is an antiderivative of -D in the closing film, v = 1/phi - 1 = X rho_p/rho_w.
func (p *Potential) regime3(v float64) float64 {
	return p.dry * num.Exp(p.kappa*v) / (1 + v) * eiRest(p.kappa*(1+v))
}

// Value returns F [kg2/(m4 s)] at the water content x [kg/kg].
func (p *Potential) Value(x float64) float64 {
	v := x * p.ratio
	phi := 1 / (1 + v)
	switch {
	case phi >= p.close:
		return p.scale * (p.regime3(v) - p.base3)
	case phi >= p.join:
		return p.scale * (p.base2 - p.cap*phi)
	default:
		return p.scale * (p.base1 + p.regime1(phi))
	}
}

// ValueSlope returns Value and Slope at the water content x [kg/kg] for little more than one of them.
func (p *Potential) ValueSlope(x float64) (value, slope float64) {
	v := x * p.ratio
	phi := 1 / (1 + v)
	perWater := p.scale * p.ratio * phi * phi
	switch {
	case phi >= p.close:
		d := p.dry * num.Exp(p.kappa*v)
		return p.scale * (d*phi*eiRest(p.kappa*(1+v)) - p.base3), d * perWater
	case phi >= p.join:
		return p.scale * (p.base2 - p.cap*phi), p.cap * perWater
	default:
		return p.Value(x), p.Slope(x)
	}
}

// slopes returns dF/dX [kg2/(m4 s)] and dF/dT [kg2/(m4 s K)] at the water content x [kg/kg], after warm. With
// D = D_dry^(1-v/v_c) D_cap^(v/v_c) in the closing film, v = 1/phi - 1, d ln D/dT is (1 - v/v_c) d ln D_dry/dT there, 0 between
// packed particles and d ln D0/dT before.
func (p *Potential) slopes(x float64) (byWater, byT float64) {
	v := x * p.ratio
	phi := 1 / (1 + v)
	d := p.Diffusivity(x)
	byWater = d * p.scale * p.ratio * phi * phi
	switch {
	case phi >= p.close && p.dryRise > 0:
		byT = p.dryWarming(d, phi, v)
	case phi >= p.close:
	case phi >= p.join:
		byT = p.warm3
	default:
		byT = p.warm3 + p.diluteRise*(p.regime1(phi)-p.regime1(p.join))
	}
	return byWater, p.scale * byT
}

// dryWarming is the integral of dD/dT from phi to 1 in the closing film, where D is d [m2/s] at phi and v. It is dryRise times
// the integral of D less that of D v/v_c; the latter is that of D/(1+v) dv, d (1 + eiRest)/(kappa (1+v)), less the former.
func (p *Potential) dryWarming(d, phi, v float64) float64 {
	rest := eiRest(p.kappa * (1 + v))
	whole := d*phi*rest - p.base3
	moment := d*(1+rest)*phi/p.kappa - p.moment0 - whole
	return p.dryRise * (whole - moment/p.closeWater)
}

// Diffusivity returns D [m2/s] at the water content x [kg/kg].
func (p *Potential) Diffusivity(x float64) float64 {
	v := x * p.ratio
	phi := 1 / (1 + v)
	switch {
	case phi >= p.close:
		return p.dry * num.Exp(p.kappa*v)
	case phi >= p.join:
		return p.cap
	default:
		c := 1 - phi
		u := p.pack - phi
		c3 := c * c * c
		return p.dilute * c3 * c3 * p.pack * p.pack / (u * u)
	}
}

// Slope returns dF/dX = D rho_s^2 [kg2/(m4 s)] at the water content x [kg/kg].
func (p *Potential) Slope(x float64) float64 {
	phi := 1 / (1 + x*p.ratio)
	return p.Diffusivity(x) * p.scale * p.ratio * phi * phi
}
