package transfer

import (
	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/words"
)

// Given is a coefficient that the user measured or assumes, H in W/m2 K.
type Given struct{ H float64 }

// Coefficient is H.
func (g Given) Coefficient(air.State, float64, float64) float64 { return g.H }

func (g Given) film(air.State, float64, float64, air.Props) float64 { return g.H }

// Check finds nothing: a measured value has no range.
func (g Given) Check(air.State, float64, float64) []Caution { return nil }

// Provenance of a given value.
func (g Given) Provenance() Provenance {
	return Provenance{Name: words.Told("given coefficient"), Equation: words.Told("h as stated"), Source: words.Told("the user"), Range: words.Told("where it was measured")}
}

// Parallel is forced flow along the face at Velocity in m/s over Length in m. The layer turns turbulent at Re 5e5, or, when
// Tripped (sharp edges, fans, racks ahead), at the leading edge. A tripped layer is taken not to transfer less than a
// laminar one, which decides below Re 1.5e4. In air at rest h is 0: use Combined.
type Parallel struct {
	Velocity, Length float64
	Tripped          bool
}

// Coefficient is the average over the length, at film properties.
func (l Parallel) Coefficient(a air.State, Ts, ys float64) float64 {
	return l.film(a, Ts, ys, filmProps(a, Ts, ys))
}

func (l Parallel) film(_ air.State, _, _ float64, m air.Props) float64 {
	re, pr := l.reynolds(m), m.Prandtl()
	var nu float64
	if l.Tripped {
		nu = max(FlatPlateTurbulent(re, pr), FlatPlateLaminar(re, pr))
	} else {
		nu = FlatPlateMixed(re, pr)
	}
	return nu * m.Conductivity / l.Length
}

func (l Parallel) reynolds(m air.Props) float64 {
	return l.Velocity * l.Length / m.KinematicViscosity()
}

// Check looks at the Reynolds number.
func (l Parallel) Check(a air.State, Ts, ys float64) []Caution {
	re := l.reynolds(filmProps(a, Ts, ys))
	switch {
	case re < 1e3:
		return []Caution{{"parallel_reynolds_low", words.Told("The air moves too slowly along the part for a boundary layer: its Reynolds number is {re}; parallel flow is a rough guess below 1000. Use combined flow.", "re", short(re))}}
	case re > 1e8:
		return []Caution{{"parallel_reynolds_high", words.Told("The Reynolds number along the part is {re}; parallel flow is published up to {value}.", "re", short(re), "value", short(1e8))}}
	case l.Tripped && re < TransitionReynolds:
		return []Caution{{"parallel_tripped_short", words.Told("The Reynolds number along the part is {re}; the turbulent law is published from {transition_reynolds}, and over so short or slow a stretch a tripped layer may turn laminar again.", "re", short(re), "transition_reynolds", short(TransitionReynolds))}}
	}
	return nil
}

// Provenance of the branch in use.
func (l Parallel) Provenance() Provenance {
	if l.Tripped {
		return Provenance{
			Name:     words.Told("parallel flow, tripped"),
			Equation: words.Told("Nu = 0.037 Re^(4/5) Pr^(1/3), not below the laminar 0.664 Re^(1/2) Pr^(1/3)"),
			Source:   words.Told("Incropera et al. 2007, Fundamentals of Heat and Mass Transfer, 6th ed., equations 7.30 and 7.38"),
			Range:    "5e5 < Re <= 1e8, 0.6 <= Pr <= 60",
		}
	}
	return Provenance{
		Name:     words.Told("parallel flow"),
		Equation: words.Told("Nu = 0.664 Re^(1/2) Pr^(1/3) to Re 5e5, (0.037 Re^(4/5) - 871) Pr^(1/3) above"),
		Source:   words.Told("Pohlhausen 1921; Incropera et al. 2007, Fundamentals of Heat and Mass Transfer, 6th ed., equations 7.30 and 7.38"),
		Range:    "1e3 <= Re <= 1e8, 0.6 <= Pr <= 60",
	}
}

// Combined adds the cubes of forced and natural convection, h^3 = h_f^3 + h_n^3: Churchill 1977, AIChE J. 23, 10; Incropera
// et al. equation 9.64 with n = 3, for assisting and transverse flow.
type Combined struct {
	Parallel Parallel
	Buoyant  Buoyant
}

// Coefficient is the joint coefficient, at film properties.
func (l Combined) Coefficient(a air.State, Ts, ys float64) float64 {
	return l.film(a, Ts, ys, filmProps(a, Ts, ys))
}

func (l Combined) film(a air.State, Ts, ys float64, m air.Props) float64 {
	f := l.Parallel.film(a, Ts, ys, m)
	n := l.Buoyant.film(a, Ts, ys, m)
	return cubes(f, n)
}

// Check joins the checks of the part that matters: forced flow counts when it makes at least a tenth of h, as natural
// convection does.
func (l Combined) Check(a air.State, Ts, ys float64) []Caution {
	m := filmProps(a, Ts, ys)
	f := l.Parallel.film(a, Ts, ys, m)
	n := l.Buoyant.film(a, Ts, ys, m)
	var c []Caution
	if h := cubes(f, n); f*f*f > 0.1*h*h*h {
		c = append(c, l.Parallel.Check(a, Ts, ys)...)
	}
	if n > 0.1*f {
		c = append(c, l.Buoyant.Check(a, Ts, ys)...)
	}
	return c
}

// Provenance of the sum.
func (l Combined) Provenance() Provenance {
	f, n := l.Parallel.Provenance(), l.Buoyant.Provenance()
	return Provenance{
		Name:     words.Told("combined: {name} and {name2}", "name", f.Name, "name2", n.Name),
		Equation: words.Told("h = (h_f^3 + h_n^3)^(1/3); forced: {equation}; natural: {equation2}", "equation", f.Equation, "equation2", n.Equation),
		Source:   words.Told("Churchill 1977, AIChE J. 23, 10; {source}; {source2}", "source", f.Source, "source2", n.Source),
		Range:    words.Told("each part in its own range: {range}; {range2}", "range", f.Range, "range2", n.Range),
	}
}
