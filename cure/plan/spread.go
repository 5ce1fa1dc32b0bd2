package plan

import (
	"cmp"
	"math"
	"slices"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/words"
)

// SpreadQuestion asks how sure a setting is while inputs vary by what is usual or stated.
type SpreadQuestion struct {
	Study      Study       `json:"study"`
	Tolerances []Tolerance `json:"tolerances"` // empty: DefaultTolerances
	Rows       int         `json:"rows"`       // of one replicate, a power of two from 4 to 4096; 0: 8
	Replicates int         `json:"replicates"` // 4 to 64; 0: 8
	Seed       int         `json:"seed"`       // the same seed gives the same samples; 0: 1
}

// Tolerance is how much an input varies from part to part, day to day, or against what is believed of it.
type Tolerance struct {
	Variable string  `json:"variable"`
	Shape    Shape   `json:"shape"`
	Width    float64 `json:"width"`    // standard deviation of a normal spread, half the width of a uniform one; SI
	Relative bool    `json:"relative"` // Width is a share of the present value
}

// Shape is how values lie around the present one.
type Shape string

// The shapes.
const (
	Normal  Shape = "normal"
	Uniform Shape = "uniform" // anywhere within the half width, nowhere outside
)

// Spread is how sure a setting is, and which inputs decide. It comes from coarse to fine: the last one is Complete.
type Spread struct {
	Route      result.Kind       `json:"route"`
	Goal       sim.Goal          `json:"goal"`
	Chance     Chance            `json:"chance"`     // that every criterion is met
	Criteria   []CriterionChance `json:"criteria"`   // the least sure first
	Influences []Influence       `json:"influences"` // one for each tolerance, the strongest first
	Present    Standing          `json:"present"`    // the job as it is
	Shares     []float64         `json:"shares"`     // of the tightest criterion in each sample, rising, 2 at most; for a picture
	Ready      []float64         `json:"ready_s"`    // in the samples that got ready, rising
	Late       int               `json:"late"`       // samples that did not get ready while they were followed
	Samples    int               `json:"samples"`    // behind the chances
	Refused    int               `json:"refused"`    // of them with values that validation does not accept, counted as not met
	Planned    int               `json:"planned"`    // settings to be judged in all
	Complete   bool              `json:"complete"`
	Runs       int               `json:"runs"`   // settings judged so far
	Text       string            `json:"text"`   // the answer in a sentence or two
	Detail     string            `json:"detail"` // how it was sampled
}

// Chance is a probability estimated from samples.
type Chance struct {
	Value float64 `json:"value"`
	Error float64 `json:"error"` // standard error
	Low   float64 `json:"low"`   // of an interval that holds the truth 95 times out of 100
	High  float64 `json:"high"`
}

// CriterionChance is the chance that one criterion is met.
type CriterionChance struct {
	Name   result.CriterionName `json:"name"`
	Chance Chance               `json:"chance"`
	Text   string               `json:"text"`
}

// Influence is how much of the spread of an outcome comes from one input. Indices are shares of the variance.
type Influence struct {
	Variable  Variable  `json:"variable"`
	Tolerance Tolerance `json:"tolerance"`
	Share     Index     `json:"share"`   // of the tightest criterion's share
	Ready     *Index    `json:"ready_s"` // of the time until ready; null: some samples never got ready
	Text      string    `json:"text"`
}

// Index holds the variance-based indices of one input for one outcome, each with its standard error. They can fall a little
// outside 0..1 by that error.
type Index struct {
	First      float64 `json:"first"` // what the variance would lose on average if the input were known
	FirstError float64 `json:"first_error"`
	Total      float64 `json:"total"` // what would be left if all others were known: with everything the input takes part in
	TotalError float64 `json:"total_error"`
}

// The sample where the question leaves it open: 8 replicates of 8 rows. 128 samples settle a chance of 90 % to about 2 %, and
// indices to about 0.05.
const (
	usualRows       = 8
	usualReplicates = 8
	mostRows        = 4096
	mostReplicates  = 64
	mostTolerances  = num.MaxSobol / 2
)

