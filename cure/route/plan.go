// Package route says what surrounds a part from spraying on: the wait for flocking, then the room overnight, a static
// oven or a tunnel, then the workshop again. It turns a job into stages for package film and knows nothing of time
// integration or marks.
package route

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words"
)

// Stage is one stretch of a route with one kind of surroundings.
type Stage struct {
	Name     string
	Kind     result.StageKind
	Start    float64 // from spraying [s]
	End      float64 // [s]
	Exposure film.Exposure
	// Own are the surroundings' own states at the start; nil where they have none, or go on from the stage before.
	Own []float64
	// Stops are moments inside the stage at which the surroundings have a kink [s].
	Stops []float64
	// Piled reports that the fibre is on from the start of this stage.
	Piled    bool
	Position float64 // of the entry along a tunnel [m]
	Length   float64 // [m]; 0 outside tunnels
}

// Plan is one route laid out in time.
type Plan struct {
	Kind     result.Kind
	Stages   []Stage // end to end, from 0 to Horizon
	Deadline float64 // [s]
	Horizon  float64 // [s]
	// HeatedEnd is the end of the last heated stage [s]; 0 for the room.
	HeatedEnd float64
	// Entry is when the part enters the oven [s]; 0 for the room.
	Entry float64
	// Exit is when the part leaves the oven [s]; NaN for the room.
	Exit float64
	// Outside is the workshop's air where the part enters the oven: what is drawn in there.
	Outside air.State
}

// Until returns the plan cut off at a moment where a stage ends.
func (p Plan) Until(end float64) Plan {
	for i := range p.Stages {
		if p.Stages[i].Start >= end {
			p.Stages, p.Horizon = p.Stages[:i:i], end
			break
		}
	}
	return p
}

// Plans lays out every route that the job asks for. The job must be valid.
func Plans(j *job.Job) ([]Plan, error) {
	w, err := newWorkshop(j)
	if err != nil {
		return nil, err
	}
	var plans []Plan
	if j.Room != nil {
		plans = append(plans, w.room(j.Room))
	}
	if j.StaticOven != nil {
		p, err := w.staticOven(j.StaticOven)
		if err != nil {
			return nil, err
		}
		plans = append(plans, p)
	}
	if j.Tunnel != nil {
		humidities, err := ZoneHumidities(j)
		if err != nil {
			return nil, err
		}
		p, err := w.tunnel(j.Tunnel, humidities)
		if err != nil {
			return nil, err
		}
		plans = append(plans, p)
	}
	return plans, nil
}

// Wait lays out the branch on which open time is judged: the unflocked film in the workshop's air.
func Wait(j *job.Job, horizon float64) (Plan, error) {
	w, err := newWorkshop(j)
	if err != nil {
		return Plan{}, err
	}
	return Plan{Kind: result.Room, Horizon: horizon, Exit: math.NaN(),
		Stages: []Stage{w.stay(words.Told("Workshop"), result.Wait, 0, horizon, false)}}, nil
}

// room leaves the part where it was flocked.
func (w *workshop) room(r *job.Room) Plan {
	p := Plan{Kind: result.Room, Deadline: r.Deadline, Horizon: r.Horizon, Exit: math.NaN()}
	if w.space != nil {
		p.Stages = w.spaceStages(r.Horizon)
		return p
	}
	p.Stages = w.wait(nil, r.Horizon)
	p.Stages = append(p.Stages, w.stay(words.Told("Room"), result.Rest, w.flocked(), r.Horizon, true))
	return p
}

// wait appends the time before flocking and, when the route leaves the workshop later than that, the time after it.
func (w *workshop) wait(stages []Stage, until float64) []Stage {
	if t := w.flocked(); t > 0 {
		stages = append(stages, w.stay(words.Told("Wait for flocking"), result.Wait, 0, math.Min(t, until), false))
	}
	return stages
}

// before is the way from spraying to the oven's door.
func (w *workshop) before(entry float64) []Stage {
	stages := w.wait(nil, entry)
	if entry > w.flocked() {
		stages = append(stages, w.stay(words.Told("Wait for the oven"), result.Wait, w.flocked(), entry, true))
	}
	return stages
}
