package plan

import (
	"errors"
	"fmt"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/words"
)

// Study is a job, one of its routes, and what that route has to achieve.
type Study struct {
	Job   *job.Job    `json:"-"`
	Route result.Kind `json:"route"`
	Goal  *sim.Goal   `json:"goal"` // null: what is usual, see Settle

	rules *job.Rules // of the job's fields; made by Settle
}

// Setting gives a variable a value in SI units.
type Setting struct {
	Variable string  `json:"variable"`
	Value    float64 `json:"value"`
}

// Trial is the job with these settings, made in order; what is not named stays as it is.
type Trial []Setting

// Outcome is how the model judges a trial.
type Outcome struct {
	Judgement result.Judgement `json:"judgement"`
	Refused   string           `json:"refused"` // why validation does not accept the setting; empty where it was computed
	Fault     *fault.Fault     `json:"-"`       // the same, for whoever tells it to a reader
}

// Met reports whether a setting was computed and satisfies every criterion.
func (o *Outcome) Met() bool { return o.Refused == "" && o.Judgement.Met() }

// excess is by how much the worst criterion is passed: not above zero where the setting is good.
func (o *Outcome) excess() float64 {
	w := o.Judgement.Worst()
	if o.Refused != "" || w < 0 {
		return 1
	}
	return o.Judgement.Criteria[w].Share - 1
}

// Evaluate judges a batch of trials of a study, in their order. An error ends the search; it is how a caller cancels one.
type Evaluate func(s Study, trials []Trial) ([]Outcome, error)

// Batch is an Evaluate that judges one trial after the other where it is called.
//
// Errors: a variable or route that the job does not have; whatever makes the job itself impossible to compute.
func Batch(s Study, trials []Trial) ([]Outcome, error) {
	s.rules = s.rulebook()
	known := map[string]Variable{}
	outcomes := make([]Outcome, len(trials))
	for i, t := range trials {
		for _, x := range t {
			if _, met := known[x.Variable]; met {
				continue
			}
			v, err := s.Variable(x.Variable)
			if err != nil {
				return nil, err
			}
			known[x.Variable] = v
		}
		var err error
		if outcomes[i], err = s.try(known, t); err != nil {
			return nil, err
		}
	}
	return outcomes, nil
}

// At is the job of the study at a trial.
//
// Errors: a variable that the job does not have.
func (s Study) At(t Trial) (job.Job, error) {
	known := map[string]Variable{}
	for _, x := range t {
		v, err := s.Variable(x.Variable)
		if err != nil {
			return job.Job{}, err
		}
		known[x.Variable] = v
	}
	return s.at(known, t), nil
}

// rulebook is the study's rules, made anew for one that has not been settled.
func (s Study) rulebook() *job.Rules {
	if s.rules != nil {
		return s.rules
	}
	return job.NewRules()
}

func (s Study) at(known map[string]Variable, t Trial) job.Job {
	j := job.Clone(*s.Job)
	for _, x := range t {
		known[x.Variable].set(&j, x.Value)
	}
	return j
}

func (s Study) try(known map[string]Variable, t Trial) (Outcome, error) {
	j := s.at(known, t)
	var list fault.List
	if err := s.rulebook().Validate(j); errors.As(err, &list) {
		return Outcome{Judgement: result.Judgement{Criteria: []result.Criterion{}}, Refused: list[0].Error(), Fault: list[0]}, nil
	}
	judgement, err := sim.Judge(&j, s.Route, *s.Goal)
	return Outcome{Judgement: judgement}, err
}

// Settle returns the study with its goal. Where none is stated it is the usual one of the route (sim.DefaultGoal); and what
// leaves the oven cured today has to leave it cured after any change, so that a plan never gives up in silence what the
// present setting has; that alone is asked of evaluate.
//
// Errors: a route that the job does not have; a goal that the route cannot have; the job's own faults.
func (s Study) Settle(evaluate Evaluate) (Study, error) {
	s.rules = s.rulebook()
	if _, err := sim.Alone(s.Job, s.Route); err != nil {
		return s, err
	}
	if err := s.rules.Validate(*s.Job); err != nil {
		return s, err
	}
	if s.Goal != nil {
		return s, s.checkGoal()
	}
	usual := sim.DefaultGoal(s.Job, s.Route)
	s.Goal = &usual
	if s.Route == result.Room || s.Job.Film.Adhesive.Crosslinking == nil {
		return s, nil
	}
	cured := usual
	cured.AtExit = append(append([]result.MarkName{}, usual.AtExit...), result.Cured)
	asked := s
	asked.Goal = &cured
	today, err := evaluate(asked, []Trial{{}})
	if err != nil {
		return s, err
	}
	for _, c := range today[0].Judgement.Criteria {
		if c.Name == result.CuredAtExit && c.Met() {
			s.Goal = &cured
		}
	}
	return s, nil
}

func (s Study) checkGoal() error {
	g := s.Goal
	for _, m := range g.AtExit {
		switch m {
		case result.Touch, result.TackFree, result.DryThrough, result.Cured, result.Cool:
		default:
			return fault.New(fault.Choice, "goal.at_exit", fmt.Sprintf("%q", m), words.Told("Give marks out of touch, tack_free, dry_through, cured, cool."))
		}
	}
	if s.Route == result.Room && (len(g.AtExit) > 0 || !g.ByDeadline) {
		return fault.New(fault.Conflict, "goal", words.Told("a room has no exit"), words.Told("Ask a room to be ready by its deadline."))
	}
	if g.ByDeadline && deadlineOf(s.Job, s.Route) <= 0 {
		return fault.New(fault.Missing, string(s.Route)+".deadline_s", "", words.Told("Say when the parts are needed."))
	}
	return nil
}