// shareCap is where shares end for indices and pictures. Up to 1 a share is smooth in every input; beyond it it says only that
// a mark was missed and how far the film was from it, on another scale that a single sample could fill a variance with.
const shareCap = 2.0

// FindSpread samples the tolerances with the real model. All chances and indices come from the same runs: the chances from the
// rows of independent samples, the indices from these and the rows that mix two of them.
//
// What the indices explain is the share of the tightest criterion, whichever that is in a sample: it decides whether the
// sample is good, and it is bounded and continuous where "good or not" jumps and a mark's time may not exist.
//
// Tell, where it is not nil, takes what is known after each replicate.
//
// Errors: a route, goal or variable that the job does not have; tolerances that are none or too wide (fault.Range); what
// evaluate returns.
func FindSpread(q SpreadQuestion, evaluate Evaluate, tell func(Spread)) (Spread, error) {
	study, err := q.Study.Settle(evaluate)
	if err != nil {
		return Spread{}, err
	}
	if len(q.Tolerances) == 0 {
		if q.Tolerances, err = DefaultTolerances(study.Job, study.Route); err != nil {
			return Spread{}, err
		}
	}
	s, err := newSampler(q, study)
	if err != nil {
		return Spread{}, err
	}
	outcomes, err := evaluate(study, []Trial{{}})
	if err != nil {
		return Spread{}, err
	}
	s.present = outcomes[0]
	for r := range s.replicates {
		if err := s.replicate(r, evaluate); err != nil {
			return Spread{}, err
		}
		if tell != nil && r+1 < s.replicates {
			tell(s.spread())
		}
	}
	return s.spread(), nil
}

// Runs is how many settings a spread of these tolerances judges.
func (q *SpreadQuestion) Runs() int64 {
	rows, replicates := q.Rows, q.Replicates
	if rows == 0 {
		rows = usualRows
	}
	if replicates == 0 {
		replicates = usualReplicates
	}
	return int64(1 + replicates*rows*(len(q.Tolerances)+2))
}

// sampler gathers the outcomes of a spread.
type sampler struct {
	study            Study
	tolerances       []Tolerance
	variables        []Variable
	rows, replicates int
	seed             uint64
	chancesOnly      bool // no rows for indices
	present          Outcome
	outcomes         [][]Outcome // by replicate, in the order of its design
}

func newSampler(q SpreadQuestion, study Study) (*sampler, error) {
	s := &sampler{study: study, tolerances: q.Tolerances, rows: q.Rows, replicates: q.Replicates, seed: uint64(max(1, q.Seed))}
	if s.rows == 0 {
		s.rows = usualRows
	}
	if s.replicates == 0 {
		s.replicates = usualReplicates
	}
	switch {
	case s.rows < 4 || s.rows > mostRows || s.rows&(s.rows-1) != 0:
		return nil, fault.OutOfRange("rows", float64(s.rows), 4, mostRows, "", words.Told("Give a power of two."))
	case s.replicates < fewReplicates || s.replicates > mostReplicates:
		return nil, fault.OutOfRange("replicates", float64(s.replicates), fewReplicates, mostReplicates, "", words.Told("Give 8 unless time is short."))
	case len(s.tolerances) > mostTolerances:
		return nil, fault.OutOfRange("tolerances", float64(len(s.tolerances)), 1, mostTolerances, "", words.Told("Leave out what matters least."))
	}
	var err error
	s.variables, err = toleratedVariables(study, s.tolerances)
	return s, err
}

