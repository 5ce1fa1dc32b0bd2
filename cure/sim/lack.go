package sim

import (
	"math"

	"github.com/drywright/drywright/cure/film"
)

// lack is how far each condition is from coming true, in the shares of result.Criterion, where a stage ends.
func (r *run) lack(s *film.System, t float64, y []float64) (lacking [conditions]float64) {
	wet := (1 - r.job.Film.Adhesive.Solids) / r.job.Film.Adhesive.Solids
	target := &r.job.Targets
	scale := [conditions]float64{touchDry: wet, meanDry: wet, closing: wet, tackCure: target.TackConversion,
		fullCure: target.FullConversion, handCool: coolingRange, filmWarm: formingRange}
	for c := range lacking {
		if scale[c] == 0 || r.met[c].done {
			continue
		}
		lacking[c] = 1
		if g := r.margin(condition(c), s, r.stage); g != nil {
			lacking[c] = math.Max(0, g(t, y)/scale[c])
		}
	}
	return lacking
}

// coolingRange is the excess over the handling temperature [K] that counts as a whole share.
const coolingRange = 50.0

// formingRange is the way from no concern to the film-forming temperature [K], as the other shares have theirs.
const formingRange = 20.0

// lacks is how far the conditions that have not come true by a time are from it then, by the one that is furthest; always
// above zero, for it is asked only where one has not come.
func (r *run) lacks(needs []condition, by float64, lacking [conditions]float64) float64 {
	worst := 1e-12
	for _, c := range needs {
		if m := &r.met[c]; !m.done || m.time > by {
			worst = math.Max(worst, lacking[c])
		}
	}
	return worst
}
