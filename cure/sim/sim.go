package sim

import (
	"errors"
	"math"
	"slices"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/route"
	"github.com/drywright/drywright/cure/words"
)

// Run computes every route of a valid job, or those of the kinds that are named. The result carries numbers only; package
// report puts them into words. A route that ended early is reported with what was found and a warning; an error means that
// nothing could be computed.
func Run(j *job.Job, kinds ...result.Kind) (result.Result, error) {
	b, err := newBench(j)
	if err != nil {
		return result.Result{}, err
	}
	return b.all(kinds)
}

// all computes the routes of these kinds of the bench's job; of no kinds, every route.
func (b *bench) all(kinds []result.Kind) (result.Result, error) {
	j := b.job
	res := result.Result{Version: result.Version, JobName: j.Name, Routes: []result.Route{}, Warnings: []result.Warning{}}
	res.Rests = rests(j)
	plans, err := route.Plans(j)
	if err != nil {
		return res, err
	}
	open, err := b.openTime()
	if err != nil {
		res.Warnings = append(res.Warnings, result.Warning{Code: "open.run", Text: words.Told("The open time could not be found: {why}", "why", fault.Say(err))})
	}
	for _, p := range plans {
		if len(kinds) > 0 && !slices.Contains(kinds, p.Kind) {
			continue
		}
		rt, err := b.route(p, open)
		if err != nil {
			return res, err
		}
		res.Routes = append(res.Routes, rt)
	}
	return res, nil
}

// route follows one plan, balances its air, and judges it at every spot.
func (b *bench) route(p route.Plan, open result.Mark) (rt result.Route, err error) {
	var warnings []result.Warning
	prepared, humidities, err := b.prepared(p)
	if err != nil {
		code, what := "tunnel.balance", words.Told("The zones' humidities could not be balanced and are as given: {why}", "why", fault.Say(err))
		if p.Kind == result.StaticOven {
			code, what = "oven.batches", words.Told("The other batches could not be followed and are left out: {why}", "why", fault.Say(err))
		}
		warnings = append(warnings, result.Warning{Code: code, Text: what})
	}
	p = prepared
	r := b.newRun(p)
	runErr := r.follow()
	var numeric *fault.Fault
	if runErr != nil && !errors.As(runErr, &numeric) {
		return result.Route{}, runErr
	}
	rt = r.report(open)
	var flows []route.ZoneFlow
	if humidities != nil {
		if flows, err = r.zoneFlows(humidities); err != nil {
			return result.Route{}, err
		}
	}
	rt.Accounts = r.accounts(flows)
	rt.Amounts = r.amounts(rt.Accounts)
	rt.Limits = r.limits(rt.Marks, rt.Accounts)
	if runErr != nil {
		warnings = append(warnings, result.Warning{Code: "run.ended", Text: fault.Say(runErr)})
		rt.Status.Complete = false
	} else if spots, err := r.spots(open, &rt); err != nil {
		warnings = append(warnings, result.Warning{Code: "spots.run", Text: words.Told("The spots could not be followed and are left out: {why}", "why", fault.Say(err))})
		rt.Status.Complete = false // one of them may be the worst
	} else {
		rt.Spots = spots
	}
	// What the air runs out of endangers the whole part alike, so it comes after the spots have been compared.
	shared := airRisks(rt.Accounts)
	rt.Risks = append(rt.Risks, shared...)
	for i := range rt.Spots {
		rt.Spots[i].Risks = append(rt.Spots[i].Risks, shared...)
		if rt.Spots[i].Worst {
			rt.Answer = rt.Spots[i].Answer
			rt.Answer.Spot = rt.Spots[i].Name
		}
	}
	rt.Warnings = append(rt.Warnings, warnings...)
	return rt, nil
}

// prepared is a plan whose air has been settled with what many parts do to it: the humidities of a tunnel's zones, which are
// returned where they were balanced, or the draws of a static oven's other loads. With an error the plan is as it was.
func (b *bench) prepared(p route.Plan) (settled route.Plan, humidities []float64, err error) {
	switch {
	case p.Kind == result.Tunnel && route.Balanced(b.job.Tunnel):
		settled, humidities, err = b.balancedTunnel()
	case p.Kind == result.StaticOven && b.job.StaticOven.Batches > 1:
		settled, err = b.inCompany(p)
	default:
		return p, nil, nil
	}
	if err != nil {
		return p, nil, err
	}
	return settled, humidities, nil
}

// report assembles the route's numbers.
func (r *run) report(open result.Mark) result.Route {
	rt := result.Route{Kind: r.plan.Kind, Risks: r.risks(open), Balances: r.balances(), Curves: r.curves,
		Profiles: r.profiles, Working: r.working, Warnings: []result.Warning{}, Status: r.status(true),
		Accounts: []result.Account{}, Spots: []result.SpotAnswer{}, Limits: []result.Limit{}}
	rt.Marks = []result.Mark{open}
	for _, name := range result.MarkNames()[1:] {
		rt.Marks = append(rt.Marks, r.mark(name))
	}
	for i := range r.plan.Stages {
		st := &r.plan.Stages[i]
		out := result.Stage{Name: st.Name, Kind: st.Kind, Start: st.Start, End: st.End,
			Infrared: st.Exposure.Front.Absorbed+st.Exposure.Front.Passed+st.Exposure.Back.Absorbed > 0}
		if st.Length > 0 {
			position, length := st.Position, st.Length
			out.Position, out.Length = &position, &length
		}
		rt.Stages = append(rt.Stages, out)
	}
	if r.exit.seen {
		rt.Exit = r.leaving(rt.Marks)
	}
	for _, c := range r.cautions {
		rt.Warnings = append(rt.Warnings, result.Warning{Code: c.Code, Text: c.Text})
	}
	rt.Answer = r.answer(rt.Marks)
	return rt
}

// leaving is the film at the exit and the marks that hold there.
func (r *run) leaving(marks []result.Mark) *result.Exit {
	x := &result.Exit{Time: r.plan.Exit, State: state(r.plan.Exit, r.exit.reading), Holds: []result.MarkName{}, Lacks: []result.MarkName{}}
	for i := range marks {
		if at := marks[i].AtExit; at != nil && marks[i].Name != result.Ready {
			if *at {
				x.Holds = append(x.Holds, marks[i].Name)
			} else {
				x.Lacks = append(x.Lacks, marks[i].Name)
			}
		}
	}
	return x
}

// answer compares "ready" with the deadline and says which mark comes last.
func (r *run) answer(marks []result.Mark) result.Answer {
	a := result.Answer{Deadline: r.plan.Deadline}
	last := math.Inf(-1)
	for i := range marks {
		m := &marks[i]
		switch m.Name {
		case result.TackFree, result.DryThrough, result.Cool:
			if m.Time != nil && *m.Time > last {
				last, a.Binding = *m.Time, string(m.Name)
			}
		case result.Ready:
			if m.Time != nil {
				ready, margin := *m.Time, r.plan.Deadline-*m.Time
				a.Ready, a.Margin = &ready, &margin
			}
		}
	}
	if a.Ready == nil {
		a.Binding = ""
		for i := range marks {
			switch m := &marks[i]; m.Name {
			case result.TackFree, result.DryThrough, result.Cool:
				if m.Time == nil && a.Binding == "" {
					a.Binding = string(m.Name)
				}
			}
		}
	}
	return a
}
