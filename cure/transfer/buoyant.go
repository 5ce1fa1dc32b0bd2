package transfer

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/words"
)

// Orientation is how the face hangs or lies.
type Orientation uint8

// The orientations.
const (
	Vertical Orientation = iota
	FacingUp
	FacingDown
)

// How Buoyant treats density differences near zero. d = d_T + d_v is the relative difference of density, d_T what temperature
// alone makes, d_v what vapour adds.
const (
	// stillness is the least |d| that the correlation sees, so that h is smooth at d = 0: 1e-4 is 0.03 K. No room is
	// stiller, and it adds 0.01 % to h at 1 K.
	stillness = 1e-4

	// Where heat and vapour pull opposite ways a correlation in |d| alone would drop to still air at d = 0 although both
	// differences are large. It does not happen: they spread at different rates (Le 0.85), so they do not cancel through
	// the whole layer. The two are added like vectors a little out of line, magnitude^2 = d^2 - 2 opposed^2 d_T d_v: exact
	// when one acts alone, at most 0.5 % off h when they help, a third of one of them left where they balance. The size is
	// ours, no source: the least that keeps the vapour flux rising with the water activity (a surface has one state).
	opposed2 = 0.2 * 0.2

	// turnover does the same for the pass from stable to unstable (at most 2 % off h when they help). On faces of more than
	// 1 m the unstable coefficient is so many times the stable one that opposed differences need a wider pass: turnover^2
	// grows with Length^0.7 there, where they oppose each other only; ours, no source, to the same end.
	turnover2      = 0.4 * 0.4
	turnoverGrowth = 0.7
	turnoverOnset  = 0.1 // of d^2: how soon the growth sets in as the two begin to oppose each other, so that h stays smooth
)

// Buoyant is natural convection by the density difference of temperature and vapour together. Length in m is the height
// of a vertical face, and the side of a horizontal one, taken as square (area over perimeter Length/4).
//
// Where light air lies under heavy (a light layer on a face up, a heavy one under a face down) the layer is unstable, else it
// is stable; near zero difference the two pass into each other. Conduction into still air (ConductionDisc of diameter
// Length) is added by fourth powers, so that h is never 0.
type Buoyant struct {
	Length      float64
	Orientation Orientation
}

// Coefficient is the average over the face, at film properties.
func (l Buoyant) Coefficient(a air.State, Ts, ys float64) float64 {
	return l.film(a, Ts, ys, filmProps(a, Ts, ys))
}

// Difference is the relative density difference (rho_inf - rho_s)/rho_mean that drives natural convection, positive when the
// air at the surface is the lighter, and the part of it that temperature alone makes.
func Difference(a air.State, Ts, ys float64) (both, thermal float64) {
	return difference(a, Ts, ys, filmProps(a, Ts, ys))
}

func difference(a air.State, Ts, ys float64, m air.Props) (both, thermal float64) {
	surface := air.State{T: Ts, P: a.P, Y: min(ys, 1)}
	far := a.Density()
	warmed := far * (a.T / Ts)
	return (far - surface.Density()) / m.Density, (far - warmed) / m.Density
}

func (l Buoyant) film(a air.State, Ts, ys float64, m air.Props) float64 {
	d, dt := difference(a, Ts, ys, m)
	least, cross := d*d+stillness*stillness, 2*dt*(d-dt)
	r := math.Sqrt(least - opposed2*cross)
	pr := m.Prandtl()
	size := l.size()
	ra := Grashof(size, r, m.KinematicViscosity()) * pr
	var nu float64
	switch l.Orientation {
	case FacingUp, FacingDown:
		lift := d / math.Sqrt(least-turnover2*cross+l.widening(least, cross))
		if l.Orientation == FacingDown {
			lift = -lift
		}
		unstable := (1 + lift) / 2
		nu = unstable*NaturalHorizontalUnstable(ra, pr) + (1-unstable)*NaturalHorizontalStable(ra, pr)
	default:
		nu = NaturalVertical(ra, pr)
	}
	h, c := nu*m.Conductivity/size, ConductionDisc(m.Conductivity, l.Length)
	h *= h
	c *= c
	return math.Sqrt(math.Sqrt(h*h + c*c))
}

