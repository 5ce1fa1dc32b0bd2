package plan

import "math"

// fewReplicates is the number of replicates below which their scatter says nothing reliable.
const fewReplicates = 4

// chanceOf estimates a chance from the shares of hits in replicates of n samples each.
//
// The standard error is that of the replicates' mean, as independent estimates of the same chance; but never below half of
// what independent samples would have, since a few replicates can agree by luck. With fewer than four replicates it is that of
// independent samples, which an even sample undercuts. The interval is Wilson's (1927), which stays within 0 and 1 and has a
// width even where every sample hits or none, with Student's factor for the number of replicates and as many samples as would have
// this error if they were independent.
func chanceOf(hits []float64, n int) Chance {
	replicates := float64(len(hits))
	samples := replicates * float64(n)
	c := Chance{}
	for _, h := range hits {
		c.Value += h / replicates
	}
	plain := c.Value * (1 - c.Value) / samples
	variance, factor := plain, studentFactor(math.Inf(1))
	if len(hits) >= fewReplicates {
		scatter := 0.0
		for _, h := range hits {
			scatter += (h - c.Value) * (h - c.Value)
		}
		variance = math.Max(scatter/(replicates-1)/replicates, plain/4)
		factor = studentFactor(replicates - 1)
	}
	effective := samples
	if variance > 0 {
		effective = c.Value * (1 - c.Value) / variance
	}
	z2 := factor * factor / effective
	middle := (c.Value + z2/2) / (1 + z2)
	half := factor / (1 + z2) * math.Sqrt(c.Value*(1-c.Value)/effective+z2/(4*effective))
	c.Low, c.High = math.Min(c.Value, math.Max(0, middle-half)), math.Max(c.Value, math.Min(1, middle+half)) // to rounding
	c.Error = math.Sqrt(variance)
	if variance == 0 {
		c.Error = (c.High - c.Low) / (2 * factor)
	}
	return c
}

// studentFactor is the 97.5 % point of Student's distribution with nu degrees of freedom, nu >= 3, within 1 %.
//
// Source: expansion about the normal distribution, Abramowitz and Stegun (1964), 26.7.5.
func studentFactor(nu float64) float64 {
	const z = 1.959963985
	const z3, z5, z7 = z * z * z, z * z * z * z * z, z * z * z * z * z * z * z
	return z + (z3+z)/(4*nu) + (5*z5+16*z3+3*z)/(96*nu*nu) + (3*z7+19*z5+17*z3-15*z)/(384*nu*nu*nu)
}
