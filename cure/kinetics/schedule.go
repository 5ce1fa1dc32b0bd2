package kinetics

import (
	"fmt"
	"math"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/words"
)

// Pair is one line of a cure schedule: Time [s] held at temperature T [K] reaches the schedule's conversion.
type Pair struct{ T, Time float64 }

// OrderIntegral is G(c) [-], the integral of d alpha/(1 - alpha)^n from 0 to c, for 0 <= c < 1 and n > 0: with a rate
// constant k the time to conversion c is G/k. G = -ln(1 - c) for n = 1, else ((1 - c)^(1-n) - 1)/(n - 1); the second form is
// written with expm1, so that it passes into the first as n nears 1.
func OrderIntegral(c, n float64) float64 {
	l := -math.Log1p(-c)
	if n == 1 {
		return l
	}
	return math.Expm1((n-1)*l) / (n - 1)
}

// FromPair is the law of order n and activation energy e [J/mol] that reaches the conversion (0 < c < 1) in the time
// [s] > 0 at the temperature t [K] > 0, dry: A1 = G(c)/time exp(E/(R T)).
func FromPair(t, time, conversion, e, n float64) Law {
	a := OrderIntegral(conversion, n) / time * num.Exp(e/(GasConstant*t))
	return Law{A1: a, E1: e, N: n, HinderingWater: math.Inf(1)}
}

// FitSchedule finds the frequency factor a [1/s] and activation energy e [J/mol] of the law of order n that comes
// nearest to a data sheet's schedule, by least squares of ln(time) in 1/T with equal weights: ln t = ln(G/A) + E/(R T).
// Misfit is the largest relative error of a fitted time, |t_fit/t - 1|; two pairs are met exactly.
//
// It refuses fewer than two pairs, a conversion outside (0, 1), values that are not above zero, pairs that share one
// temperature, and schedules that take longer the hotter they are. Errors are *fault.Fault with paths that start at
// the schedule ("pairs[1].time_s").
func FitSchedule(pairs []Pair, conversion, n float64) (a, e, misfit float64, err error) {
	if f := checkSchedule(pairs, conversion, n); f != nil {
		return 0, 0, 0, f
	}
	// Centred sums: 1/T hardly varies, so the raw normal equations would lose half of the digits.
	var mx, my float64
	for _, p := range pairs {
		mx += 1 / p.T
		my += num.Log(p.Time)
	}
	count := float64(len(pairs))
	mx, my = mx/count, my/count
	var sxx, sxy float64
	for _, p := range pairs {
		dx := 1/p.T - mx
		sxx += dx * dx
		sxy += dx * (num.Log(p.Time) - my)
	}
	if !(sxx > 1e-20*mx*mx) {
		return 0, 0, 0, fault.New(fault.Conflict, "pairs", words.Told("every pair has the same temperature"),
			words.Told("Give pairs at two or more different temperatures, or one pair and an activation energy."))
	}
	slope := sxy / sxx
	if slope <= 0 {
		return 0, 0, 0, fault.New(fault.Conflict, "pairs", words.Told("the hotter pairs do not take less time"),
			words.Told("Check the schedule: at a higher temperature the same conversion takes a shorter time."))
	}
	intercept := my - slope*mx
	a, e = OrderIntegral(conversion, n)*num.Exp(-intercept), slope*GasConstant
	for _, p := range pairs {
		fitted := num.Exp(intercept + slope/p.T)
		misfit = math.Max(misfit, math.Abs(fitted/p.Time-1))
	}
	if math.IsInf(a, 1) || math.IsInf(e, 1) || !(misfit < math.Inf(1)) {
		return 0, 0, 0, fault.New(fault.Conflict, "pairs", words.Told("the times mean a law beyond all numbers"),
			words.Told("Check the schedule: such different times do not belong to one reaction."))
	}
	return a, e, misfit, nil
}

func checkSchedule(pairs []Pair, conversion, n float64) error {
	if len(pairs) < 2 {
		return fault.New(fault.Conflict, "pairs", words.Told("{count} pairs", "count", len(pairs)),
			words.Told("A fit needs two pairs or more; with one pair give the activation energy too."))
	}
	if !(conversion > 0 && conversion < 1) {
		return fault.OutOfRange("conversion", conversion, 0, 1, "", words.Told("Give the conversion that the schedule reaches."))
	}
	if !(n > 0 && n <= 10) {
		return fault.OutOfRange("order", n, 0, 10, "", words.Told("Give an order above zero."))
	}
	for i, p := range pairs {
		if !(p.T > 0 && p.T <= 1000) {
			return fault.OutOfRange(fmt.Sprintf("pairs[%d].temperature_K", i), p.T, 0, 1000, "K",
				words.Told("Give an absolute temperature."))
		}
		if !(p.Time > 0 && p.Time <= 1e9) {
			return fault.OutOfRange(fmt.Sprintf("pairs[%d].time_s", i), p.Time, 0, 1e9, "s", words.Told("Give a time above zero."))
		}
	}
	return nil
}