// widening is what a face of more than 1 m adds to the pass from stable to unstable; cross is 2 d_T d_v, least is d^2.
func (l Buoyant) widening(least, cross float64) float64 {
	if l.Length <= 1 || cross >= 0 {
		return 0
	}
	return turnover2 * (num.Pow(l.Length, turnoverGrowth) - 1) * cross * cross / (turnoverOnset*least - cross)
}

// size is the characteristic length of the correlation.
func (l Buoyant) size() float64 {
	if l.Orientation == Vertical {
		return l.Length
	}
	return l.Length / 4
}

// Check looks at the Rayleigh number. Differences within the stillness are no reason to warn.
func (l Buoyant) Check(a air.State, Ts, ys float64) []Caution {
	m := filmProps(a, Ts, ys)
	d, _ := difference(a, Ts, ys, m)
	ra := math.Abs(Grashof(l.size(), d, m.KinematicViscosity())) * m.Prandtl()
	low, high := 1., 1e10
	lift := d
	switch l.Orientation {
	case Vertical:
		low, high = 0, 1e12
	case FacingDown:
		lift = -d
	}
	if l.Orientation != Vertical && lift < 0 {
		low = 1e3
	}
	switch {
	case ra > high:
		return []Caution{{"buoyant_rayleigh_high", words.Told("The face is very large: its Rayleigh number is {ra}; the law of natural convection is published up to {high}.", "ra", short(ra), "high", short(high))}}
	case ra < low && math.Abs(d) > 10*stillness:
		return []Caution{{"buoyant_rayleigh_low", words.Told("The face is very small: its Rayleigh number is {ra}; the law of natural convection is published from {low}.", "ra", short(ra), "low", short(low))}}
	}
	return nil
}

// Provenance of the orientation.
func (l Buoyant) Provenance() Provenance {
	source := words.Told("Raithby and Hollands in Rohsenow, Hartnett and Cho 1998, Handbook of Heat Transfer, 3rd ed., chapter 4; still air: " +
		"Incropera et al. 2007, 6th ed., table 4.1")
	equation := words.Told("unstable: Nu = (Nu_l^10 + Nu_t^10)^(1/10), Nu_l = 1.4/ln(1 + 1.4/(0.835 C Ra^(1/4))), " +
		"C = 0.671/(1 + (0.492/Pr)^(9/16))^(4/9), Nu_t = 0.14 Ra^(1/3); stable: " +
		"Nu = 2.5/ln(1 + 2.5/Nu_T), Nu_T = 0.527 Ra^(1/5)/(1 + (1.9/Pr)^0.9)^(2/9); length side/4, Ra from the density difference")
	switch l.Orientation {
	case FacingUp:
		return Provenance{words.Told("natural convection, facing up"), equation, source, words.Told("unstable 1 < Ra < 1e10, stable 1e3 < Ra < 1e10")}
	case FacingDown:
		return Provenance{words.Told("natural convection, facing down"), equation, source, words.Told("unstable 1 < Ra < 1e10, stable 1e3 < Ra < 1e10")}
	}
	return Provenance{
		Name:     words.Told("natural convection, vertical"),
		Equation: words.Told("Nu = (0.825 + 0.387 Ra^(1/6)/(1 + (0.492/Pr)^(9/16))^(8/27))^2, Ra from the density difference"),
		Source:   words.Told("Churchill and Chu 1975, Int. J. Heat Mass Transfer 18, 1323; still air: Incropera et al. 2007, 6th ed., table 4.1"),
		Range:    "Ra <= 1e12",
	}
}

func cubes(a, b float64) float64 { return num.Cbrt(a*a*a + b*b*b) }