// replicate judges one design.
func (s *sampler) replicate(r int, evaluate Evaluate) error {
	d, err := newDesign(len(s.variables), s.rows, s.seed, uint64(r))
	if err != nil {
		return err
	}
	points := d.points
	if s.chancesOnly {
		points = points[:2*s.rows]
	}
	trials := make([]Trial, len(points))
	for i, u := range points {
		for x := range u {
			trials[i] = append(trials[i], Setting{s.variables[x].ID, s.tolerances[x].at(&s.variables[x], u[x])})
		}
	}
	outcomes, err := evaluate(s.study, trials)
	if err != nil {
		return err
	}
	s.outcomes = append(s.outcomes, outcomes)
	return nil
}

// spread says what the replicates so far tell.
func (s *sampler) spread() Spread {
	done := len(s.outcomes)
	each := 2 * s.rows // independent samples of a replicate
	a := Spread{Route: s.study.Route, Goal: *s.study.Goal, Criteria: []CriterionChance{}, Influences: []Influence{}, Shares: []float64{},
		Ready: []float64{}, Present: standing(0, &s.present), Samples: done * each, Planned: 1 + s.replicates*s.rows*(len(s.variables)+2),
		Complete: done == s.replicates, Runs: 1}
	a.Chance = s.chance(func(o *Outcome) bool { return o.Met() })
	shares, ready := make([][]float64, done), make([][]float64, done)
	always := true
	for r, outcomes := range s.outcomes {
		a.Runs += len(outcomes)
		for i := range outcomes {
			o := &outcomes[i]
			share, time := math.Min(shareCap, 1+o.excess()), o.Judgement.Ready
			shares[r] = append(shares[r], share)
			if time != nil {
				ready[r] = append(ready[r], *time)
			}
			always = always && time != nil
			if i >= each {
				continue
			}
			if a.Shares = append(a.Shares, share); o.Refused != "" {
				a.Refused++
			}
			if time != nil {
				a.Ready = append(a.Ready, *time)
			}
		}
	}
	a.Late = a.Samples - len(a.Ready)
	slices.Sort(a.Shares)
	slices.Sort(a.Ready)
	a.Criteria = s.criteria()
	if s.chancesOnly {
		a.Planned = 1 + s.replicates*each
	} else {
		a.Influences = s.influences(shares, ready, always)
	}
	return a
}

// chance is that of a property, from the independent samples of each replicate.
func (s *sampler) chance(holds func(*Outcome) bool) Chance {
	each := 2 * s.rows
	hits := make([]float64, len(s.outcomes))
	for r, outcomes := range s.outcomes {
		n := 0
		for i := range outcomes[:each] {
			if holds(&outcomes[i]) {
				n++
			}
		}
		hits[r] = float64(n) / float64(each)
	}
	return chanceOf(hits, each)
}

// criteria lists the chances of the criteria of which any sample uses something.
func (s *sampler) criteria() []CriterionChance {
	list := []CriterionChance{}
	for i := range s.present.Judgement.Criteria {
		name := s.present.Judgement.Criteria[i].Name
		used := false
		chance := s.chance(func(o *Outcome) bool {
			for k := range o.Judgement.Criteria {
				if c := &o.Judgement.Criteria[k]; c.Name == name {
					used = used || c.Share > 0
					return c.Met()
				}
			}
			return false
		})
		if used {
			list = append(list, CriterionChance{Name: name, Chance: chance})
		}
	}
	slices.SortStableFunc(list, func(a, b CriterionChance) int { return cmp.Compare(a.Chance.Value, b.Chance.Value) })
	return list
}

func (s *sampler) influences(shares, ready [][]float64, always bool) []Influence {
	list := []Influence{}
	ofShare := indicesOf(len(s.variables), s.rows, shares)
	var ofReady []Index
	if always {
		ofReady = indicesOf(len(s.variables), s.rows, ready)
	}
	for x := range s.variables {
		i := Influence{Variable: s.variables[x], Tolerance: s.tolerances[x], Share: ofShare[x]}
		if always {
			i.Ready = &ofReady[x]
		}
		list = append(list, i)
	}
	slices.SortStableFunc(list, func(a, b Influence) int { return cmp.Compare(b.Share.Total, a.Share.Total) })
	return list
}
