package plan

import "math"

// rounds searches with a reserve for the spread, samples what was found, and corrects the reserve by what the sample says.
func (k *seeker) rounds(starts []landing) error {
	beta := quantile(k.answer.Confidence)
	at := starts[0]
	for round := 1; round <= mostRounds; round++ {
		k.answer.Rounds = round
		deviations, err := k.deviations(&at)
		if err != nil {
			return err
		}
		reserve := make([]float64, len(deviations))
		for i := range reserve {
			if !k.unmoved[i] {
				reserve[i] = beta * deviations[i]
			}
		}
		if at, err = k.descend(at, reserve); err != nil {
			return err
		}
		if round == 1 && len(starts) > 1 {
			if at, err = k.elsewhere(at, starts[1], reserve); err != nil {
				return err
			}
		}
		checked, err := k.check(&at)
		if err != nil {
			return err
		}
		k.take(&at, checked)
		k.say()
		if k.beyondReach(&at, checked) {
			break
		}
		next := corrected(beta, k.answer.Confidence, &checked.Chance)
		if checked.Chance.Value < k.answer.Confidence {
			next = math.Max(next, beta+leastRise) // a little short stays a little short for ever
		} else if math.Abs(next-beta) <= 0.05*beta {
			break
		}
		beta = next
	}
	if k.answer.Found {
		return nil
	}
	// Nothing is as sure as wanted: the present setting may still be surer than what was found.
	landed, err := k.land([][]float64{k.presentPoint()})
	if err != nil || landed[0].shares == nil {
		return err
	}
	checked, err := k.check(&landed[0])
	if err == nil {
		k.take(&landed[0], checked)
	}
	return err
}

// beyondReach reports whether a criterion that nothing free moves fails too often by itself for the confidence that is wanted:
// then no reserve for the others can make up for it.
func (k *seeker) beyondReach(at *landing, checked *Spread) bool {
	for i, c := range at.outcome.Judgement.Criteria {
		for _, chance := range checked.Criteria {
			if k.unmoved[i] && chance.Name == c.Name && chance.Chance.Value+1.5*chance.Chance.Error < k.answer.Confidence {
				return true
			}
		}
	}
	return false
}

// leastRise is by how many standard deviations the reserve grows at least after a sample that was not sure enough.
const leastRise = 0.25

// elsewhere searches from another start, and returns the better of both ends.
func (k *seeker) elsewhere(at, start landing, reserve []float64) (landing, error) {
	k.aside, k.steps = true, nil
	other, err := k.descend(start, reserve)
	k.aside = false
	if err != nil || other.merit(reserve) >= at.merit(reserve) {
		return at, err
	}
	k.answer.Path = append(k.answer.Path, k.steps...)
	k.settle(&other) // nothing has been sampled in the first round
	return other, nil
}

// corrected is the reserve's factor after a sample: what was missing of the chance, in quantiles. A sample that is as sure as
// wanted, or surer by less than its error and a half, leaves it.
func corrected(beta, wanted float64, c *Chance) float64 {
	if c.Value >= wanted && c.Value-1.5*c.Error <= wanted {
		return beta
	}
	// All or none of a sample stand for a quarter of a sample less or more.
	got := quantile(math.Min(math.Max(c.Value, 0.02), 1-c.Error/4))
	const most = 0.7 // at once: beyond, the straight line says little
	return math.Max(0, beta+math.Min(most, math.Max(-most, 0.8*(quantile(wanted)-got))))
}

// quantile is that of the normal distribution.
func quantile(p float64) float64 { return math.Sqrt2 * math.Erfinv(2*p-1) }

// take makes a checked landing the answer where it is better than what there is: first of all as sure as wanted and good by
// itself, then cheap; among those that are not sure enough the surest.
func (k *seeker) take(at *landing, checked *Spread) {
	sure := at.outcome.Met() && checked.Chance.Value >= k.answer.Confidence
	better := k.best == nil
	if !better {
		switch {
		case sure != k.answer.Found:
			better = sure
		case sure:
			better = at.value*k.scale < *k.answer.After
		default:
			better = checked.Chance.Value > k.best.Chance.Value
		}
	}
	if better {
		k.settle(at)
		k.answer.Found, k.answer.Spread, k.best = sure, checked, checked
	}
}

// here is the study at a landing.
func (k *seeker) here(at *landing) (Study, error) {
	j, err := k.study.At(k.trial(at.u))
	s := k.study
	s.Job = &j
	return s, err
}

// deviations are the standard deviations of the shares under the tolerances, each input moved by one of its own to both sides.
func (k *seeker) deviations(at *landing) ([]float64, error) {
	s, err := k.here(at)
	if err != nil {
		return nil, err
	}
	var trials []Trial
	for i := range k.tolerances {
		t := &k.tolerances[i]
		v, err := s.Variable(t.Variable)
		if err != nil {
			return nil, err
		}
		for _, sign := range []float64{-1, 1} {
			trials = append(trials, Trial{{v.ID, v.Present + sign*t.deviation(&v)}})
		}
	}
	outcomes, err := k.evaluate(s, trials)
	if err != nil {
		return nil, err
	}
	k.runs += len(outcomes)
	deviations := make([]float64, len(at.shares))
	for c := range deviations {
		sum := 0.0
		for i := range k.tolerances {
			slope := slopeOf(at.shares[c], &outcomes[2*i], &outcomes[2*i+1], c)
			sum += slope * slope
		}
		deviations[c] = math.Sqrt(sum)
	}
	return deviations, nil
}

// slopeOf is how far a share moves with an input, from what it is at both sides: the steeper side, but for one that is on the
// other side of 1, where shares count on another scale.
func slopeOf(here float64, low, high *Outcome, criterion int) float64 {
	comparable, across, none := 0.0, 0.0, true
	for _, o := range []*Outcome{low, high} {
		if o.Refused != "" {
			continue
		}
		share := math.Min(shareCap, o.Judgement.Criteria[criterion].Share)
		if (share <= 1) == (here <= 1) {
			comparable, none = math.Max(comparable, math.Abs(share-here)), false
		} else {
			across = math.Max(across, math.Abs(share-here))
		}
	}
	if none {
		return across
	}
	return comparable
}

// check samples the tolerances at a landing, for chances alone.
func (k *seeker) check(at *landing) (*Spread, error) {
	s, err := k.here(at)
	if err != nil {
		return nil, err
	}
	sample, err := newSampler(SpreadQuestion{Tolerances: k.tolerances, Rows: checkRows, Seed: k.seed}, s)
	if err != nil {
		return nil, err
	}
	sample.chancesOnly, sample.present = true, at.outcome
	for r := range sample.replicates {
		if err := sample.replicate(r, k.evaluate); err != nil {
			return nil, err
		}
	}
	spread := sample.spread()
	k.runs += spread.Runs - 1 // the plain run is the landing's own
	return &spread, nil
}
