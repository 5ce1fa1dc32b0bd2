package job

import (
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// checkTransfer demands what the chosen law needs: an air speed of forced flow, nozzles of jets.
func (v *validator) checkTransfer(t Transfer, path string) {
	if !v.sound(path) {
		return
	}
	switch t.Kind {
	case ParallelFlow, Combined:
		v.checkFlow(t, path)
	case SlotNozzles, RoundNozzles:
		v.checkNozzles(t, path)
	}
}

// checkFlow demands an air speed where the only law is that of forced flow, and one that the fields accept where it
// follows from a fan.
func (v *validator) checkFlow(t Transfer, path string) {
	const least = 0.02 // m/s; slower air than this is still
	speed, at := t.Velocity, path+".velocity_m_per_s"
	if f := t.Fan; f != nil {
		speed, at = f.AirFlow/f.CrossSection, path+".fan.air_flow_m3_per_s"
		if most := v.fields[generic(path)+".velocity_m_per_s"].High; speed > most {
			v.conflict(at, words.Told("air along the face at {speed}",
				"speed", v.computed(speed, path+".velocity_m_per_s")),
				words.Told("More than {most} is no air past a part: check flow and cross-section.",
					"most", v.typed(most, path+".velocity_m_per_s")))
			return
		}
	}
	if t.Kind == ParallelFlow && speed < least {
		v.conflict(at, words.Told("air along the face at {speed}",
			"speed", v.computed(speed, path+".velocity_m_per_s")),
			words.Told("Below {least} choose still air, alone or together with draught.", "least", v.typed(least, path+".velocity_m_per_s")))
	}
}

// Closest nozzles, as pitch over width. Half of a face of slots blows no more than that; round nozzles closer than 2.5
// diameters would drown in their own spent air: Martin's correlation (1977) falls to zero at 2.1.
const (
	closestSlots = 2.0
	closestRound = 2.5
)

func (v *validator) checkNozzles(t Transfer, path string) {
	n := t.Nozzles
	if n == nil {
		v.add(&fault.Fault{Code: fault.Missing, Path: path + ".nozzles",
			Advice: words.Told("Give width, pitch, distance and air speed of the nozzles, or choose another kind.")})
		return
	}
	closest := closestSlots
	if t.Kind == RoundNozzles {
		closest = closestRound
	}
	if n.Pitch < closest*n.Width*(1-1e-9) {
		v.conflict(path+".nozzles.pitch_m", words.Told("a pitch of {pitch} with nozzles {width} wide",
			"pitch", v.typed(n.Pitch, path+".nozzles.pitch_m"), "width", v.typed(n.Width, path+".nozzles.width_m")),
			words.Told("The pitch is at least {least} times the width: the spent air has to leave between the nozzles.",
				"least", words.Figure(fault.Number(closest))))
	}
}
