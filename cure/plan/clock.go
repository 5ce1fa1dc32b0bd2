package plan

import (
	"math"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/num"
)

// sprayLater moves the moment of spraying by a time [s] while everything else keeps its place on the clock: the night's
// air, the heating's set-back and the hour at which the parts are needed. A part sprayed earlier finds the air as it was at
// the old moment of spraying, since nothing is known of the time before. A closed room starts with the schedule's air.
func sprayLater(j *job.Job, by float64) {
	j.Workshop.Air = moved(j, j.Workshop.Air, by)
	if s := j.Workshop.Space; s != nil {
		s.Outside = moved(j, s.Outside, by)
		if h := s.Heating; h != nil {
			moveSetBack(h, by)
		}
	}
	for _, deadline := range deadlines(j) {
		*deadline -= by
	}
}

// deadlines are the places of the routes' deadlines.
func deadlines(j *job.Job) []*float64 {
	var all []*float64
	if j.Room != nil {
		all = append(all, &j.Room.Deadline)
	}
	if j.StaticOven != nil {
		all = append(all, &j.StaticOven.Deadline)
	}
	if j.Tunnel != nil {
		all = append(all, &j.Tunnel.Deadline)
	}
	return all
}

// moved is a schedule of air as a part sees it that is sprayed later by a time [s]. Between points temperature and relative
// humidity run straight, as route.Schedule has them.
func moved(j *job.Job, points []job.AirPoint, by float64) []job.AirPoint {
	if by == 0 || len(points) == 1 {
		return points
	}
	var times, temperatures, humidities []float64
	for _, p := range points {
		s, err := p.Humidity.State(p.Temperature, j.Workshop.Pressure, j.Numerics.EnhancementFactor)
		if err != nil {
			return points // validation has its say about such a job
		}
		times, temperatures, humidities = append(times, p.Time), append(temperatures, p.Temperature), append(humidities, s.RelativeHumidity())
	}
	temperature, err := num.NewLinear(times, temperatures)
	if err != nil {
		return points
	}
	humidity, err := num.NewLinear(times, humidities)
	if err != nil {
		return points
	}
	at := func(t, clock float64) job.AirPoint {
		h := humidity.At(clock)
		return job.AirPoint{Time: t, Temperature: temperature.At(clock), Humidity: job.Humidity{RelativeHumidity: &h}}
	}
	out := []job.AirPoint{at(0, by)}
	for _, t := range times {
		if t > by && t-by > 0 {
			out = append(out, at(t-by, t))
		}
	}
	return out
}

func moveSetBack(h *job.Heating, by float64) {
	if h.SetBackAt == nil {
		return
	}
	back := math.Max(0, *h.SetBackAt-by)
	h.SetBackAt = &back
	if h.ResumeAt == nil {
		return
	}
	up := *h.ResumeAt - by
	if h.ResumeAt = &up; up <= back {
		h.SetBackAt, h.ResumeAt = nil, nil
	}
}
