package sim

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/transfer"
)

// watcher looks out for what goes wrong.
type watcher struct {
	boil, hot, dew, skin, humid extreme
	undewed                     float64 // water when the film was last above the dew point [kg/m2]
	wettest                     float64 // humidity ratio of the stage's air [kg/kg]
	peak                        float64 // flux of the stage [kg/(m2 s)]
	cautions                    []transfer.Caution
	working                     []result.Working
}

// noticedDew is the dew from which it is worth a word [kg/m2]: a tenth of a usual run-off mass.
const noticedDew = 1e-3

// look takes one reading.
func (r *run) look(s *film.System, t float64, y []float64, d *film.Reading) {
	target := &r.job.Targets
	r.boil.see(t, s.BoilingPressure(t, y, r.coat.Diffusion.Water(r.coat.Diffusion.Closing)), r.job.Workshop.Pressure)
	r.hot.see(t, d.Hottest, r.job.Part.LimitTemperature)
	mass := d.MeanWater * r.grid.Solids
	if a := d.Climate.Air; t == 0 || a.Y <= air.SaturatedFraction(d.Film, a.P, a.Real) {
		r.undewed = mass // the film is above the dew point; what it takes up now is sorption
	}
	r.dew.see(t, mass-r.undewed, noticedDew)
	r.peak = math.Max(r.peak, d.Flux)
	r.wettest = math.Max(r.wettest, d.Climate.Air.HumidityRatio())
	r.humid.see(t, d.Climate.Air.RelativeHumidity(), target.NearSaturation)
	if r.coat.Diffusion.Fraction(d.MeanWater) < r.coat.Diffusion.Packing {
		skin := d.Thickness * d.Flux / film.WaterDensity / r.coat.Diffusion.Dilute(d.Film)
		r.skin.see(t, skin, target.SkinNumber)
	}
}

// hurried is the share of the open time from which flocking in time is worth a word.
const hurried = 0.8

// risks lists what came true. Severity danger is what spoils the part.
func (r *run) risks(open result.Mark) []result.Risk {
	target, a := &r.job.Targets, &r.job.Film.Adhesive
	risks := []result.Risk{}
	add := func(name string, severity result.Severity, start, worst, limit float64, unit string) {
		risks = append(risks, result.Risk{Name: name, Severity: severity, Start: start, Worst: worst, Limit: limit, Unit: unit})
	}
	if p := r.job.Pile; p != nil && open.Time != nil && p.AppliedAfter > hurried**open.Time {
		severity := result.Notice
		if p.AppliedAfter > *open.Time {
			severity = result.Danger
		}
		add("flocked_late", severity, p.AppliedAfter, p.AppliedAfter, *open.Time, "s")
	}
	if m := r.met[boiling]; m.done {
		add("boiling", result.Danger, m.time, r.boil.worst, r.job.Workshop.Pressure, "Pa")
	}
	if r.unformed {
		m := r.met[closing]
		severity := result.Danger
		if r.met[filmWarm].done {
			severity = result.Notice
		}
		add("film_forming", severity, m.time, m.reading.Film, a.FilmForming, "K")
	}
	if m := r.met[overLimit]; m.done {
		add("part_limit", result.Danger, m.time, r.hot.worst, r.job.Part.LimitTemperature, "K")
	}
	if r.dew.passed {
		severity := result.Notice
		if r.dew.worst > target.DewRunOff {
			severity = result.Danger
		}
		add("dew", severity, r.dew.start, r.dew.worst, target.DewRunOff, "kg/m2")
	}
	if r.skin.passed {
		add("skin", result.Notice, r.skin.start, r.skin.worst, target.SkinNumber, "")
	}
	if r.humid.passed {
		add("near_saturation", result.Notice, r.humid.start, r.humid.worst, target.NearSaturation, "")
	}
	if wet := r.coat.Thickness((1 - a.Solids) / a.Solids); wet > a.CrackThickness {
		add("crack_thickness", result.Notice, 0, wet, a.CrackThickness, "m")
	}
	return risks
}
