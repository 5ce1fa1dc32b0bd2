package validate

import (
	"math"

	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/plan"
)

// spread is what a spread of the model stands on: the points of its sample, and the indices of a function that has them in
// closed form.
func spread() cases {
	return cases{
		"SOB-*": func(e *entry) {
			s, err := num.NewSobol(len(e.want("x")))
			if err != nil {
				e.fail(err.Error())
				return
			}
			point := make([]float64, len(e.want("x")))
			for range int(e.one("index")) + 1 {
				s.Next(point)
			}
			e.check("x", point...)
		},
		"GSA-ISHIGAMI": func(e *entry) {
			a, b := e.one("a"), e.one("b")
			ishigami := func(u []float64) float64 {
				x := each(u, func(u float64) float64 { return math.Pi * (2*u - 1) })
				return math.Sin(x[0]) + a*math.Pow(math.Sin(x[1]), 2) + b*math.Pow(x[2], 4)*math.Sin(x[0])
			}
			indices, err := plan.Indices(ishigami, 3, int(e.one("rows")), int(e.one("replicates")), int(e.one("seed")))
			if err != nil {
				e.fail(err.Error())
				return
			}
			var first, total []float64
			for _, i := range indices {
				first, total = append(first, i.First), append(total, i.Total)
			}
			e.check("first", first...)
			e.check("total", total...)
		},
	}
}
