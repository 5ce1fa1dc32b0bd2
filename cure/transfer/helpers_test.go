package transfer_test

import (
	"github.com/drywright/drywright/cure/air"
	. "github.com/drywright/drywright/cure/transfer"
)

const zero = 273.15

func must(s air.State, err error) air.State {
	if err != nil {
		panic(err)
	}
	return s
}

// root bisects f, which falls from positive to negative between lo and hi.
func root(lo, hi float64, f func(float64) float64) float64 {
	for range 80 {
		mid := (lo + hi) / 2
		if f(mid) > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// adiabatic is the temperature at which a wet face without a part behind it stays, and its exchange there.
func adiabatic(s *Surface) (float64, Exchange) {
	T := root(260, min(s.Air.T+80, air.SaturationTemperature(s.Air.P)-1e-6), func(T float64) float64 {
		e := s.Exchange(T, 1)
		return e.FilmHeat - e.Flux*air.LatentHeat(T)
	})
	return T, s.Exchange(T, 1)
}
