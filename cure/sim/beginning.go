package sim

import (
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/route"
)

// beginning is what the runs of one bench have in common: from spraying on, the branch of the open time and nearly every route
// wait in the workshop's air. The first to come through leaves its steps there. A bench of another film, part or tolerance has a
// beginning of its own.
type beginning struct {
	faces film.Exposure // of the stage that was first, but for the air, which is the workshop's
	steps *ode.Memory   // nil before it
}

// memory is where the steps of a stage are kept and taken from; nil where it is not the one that begins most runs.
func (b *beginning) memory(st *route.Stage) *ode.Memory {
	faces := st.Exposure
	faces.Around = nil
	if _, workshop := st.Exposure.Around.(*route.Schedule); !workshop || st.Start != 0 {
		return nil
	}
	if b.steps == nil {
		b.faces, b.steps = faces, ode.NewMemory()
	}
	if b.faces != faces {
		return nil
	}
	return b.steps
}
