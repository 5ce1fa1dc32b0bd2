package fit

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/drywright/drywright/cure/result"
)

// TestAstray: a curve that leaves its points for good is told, one with scatter is not, and a large scatter alone is none.
func TestAstray(t *testing.T) {
	points := func(off func(x float64) float64) []result.FitPoint {
		var all []result.FitPoint
		for i := range 20 {
			x := float64(i) / 19
			all = append(all, result.FitPoint{X: x, Y: math.Exp(-3*x) + off(x), Predicted: math.Exp(-3 * x), Residual: off(x)})
		}
		return all
	}
	if share, yes := astray(points(func(x float64) float64 { return 0.2 * (x - 0.5) })); !yes || share < 0.05 {
		t.Errorf("a slope: %v, %v", share, yes)
	}
	if _, yes := astray(points(func(x float64) float64 { return 0.002 * (x - 0.5) })); yes {
		t.Error("a slope that nobody need care for")
	}
	random, told := rand.New(rand.NewPCG(5, 5)), 0
	for range 2000 {
		if _, yes := astray(points(func(float64) float64 { return 0.1 * random.NormFloat64() })); yes {
			told++
		}
	}
	// Once in a thousand by the normal law; 20 points have few runs to lose, so that it is rarer still.
	if told > 8 {
		t.Errorf("scatter alone is told %d times out of 2000", told)
	}
}
