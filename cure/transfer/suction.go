package transfer

import "math"

// How far a law follows the vapour; see Prepared.seen. Form and sizes are ours, no source: loose enough to leave rooms
// and ovens as they are, tight enough that the flux rises with the activity for film temperatures of 273 to 500 K, in
// any air up to pure steam, on faces up to 4 m.
const (
	dewNearness  = 0.01 // of the logarithm at activity 1: how soon beyond the dew point a law ceases to follow suction
	trace        = 1e-9 // the least share of air that a law's reach hangs on
	blowingReach = 30   // b0 in the reach b0 (1 - y_inf)/y_inf of blowing from a pile
)

// prepareSuction finds where suction begins and how far a law follows it, and how far tips follow blowing.
func (p *Prepared) prepareSuction() {
	y := p.s.Air.Y
	if p.full < y {
		p.wet, _ = StefanLog(y, p.full)
	}
	dry, n := max(1-y, trace), p.wet/dewNearness
	p.suction = dry * dry / (1 + n*n)
	p.blowing = blowingReach * dry / y // infinite in dry air
}

// seen is the Stefan logarithm from which a law takes its state, where l, the logarithm of the flux, says how the
// vapour flows. The two differ where a surface drier than water takes vapour up (suction): beyond the dew that falls on
// water of the same temperature, or beyond rest where none falls.
//
//	seen = l0 - x/(1 + (x/c)^2)^(1/2),  x = l0 - l,  l0 = min(0, l at activity 1),  c = (1 - y_inf)^2/(1 + (l0/0.01)^2)
//
// The correlations and the mean of surface and air stand for a layer through which the mole fraction runs nearly
// straight. Under strong suction it does not: in Stefan's profile the surface's share of the mean falls as 1/|l|, the
// layer fills with the far air, and in pure steam |l| is 8. A law that went on following the surface's own mole
// fraction there would change tenfold while the logarithm hardly moves, and the flux would fall with rising activity: a
// surface of several states. In a room c is near 1 and |l| below 0.03, of which all but 0.1 % is seen. Drying, and dew
// on a wet surface, are not touched.
func (p *Prepared) seen(l float64) float64 {
	if l >= p.wet {
		return l
	}
	return p.wet - saturate(p.wet-l, p.suction)
}

// seenByTips is seen for the tips of a pile, whose temperature the vapour shifts, too. In air that is nearly steam
// strong blowing (drying past the boiling point) would turn their layer over the way suction does, so it is followed to
// the order of 30 (1 - y_inf)/y_inf: in air of 0.1 kg/kg that is 180, of a logarithm of 0.3, in pure steam nothing.
func (p *Prepared) seenByTips(l float64) float64 {
	if l > 0 {
		return saturate(l, p.blowing)
	}
	return p.seen(l)
}

// saturate is x for x far below c and c far above.
func saturate(x, c float64) float64 {
	r := x / c
	return x / math.Sqrt(1+r*r)
}

// seenFraction is the mole fraction of a bare surface as seen has it.
func (p *Prepared) seenFraction(ys float64) float64 {
	if ys >= min(p.full, p.s.Air.Y) {
		return ys
	}
	l, _ := StefanLog(p.s.Air.Y, ys)
	return downstream(p.s.Air.Y, p.seen(l))
}
