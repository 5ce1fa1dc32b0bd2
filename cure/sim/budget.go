package sim

import (
	"errors"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/route"
	"github.com/drywright/drywright/cure/words"
)

// budget is what all runs of one question may spend together: the open time, every round of a balance, every batch, spot and
// route. It counts work and never time, so that the same job ends at the same place everywhere.
//
// The unit is one step tried, accepted or not, on a system of fewUnknowns or fewer. On a larger system a step counts for as many
// as it has more unknowns, because it takes that much longer at most.
type budget struct {
	steps int // as the job gives them
	left  int // in steps times fewUnknowns
}

// fewUnknowns is a system so small that a step takes the same time on a smaller one: the search for the film's surface is then
// most of it. The default grid with crosslinking has about 70.
const fewUnknowns = 40

func newBudget(n *job.Numerics) *budget {
	return &budget{steps: n.StepBudget, left: n.StepBudget * fewUnknowns}
}

// taken is what has been spent, in whole steps rounded up.
func (p *budget) taken() int { return p.steps - p.left/fewUnknowns }

// price is what one step of a system costs.
func price(s *film.System) int { return max(s.Dim(), fewUnknowns) }

// stepper makes the integrator of one stage, which may take all steps that are left.
//
// Errors: fault.Limit where not one is left.
func (b *bench) stepper(s *film.System, st *route.Stage) (*ode.Solver, error) {
	steps := b.budget.left / price(s)
	if steps <= 0 {
		return nil, b.budget.spent()
	}
	tol := b.job.Numerics.RelativeTolerance
	return ode.NewSolver(s, ode.Options{RelTol: tol, AbsTol: s.Tolerances(tol), StepBudget: steps, Memory: b.first.memory(st)})
}

// pay takes from the budget what a stage has spent.
func (b *bench) pay(s *film.System, did ode.Stats) {
	b.budget.left -= (did.Steps + did.Rejected) * price(s)
}

// said is an error of an integrator as the user is told it: a budget that ode finds spent is the share that one stage had.
func (p *budget) said(err error) error {
	var limit *fault.Fault
	if errors.As(err, &limit) && limit.Code == fault.Limit {
		return p.spent()
	}
	return err
}

// spent says that nothing is left.
func (p *budget) spent() error {
	return fault.New(fault.Limit, "", words.Told("the budget of {steps} steps for all runs of the job is spent", "steps", p.steps), "")
}
