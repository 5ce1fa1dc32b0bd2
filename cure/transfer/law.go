package transfer

import (
	"math"
	"strconv"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/words"
)

// Law is where a convective coefficient comes from. Other kinds are further types with these methods.
type Law interface {
	// Coefficient is h in W/m2 K for air a over a surface at Ts in K with vapour mole fraction ys.
	Coefficient(a air.State, Ts, ys float64) float64
	// Check lists what of this state lies outside the published range; nil when nothing does.
	Check(a air.State, Ts, ys float64) []Caution
	// Provenance is the source to print beside a result.
	Provenance() Provenance
}

// filmLaw is a Law that takes the film properties from its caller, so that one evaluation serves heat and mass transfer.
type filmLaw interface {
	film(a air.State, Ts, ys float64, m air.Props) float64
}

// filmProps are the properties at the mean temperature and mean mole fraction of surface and air. A superheated trial
// surface (ys above 1) counts as pure steam.
func filmProps(a air.State, Ts, ys float64) air.Props {
	return air.Mixture((Ts+a.T)/2, a.P, (min(ys, 1)+a.Y)/2)
}

// coefficient asks a law for h, sharing m where the law can use it.
func coefficient(l Law, a air.State, Ts, ys float64, m air.Props) float64 {
	if f, ok := l.(filmLaw); ok {
		return f.film(a, Ts, ys, m)
	}
	return l.Coefficient(a, Ts, ys)
}

// Methods lists the laws of this package with equation, source and range, in the order in which a user meets them.
func Methods() []Provenance {
	return []Provenance{
		Given{}.Provenance(),
		Parallel{}.Provenance(),
		Parallel{Tripped: true}.Provenance(),
		Buoyant{Orientation: Vertical}.Provenance(),
		Buoyant{Orientation: FacingUp}.Provenance(),
		Buoyant{Orientation: FacingDown}.Provenance(),
		Combined{}.Provenance(),
		SlotField{}.Provenance(),
		RoundField{}.Provenance(),
	}
}

// bound is a number with the range in which a correlation was published.
type bound struct {
	code, what     string
	got, low, high float64
}

// outside turns the bounds that do not hold into cautions.
func outside(bounds []bound) []Caution {
	var out []Caution
	for _, b := range bounds {
		if !(b.got >= b.low && b.got <= b.high) {
			out = append(out, Caution{b.code, words.Told("{what} is {got}; the law is published for {low} to {high}.", "what", b.what, "got", short(b.got), "low", short(b.low), "high", short(b.high))})
		}
	}
	return out
}

// short prints three significant digits for messages: in full up to a million, with a power of ten above.
func short(v float64) string {
	if a := math.Abs(v); a >= 1e6 || !(a >= 1e-4 || a == 0) {
		return strconv.FormatFloat(v, 'g', 3, 64)
	}
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'e', 2, 64), 64)
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}
