package validate

import (
	"math"

	"github.com/drywright/drywright/cure/regress"
)

// regression are certified problems of nonlinear least squares, put to the search that fits trials, from both published starts and
// without derivatives.
func regression() cases { return cases{"NIST-*": certified} }

// models of the certified problems.
var certifiedModels = map[string]func(b []float64, x float64) float64{
	"misra1a": func(b []float64, x float64) float64 { return b[0] * -math.Expm1(-b[1]*x) },
	"thurber": func(b []float64, x float64) float64 {
		return (b[0] + x*(b[1]+x*(b[2]+x*b[3]))) / (1 + x*(b[4]+x*(b[5]+x*b[6])))
	},
	"mgh09": func(b []float64, x float64) float64 { return b[0] * (x*x + x*b[1]) / (x*x + x*b[2] + b[3]) },
}

func certified(e *entry) {
	name, _ := e.Inputs["model"].(string)
	model, x := certifiedModels[name], e.in("x")
	data := regress.Data{Y: e.in("y")}
	want := e.want("parameters_start_1")
	for _, start := range []string{"start_1", "start_2"} {
		var parameters []regress.Parameter
		for _, b := range e.in(start) {
			parameters = append(parameters, regress.Parameter{Start: b, Low: math.Inf(-1), High: math.Inf(1)})
		}
		r, err := regress.Fit(func(b, y []float64) error {
			for i := range y {
				y[i] = model(b, x[i])
			}
			return nil
		}, data, parameters, regress.Options{Tolerance: 1e-13, Central: true, Budget: 50_000})
		if err != nil {
			e.fail(err.Error())
			return
		}
		var values, errors []float64
		digits := 11.0 // as many as are certified
		for i, p := range r.Parameters {
			values, errors = append(values, p.Value), append(errors, p.Error)
			digits = math.Min(digits, -math.Log10(math.Abs(p.Value/want[i]-1)))
		}
		e.check("parameters_"+start, values...)
		e.check("digits_"+start, digits)
		if start == "start_2" {
			e.check("standard_errors", errors...)
			e.check("residual_sum_of_squares", r.Sum)
		}
	}
}
