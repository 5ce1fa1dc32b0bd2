package job

import (
	"fmt"

	"github.com/drywright/drywright/cure/words"
)

func (v *validator) checkWorkshop(j *Job) {
	w := &j.Workshop
	v.checkSchedule(w.Air, "workshop.air", j)
	v.checkTransfer(w.Transfer, "workshop.transfer")
	s := w.Space
	if s == nil {
		return
	}
	const at = "workshop.space"
	v.checkSchedule(s.Outside, at+".outside", j)
	if s.Heating != nil {
		v.checkHeating(s.Heating, at+".heating")
	}
	if s.Dehumidifier != nil {
		v.checkDehumidifier(s.Dehumidifier, at+".dehumidifier")
	}
}

// checkSchedule demands states of air that start when the part is sprayed, follow each other and are no fog.
func (v *validator) checkSchedule(points []AirPoint, path string, j *Job) {
	for i, p := range points {
		if i >= v.blocks[path].MaxItems {
			break
		}
		at := fmt.Sprintf("%s[%d]", path, i)
		v.checkMoist(p.Humidity, p.Temperature, j, at+".humidity", at+".temperature_K")
		if !v.sound(at + ".time_s") {
			continue
		}
		switch {
		case i == 0 && p.Time != 0:
			v.conflict(at+".time_s", words.Told("the first state of the air is at {first}",
				"first", lasting(p.Time)),
				words.Told("Start the list at 0, when the part is sprayed."))
		case i > 0 && p.Time <= points[i-1].Time && v.sound(fmt.Sprintf("%s[%d].time_s", path, i-1)):
			v.conflict(at+".time_s", words.Told("{later} is not after {earlier}",
				"later", lasting(p.Time), "earlier", lasting(points[i-1].Time)),
				words.Told("Put the states of the air in the order of their times, each time once."))
		}
	}
}

// checkHeating demands that a set-back is one, and that only what was set back resumes.
func (v *validator) checkHeating(h *Heating, at string) {
	if h.SetBackAt != nil && v.sound(at+".set_point_K", at+".set_back_K") && h.SetBack > h.SetPoint {
		v.conflict(at+".set_back_K", words.Told("set back to {low} from {usual}",
			"low", degrees(h.SetBack), "usual", degrees(h.SetPoint)), words.Told("A set-back is no warmer than the set-point."))
	}
	if h.ResumeAt == nil || !v.sound(at+".set_back_at_s", at+".resume_at_s") {
		return
	}
	if h.SetBackAt == nil {
		v.conflict(at+".resume_at_s", words.Told("the heating is never set back"),
			words.Told("Say when it is set back, or leave the time at which it resumes empty."))
	} else if *h.ResumeAt <= *h.SetBackAt {
		v.conflict(at+".resume_at_s", words.Told("{resumed}, but it is set back after {set_back}",
			"resumed", lasting(*h.ResumeAt), "set_back", lasting(*h.SetBackAt)), words.Told("The heating resumes after it was set back."))
	}
}

// mostPerWater is the most energy that a dehumidifier may take for the water it removes [J/kg]; real ones take 1e6 to 4e6.
// Beyond it the machine would be a heater of unknown reach, and the room's temperature without a bound.
const mostPerWater = 20e6

// perWater is a field that tells energy per water as readers know it.
const perWater = "film.adhesive.sorption.heat_of_sorption_J_per_kg"

func (v *validator) checkDehumidifier(d *Dehumidifier, at string) {
	if v.sound(at) && d.Power > mostPerWater*d.Capacity {
		v.conflict(at+".power_W", words.Told("{energy} of water",
			"energy", v.computed(d.Power/d.Capacity, perWater)),
			words.Told("Dehumidifiers take {low} to {high}: check power and capacity.", "low", v.typed(1e6, perWater), "high", v.typed(4e6, perWater)))
	}
}
