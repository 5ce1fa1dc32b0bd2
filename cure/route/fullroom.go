package route

import (
	"math"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words"
)

// newSpace makes the room of a job, empty of settings that change over the night.
func (w *workshop) newSpace(s *job.Space) (*Space, error) {
	outside, err := schedule(w.job, s.Outside)
	if err != nil {
		return nil, err
	}
	inside := w.air.State(0)
	dry := s.Volume * inside.Density() / (1 + inside.HumidityRatio())
	room := &Space{Inside: w.air, Outside: outside, Balanced: s.HeatBalance, CoatedArea: s.CoatedArea, AirChanges: s.AirChanges,
		DryAir: dry, AirCapacity: s.Volume * inside.Density() * inside.SpecificHeat(),
		WallCapacity: s.WallCapacity, WallExchange: s.WallExchange, WallLoss: s.WallLoss}
	if d := s.Dehumidifier; d != nil {
		room.Dehumidifier = &Dehumidifier{Capacity: d.Capacity, Setting: d.RelativeHumidity, Power: d.Power}
	}
	return room, nil
}

// spaceStages leaves the part in a full room. The room's states go on from stage to stage; a stage ends where the fibre
// comes on and where the thermostat is set to another temperature.
func (w *workshop) spaceStages(horizon float64) []Stage {
	cuts := []float64{w.flocked()}
	heating := w.job.Workshop.Space.Heating
	if heating != nil {
		cuts = append(cuts, or(heating.SetBackAt, math.Inf(1)), or(heating.ResumeAt, math.Inf(1)))
	}
	var stages []Stage
	from := 0.0
	for _, to := range append(between(cuts, 0, horizon), horizon) {
		room := *w.space
		room.Inside, room.Outside = w.space.Inside.over(from, to), w.space.Outside.over(from, to)
		if heating != nil {
			room.Heating = &Heating{Power: heating.Power, SetPoint: setting(heating, from)}
		}
		st := Stage{Name: roomName(heating, from), Kind: result.Rest, Start: from, End: to, Piled: from >= w.flocked() && w.pile != nil}
		if from < w.flocked() {
			st.Name, st.Kind = words.Told("Wait for flocking"), result.Wait
		}
		st.Exposure = w.exposure(w.job.Workshop.Transfer, &room, w.air.State(from), st.Piled)
		st.Stops = between(append(append([]float64(nil), room.Outside.temperature.Knots()...), room.Inside.temperature.Knots()...), from, to)
		if from == 0 {
			st.Own = room.Start()
		}
		stages = append(stages, st)
		from = to
	}
	return stages
}

// setting is the thermostat's set-point from the time t on.
func setting(h *job.Heating, t float64) float64 {
	if t >= or(h.SetBackAt, math.Inf(1)) && t < or(h.ResumeAt, math.Inf(1)) {
		return h.SetBack
	}
	return h.SetPoint
}

// roomName tells the stages of a night apart.
func roomName(h *job.Heating, t float64) string {
	switch {
	case h == nil || t < or(h.SetBackAt, math.Inf(1)):
		return words.Told("Room")
	case t < or(h.ResumeAt, math.Inf(1)):
		return words.Told("Room, set back")
	}
	return words.Told("Room, heated again")
}
