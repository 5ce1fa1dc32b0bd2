package sim

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/route"
	"github.com/drywright/drywright/cure/transfer"
	"github.com/drywright/drywright/cure/words"
)

// openStage writes down how the stage's numbers come about, from the reading at its start, and keeps the cautions of
// its transfer law.
func (r *run) openStage(st *route.Stage, d *film.Reading) {
	r.peak = 0
	r.wettest = d.Climate.Air.HumidityRatio()
	face := st.Exposure.Front
	from := face.Law.Provenance()
	state := d.Climate.Air
	line := func(name string, v float64, unit, equation, source string) {
		r.working = append(r.working, result.Working{Stage: st.Name, Name: name, Value: v, Unit: unit, Equation: equation, Source: source})
	}
	equation := from.Equation
	if face.Factor != 1 {
		equation = words.Told("{equation}, times {factor}", "equation", equation, "factor", words.Figure(fault.Number(face.Factor))) // of the place, as a trial has told, and of the spot
	}
	line(words.Told("heat transfer coefficient"), d.Coefficient, "W/(m2 K)", equation, words.Told("{name}; {source}; for {range}", "name", from.Name, "source", from.Source, "range", from.Range))
	line(words.Told("mass transfer coefficient, pile in series"), d.MassCoefficient, "m/s",
		"1/k' = rho cp Le^(2/3)/h + L tau/(eps D)", "Chilton and Colburn (1934), Ind. Eng. Chem. 26, 1183")
	line(words.Told("evaporation where the stage starts"), d.Flux, "kg/(m2 s)",
		"j = k p M/(R T) ln((1-y_air)/(1-y_film))", words.Told("Stefan flow, e.g. Bird, Stewart and Lightfoot (2002) 18.2"))
	line(words.Told("air humidity"), state.HumidityRatio(), "kg/kg", "W = 0.622 y/(1-y)", words.Told("ideal mixing"))
	line(words.Told("air dew point"), state.DewPoint(), "K", "p_sat(T_dp) f = p_v", "IAPWS-IF97, region 4")
	line(words.Told("film at rest with this air"), d.Equilibrium, "kg/kg", r.isotherm(), words.Told("at the air's temperature"))
	biot := d.Coefficient * d.Thickness / r.coat.Conductivity
	line(words.Told("Biot number of the film"), biot, "", "Bi = h H/k", words.Told("the film counts as isothermal up to 0.1"))
	if biot > 0.1 {
		r.caution(transfer.Caution{Code: "film.biot", Text: words.Told("The film's Biot number passes 0.1 in {name}: its surface runs warmer than the model's one film temperature.", "name", st.Name)})
	}
	for _, c := range face.Law.Check(state, d.Film, math.Min(1, air.SaturatedFraction(d.Film, state.P, state.Real))) {
		c.Text = st.Name + ": " + c.Text
		r.caution(c)
	}
}

// caution keeps a caution once.
func (r *run) caution(c transfer.Caution) {
	for _, have := range r.cautions {
		if have == c {
			return
		}
	}
	r.cautions = append(r.cautions, c)
}

// isotherm is the equation of the adhesive's isotherm.
func (r *run) isotherm() string {
	if _, ok := r.coat.Isotherm.(film.FloryHuggins); ok {
		return "ln a = ln(1-phi) + phi + chi phi^2 (Flory-Huggins)"
	}
	return "X = X_m C K a/((1-K a)(1-K a+C K a)) (GAB)"
}
