package report

import (
	"math"

	"github.com/drywright/drywright/cure/result"
)

// Fill writes every text of a result from its numbers: titles, labels, printed times, the sentence of each route, the
// risks. It also names what the numbers leave open: the stages without a name, the stage in which a mark or a risk
// falls, and the verdict. It changes no number, needs no order of calls and gives the same texts when called again.
func (w Speaker) Fill(r *result.Result) {
	w.Tell(r)
	for i := range r.Routes {
		w.route(&r.Routes[i])
	}
	for i := range r.Rests {
		w.rest(&r.Rests[i])
	}
}

// terms puts the names of an account's terms into the language. Below, they tell terms apart, and stay in English.
func (w Speaker) terms(accounts ...[]result.Term) {
	for _, terms := range accounts {
		for i := range terms {
			terms[i].Name = w.Fault(terms[i].Name)
		}
	}
}

// route fills one route. Stages come first, since marks and risks are placed by them, and the sentence last, since it
// quotes the risks.
func (w Speaker) route(r *result.Route) {
	w.terms(r.Balances.Water.Terms, r.Balances.Heat.Terms, r.Amounts.EnergyTerms)
	for i := range r.Accounts {
		w.terms(r.Accounts[i].Water.Terms, r.Accounts[i].Heat.Terms)
	}
	r.Title = w.Say("route.title." + string(r.Kind))
	for i := range r.Stages {
		if s := &r.Stages[i]; s.Name == "" {
			s.Name = w.Say("stage." + string(s.Kind))
		}
	}
	for i := range r.Marks {
		w.mark(&r.Marks[i], r)
	}
	for i := range r.Risks {
		risk := &r.Risks[i]
		if risk.Where == "" {
			risk.Where = stageAt(r, risk.Start)
		}
		risk.Text = w.riskText(*risk)
	}
	for i := range r.Profiles {
		r.Profiles[i].Label = w.profileLabel(r.Profiles[i])
	}
	if r.Exit != nil {
		r.Exit.Text = w.Duration(r.Exit.Time)
	}
	if r.Answer.Spot == "" {
		r.Answer.Verdict = verdict(r)
		r.Answer.Text = w.sentence(r)
		w.figures(&r.Answer)
	}
	w.spots(r)
	w.limits(r)
}

// mark fills one mark.
func (w Speaker) mark(m *result.Mark, r *result.Route) {
	m.Label = w.Say("mark.name." + string(m.Name))
	m.Note = ""
	if m.Time == nil {
		m.Text = w.Say("report.not_reached")
		m.Note = w.Say("report.at_horizon", "horizon", w.Duration(m.State.Time))
		return
	}
	m.Text = w.Duration(*m.Time)
	switch {
	case m.Where != "":
	case m.Name == result.Open: // judged on the unflocked film, which has no other stage
		m.Where = w.Say("stage." + string(result.Wait))
	default:
		m.Where = stageAt(r, *m.Time)
	}
	if m.AfterBoiling {
		m.Note = w.Say("report.after_boiling")
	}
}

// profileLabel says which moment a profile shows: a mark, another moment of note, or just the time.
func (w Speaker) profileLabel(p result.Profile) string {
	for _, group := range []string{"mark.name.", "moment."} {
		if label := w.Maybe(group + p.Label); label != "" {
			return label
		}
	}
	if p.Label == "" {
		return w.Duration(p.Time)
	}
	return p.Label
}

// stageAt names the stage in which a time [s] falls. A time on a border belongs to the stage that begins there,
// because its air is what brings a mark about at that moment; the end of the run belongs to the last stage.
func stageAt(r *result.Route, t float64) string {
	for i := len(r.Stages) - 1; i >= 0; i-- {
		if s := r.Stages[i]; t >= s.Start && t <= s.End {
			return s.Name
		}
	}
	return ""
}

// verdict is the answer in one word. A route that is late is late even if a risk comes true as well.
func verdict(r *result.Route) result.Verdict {
	switch {
	case r.Answer.Ready == nil:
		return result.NotReached
	case r.Answer.Margin != nil && *r.Answer.Margin < 0:
		return result.TooLate
	}
	for _, risk := range r.Risks {
		if risk.Severity == result.Danger {
			return result.AtRisk
		}
	}
	return result.InTime
}

// figures prints the numbers of an answer apart from its sentence.
func (w Speaker) figures(a *result.Answer) {
	a.ReadyText, a.MarginText = "", ""
	a.DeadlineText = w.Duration(a.Deadline)
	if a.Ready != nil {
		a.ReadyText = w.Duration(*a.Ready)
	}
	if a.Margin != nil {
		a.MarginText = w.Duration(math.Abs(*a.Margin))
	}
}
