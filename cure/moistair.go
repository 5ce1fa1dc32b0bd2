package cure

import (
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
)

// MoistAir puts one route of a job on a moist-air chart. Errors: those of validation, and fault.Missing where the job lacks the
// route.
func MoistAir(j job.Job, kind result.Kind) (result.MoistAir, error) {
	if err := job.Validate(j); err != nil {
		return result.MoistAir{}, err
	}
	return sim.MoistAir(&j, kind)
}
