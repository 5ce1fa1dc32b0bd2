package transfer

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// TransitionReynolds is where a boundary layer on a smooth plate in a quiet stream turns turbulent (Incropera et al. 2007,
// Fundamentals of Heat and Mass Transfer, 6th ed., section 6.3).
const TransitionReynolds = 5e5

// FlatPlateLaminar is the average Nusselt number over the length L of a plate in laminar parallel flow.
//
//	Nu = 0.664 Re^(1/2) Pr^(1/3)
//
// Pohlhausen 1921, Z. angew. Math. Mech. 1, 115; Incropera et al. equation 7.30. Range Pr >= 0.6, Re_L <= 5e5; as a
// boundary-layer solution it wants Re_L above about 1e3. Worked value: Re 9 600, Pr 0.687 gives 57.4 (Incropera, example 7.1).
func FlatPlateLaminar(Re, Pr float64) float64 { return 0.664 * math.Sqrt(Re) * num.Cbrt(Pr) }

// FlatPlateLaminarLocal is the Nusselt number at the distance x from the leading edge, half the average to there.
func FlatPlateLaminarLocal(Re, Pr float64) float64 { return 0.332 * math.Sqrt(Re) * num.Cbrt(Pr) }

// FlatPlateLaminarChurchillOzoe is the laminar average for any Prandtl number, Re Pr >= 100.
//
//	Nu = 0.6774 Re^(1/2) Pr^(1/3) / (1 + (0.0468/Pr)^(2/3))^(1/4)
//
// Churchill and Ozoe 1973, J. Heat Transfer 95, 416.
func FlatPlateLaminarChurchillOzoe(Re, Pr float64) float64 {
	c := num.Cbrt(0.0468 / Pr)
	return 0.6774 * math.Sqrt(Re) * num.Cbrt(Pr) / math.Sqrt(math.Sqrt(1+c*c))
}

// FlatPlateTurbulent is the average for a layer turbulent from the leading edge (tripped).
//
//	Nu = 0.037 Re^(4/5) Pr^(1/3)
//
// Incropera et al. equation 7.38 with A = 0. Range 5e5 < Re_L <= 1e8, 0.6 <= Pr <= 60. Below Re 1.5e4 it falls under the
// laminar average.
func FlatPlateTurbulent(Re, Pr float64) float64 { return 0.037 * num.Pow(Re, 0.8) * num.Cbrt(Pr) }

// FlatPlateMixed is the average over a plate whose layer is laminar up to TransitionReynolds and turbulent after.
//
//	Nu = (0.037 Re^(4/5) - A) Pr^(1/3),  A = 0.037 Re_c^(4/5) - 0.664 Re_c^(1/2) = 871
//
// and FlatPlateLaminar below the transition, where both agree. Incropera et al. equations 7.38 and 7.39. Range Re_L <= 1e8,
// 0.6 <= Pr <= 60.
func FlatPlateMixed(Re, Pr float64) float64 {
	if Re <= TransitionReynolds {
		return FlatPlateLaminar(Re, Pr)
	}
	const laminarDeficit = 871.3234750958699 // A, unrounded so that the two branches meet
	return (0.037*num.Pow(Re, 0.8) - laminarDeficit) * num.Cbrt(Pr)
}

// FlatPlateTurbulentPetukhovPopov is the turbulent average after Petukhov and Popov 1963, as VDI Heat Atlas (2010) section
// G4 gives it.
//
//	Nu = 0.037 Re^0.8 Pr / (1 + 2.443 Re^-0.1 (Pr^(2/3) - 1))
//
// Range 5e5 <= Re <= 1e7, 0.6 <= Pr <= 2000.
func FlatPlateTurbulentPetukhovPopov(Re, Pr float64) float64 {
	c := num.Cbrt(Pr)
	return 0.037 * num.Pow(Re, 0.8) * Pr / (1 + 2.443*num.Pow(Re, -0.1)*(c*c-1))
}

// FlatPlateTurbulentKreith is the turbulent average Nu = 0.036 Re^0.8 Pr^(1/3) of Kreith, Principles of Heat Transfer,
// for Re > 5e5, Pr > 0.5.
func FlatPlateTurbulentKreith(Re, Pr float64) float64 {
	return 0.036 * num.Pow(Re, 0.8) * num.Cbrt(Pr)
}

// UnheatedStart is the factor on the average Nusselt or Sherwood number, taken over the whole length L, when transfer
// begins only at the distance lead from the leading edge; the product is the average over L - lead in terms of L.
//
//	factor = L/(L - lead) (1 - (lead/L)^((q+1)/(q+2)))^(q/(q+1)),  q = 2 laminar, 8 turbulent
//
// Incropera et al. equation 7.44 (Ameel 1997). lead in [0, L).
func UnheatedStart(lead, L float64, turbulent bool) float64 {
	q := 2.
	if turbulent {
		q = 8
	}
	return L / (L - lead) * num.Pow(1-num.Pow(lead/L, (q+1)/(q+2)), q/(q+1))
}
