package plan

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// search looks for the end of what is good in one direction from a starting value: by rungs of growing size to the first
// setting beyond the end, then by a bracket. It is asked for its next settings and told their outcomes, so that several
// searches share their batches.
//
// From a good start it walks on until a rung is bad; from a bad one it walks back until a rung is good, and where there is
// none, forwards. A stretch of bad settings shorter than a rung between two good ones is not seen.
type search struct {
	v       *Variable
	sign    float64 // +1 towards higher values
	tol     float64 // of the coordinate
	tight   float64 // least share of the worst criterion at the good end; 1: the tolerance is enough
	start   float64 // coordinate
	phase   phase
	rung    int
	good    *probe // the furthest good setting of the stretch
	bad     *probe // the nearest bad one beyond it
	last    *probe // of the present walk
	bracket num.Bracket
	asked   []float64 // coordinates
	first   *probe    // at the start
	runs    int
}

// probe is one setting that has been judged.
type probe struct {
	u       float64
	outcome Outcome
}

type phase int

const (
	starting phase = iota
	onwards        // from a good setting, looking for a bad one
	back           // from a bad start against the direction, looking for a good one
	ahead          // from a bad start in the direction, looking for a good one
	closing        // between good and bad
	ended
)

// rungsAtOnce is how many rungs are judged in one batch.
const rungsAtOnce = 4

func newSearch(v *Variable, toward Direction, start, tol, tight float64) *search {
	s := &search{v: v, sign: 1, start: v.coordinate(start), tol: tol, tight: tight}
	if toward == Lowest {
		s.sign = -1
	}
	return s
}

// rungs are the distances from the start, as shares of the variable's step: fine at first, since most limits are near.
var rungs = []float64{0.2, 0.5, 1, 2, 3.5, 5.5, 8, 12, 18, 27, 40, 60, 90, 130, 200, 300, 450, 700, 1000}

// ask returns the values to be judged next; none when the search has ended.
func (s *search) ask() []float64 {
	switch s.phase {
	case starting:
		s.asked = []float64{s.start}
	case onwards:
		s.asked = s.walk(s.sign)
	case back:
		s.asked = s.walk(-s.sign)
	case ahead:
		s.asked = s.walk(s.sign)
	case closing:
		s.asked = []float64{s.bracket.Next()}
	default:
		s.asked = nil
	}
	values := make([]float64, len(s.asked))
	for i, u := range s.asked {
		values[i] = s.v.value(u)
	}
	return values
}

// walk lists the next rungs in a direction, the end of the accepted range as the last; none beyond it.
func (s *search) walk(sign float64) []float64 {
	end := s.v.coordinate(s.v.High)
	if sign < 0 {
		end = s.v.coordinate(s.v.Low)
	}
	from := s.start
	if s.last != nil {
		from = s.last.u
	}
	var us []float64
	for len(us) < rungsAtOnce && s.rung < len(rungs) {
		u := s.start + sign*s.v.Step*rungs[s.rung]
		s.rung++
		if sign*(end-u) <= 0 {
			s.rung = len(rungs)
			u = end
		}
		if sign*(u-from) > 0 { // a start at the end of the range has nowhere to go
			us = append(us, u)
		}
	}
	return us
}

// tell takes the outcomes of what was asked for, in order.
func (s *search) tell(outcomes []Outcome) {
	s.runs += len(outcomes)
	for i := range outcomes {
		s.hear(&probe{s.asked[i], outcomes[i]})
	}
	if walking := s.phase == onwards || s.phase == back || s.phase == ahead; walking && len(outcomes) == 0 {
		s.noWay()
	}
}

// noWay is what follows when a walk has come to the end of the range.
func (s *search) noWay() {
	switch s.phase {
	case back:
		s.phase, s.rung, s.last = ahead, 0, s.first
	default:
		s.phase = ended
	}
}

func (s *search) hear(p *probe) {
	met := p.outcome.Met()
	switch s.phase {
	case starting:
		s.first, s.last = p, p
		s.phase = back
		if met {
			s.phase, s.good = onwards, p
		}
	case onwards:
		if s.last = p; met {
			s.good = p
			return
		}
		s.bad = p
		s.close()
	case back:
		if !met {
			s.last = p
			return
		}
		s.good, s.bad = p, s.last
		s.close()
	case ahead:
		if s.last = p; met {
			s.good, s.phase = p, onwards
		}
	case closing:
		if s.asked[0] != p.u {
			return // the rest of a batch of rungs
		}
		if s.bracket.Tell(p.u, s.side(p)) != nil {
			s.phase = ended
			return
		}
		if met {
			s.good = p
		} else {
			s.bad = p
		}
		s.enough()
	}
}

// narrowest is how far below its tolerance a bracket goes on for a tight end; what is not tight by then jumps.
const narrowest = 1e-4

// enough ends the search when the bracket is narrow and its good end tight.
func (s *search) enough() {
	a, _, b, _ := s.bracket.Ends()
	narrow := b-a <= s.tol
	loose := s.tight < 1 && s.good.outcome.excess() < s.tight-1
	if narrow && !loose || s.bracket.Done() {
		s.phase = ended
	}
}

// side is what the bracket sees of an outcome: never zero, so that the good end stays good.
func (s *search) side(p *probe) float64 {
	e := p.outcome.excess()
	if p.outcome.Met() {
		return math.Min(e, -1e-15)
	}
	return math.Max(e, 1e-15)
}

// close starts the bracket between the good and the bad setting.
func (s *search) close() {
	a, b := s.good, s.bad
	if a.u > b.u {
		a, b = b, a
	}
	tol := s.tol
	if s.tight < 1 {
		tol *= narrowest
	}
	bracket, err := num.NewBracket(a.u, s.side(a), b.u, s.side(b), tol)
	s.bracket, s.phase = bracket, closing
	if err != nil {
		s.phase = ended
		return
	}
	s.enough()
}

// beside runs searches side by side; trial makes the setting of one of them at a value of its variable.
func beside(study Study, evaluate Evaluate, searches []*search, trial func(i int, value float64) Trial) error {
	for {
		var batch []Trial
		counts := make([]int, len(searches))
		for i, s := range searches {
			values := s.ask()
			counts[i] = len(values)
			for _, v := range values {
				batch = append(batch, trial(i, v))
			}
		}
		if len(batch) == 0 {
			going := false
			for _, s := range searches {
				if s.phase != ended {
					s.tell(nil)
					going = going || s.phase != ended
				}
			}
			if !going {
				return nil
			}
			continue
		}
		outcomes, err := evaluate(study, batch)
		if err != nil {
			return err
		}
		for i, s := range searches {
			s.tell(outcomes[:counts[i]])
			outcomes = outcomes[counts[i]:]
		}
	}
}
