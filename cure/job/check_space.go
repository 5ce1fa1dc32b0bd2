package job

import (
	"fmt"

	"github.com/drywright/drywright/cure/fault"
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
			v.conflict(at+".time_s", words.Told("the first state of the air is at {first} s",
				"first", words.Figure(fault.Number(p.Time))),
				words.Told("Start the list at 0 s, when the part is sprayed."))
		case i > 0 && p.Time <= points[i-1].Time && v.sound(fmt.Sprintf("%s[%d].time_s", path, i-1)):
			v.conflict(at+".time_s", words.Told("{later} s is not after {earlier} s",
				"later", words.Figure(fault.Number(p.Time)), "earlier", words.Figure(fault.Number(points[i-1].Time))),
				words.Told("Put the states of the air in the order of their times, each time once."))
		}
	}
}

// checkHeating demands that a set-back is one, and that only what was set back resumes.
func (v *validator) checkHeating(h *Heating, at string) {
	if h.SetBackAt != nil && v.sound(at+".set_point_K", at+".set_back_K") && h.SetBack > h.SetPoint {
		v.conflict(at+".set_back_K", words.Told("set back to {low} K from {usual} K",
			"low", words.Figure(fault.Number(h.SetBack)), "usual", words.Figure(fault.Number(h.SetPoint))), words.Told("A set-back is no warmer than the set-point."))
	}
	if h.ResumeAt == nil || !v.sound(at+".set_back_at_s", at+".resume_at_s") {
		return
	}
	if h.SetBackAt == nil {
		v.conflict(at+".resume_at_s", words.Told("the heating is never set back"),
			words.Told("Say when it is set back, or set the time at which it resumes to null."))
	} else if *h.ResumeAt <= *h.SetBackAt {
		v.conflict(at+".resume_at_s", words.Told("{resumed} s, but it is set back at {set_back} s",
			"resumed", words.Figure(fault.Number(*h.ResumeAt)), "set_back", words.Figure(fault.Number(*h.SetBackAt))), words.Told("The heating resumes after it was set back."))
	}
}

// mostPerWater is the most energy that a dehumidifier may take for the water it removes [J/kg]; real ones take 1e6 to 4e6.
// Beyond it the machine would be a heater of unknown reach, and the room's temperature without a bound.
const mostPerWater = 20e6

func (v *validator) checkDehumidifier(d *Dehumidifier, at string) {
	if v.sound(at) && d.Power > mostPerWater*d.Capacity {
		v.conflict(at+".power_W", words.Told("{energy} J for each kilogram of water",
			"energy", words.Figure(fault.Number(d.Power/d.Capacity))),
			words.Told("Dehumidifiers take 1 to 4 MJ for a kilogram: check power and capacity."))
	}
}
