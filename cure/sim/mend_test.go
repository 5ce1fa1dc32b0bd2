package sim

import (
	"math"
	"slices"
	"sort"
	"strings"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/job"
)

// mend turns what contradicts itself into what a job can say: times into their order, humidities into air that is no fog,
// what belongs to a thing that is not there into nothing. It moves numbers as little as it can, and what it leaves wrong is refused.
func (d *dice) mend(j *job.Job) {
	d.mendFilm(j)
	d.mendCrosslinking(j)
	d.mendWorkshop(j)
	d.mendPart(j)
	d.mendPlaces(j)
	d.mendTimes(j)
	if t := &j.Targets; t.TackConversion > t.FullConversion {
		t.TackConversion *= t.FullConversion
	}
}

// within is v where it lies between low and high, and a draw from there otherwise.
func (d *dice) within(v, low, high float64) float64 {
	if v >= low && v <= high {
		return v
	}
	return d.between(low, high)
}

func (d *dice) mendFilm(j *job.Job) {
	a := &j.Film.Adhesive
	if a.Closing < a.Packing+0.01 {
		a.Closing = math.Min(0.95, a.Packing+0.02+0.2*d.Float64())
	}
	// Packed when sprayed: fewer solids. The polymer's volume fraction phi means solids of phi rho / (phi rho + (1-phi) 1000).
	phi := 0.97 * a.Packing
	most := phi * a.PolymerDensity / (phi*a.PolymerDensity + (1-phi)*1000)
	a.Solids = d.within(a.Solids, d.fields["film.adhesive.solids_fraction"].Low, most)
	a.DryDiffusion = d.within(a.DryDiffusion, d.fields["film.adhesive.dry_diffusivity_at_25C_m2_per_s"].Low, a.CapillaryDiffusion/1.01)
	if c := a.CoSolvent; c != nil {
		c.Fraction = d.within(c.Fraction, d.fields["film.adhesive.co_solvent.fraction_of_wet_coat"].Low, 1-a.Solids)
	}
	s, c := &a.Sorption, a.Closing
	s.Chi = math.Max(s.Chi, (-math.Log(1-c)-c)/(c*c)*(1+0.3*d.Float64()))
	full := s.GABC * s.GABK / ((1 - s.GABK) * (1 - s.GABK + s.GABC*s.GABK))
	s.Monolayer = math.Min(s.Monolayer, (1-0.5*d.Float64())*0.999*1000/a.PolymerDensity*(1/c-1)/full)
}

func (d *dice) mendCrosslinking(j *job.Job) {
	c := j.Film.Adhesive.Crosslinking
	if c == nil {
		return
	}
	c.Autocatalysis = nil
	if len(c.Schedule.Pairs) == 0 && d.IntN(3) == 0 {
		c.Autocatalysis = &job.Autocatalysis{}
		d.fillAt(c.Autocatalysis, "film.adhesive.crosslinking.autocatalysis")
	}
	p := c.Schedule.Pairs
	sort.Slice(p, func(i, k int) bool { return p[i].Temperature < p[k].Temperature })
	for i := 1; i < len(p); i++ {
		p[i].Time = p[i-1].Time * math.Exp(-(2+16*d.Float64())*1e3*(1/p[i-1].Temperature-1/p[i].Temperature))
	}
	if v := c.Vitrification; v != nil && v.TgCured < v.TgUncured {
		v.TgCured, v.TgUncured = v.TgUncured, v.TgCured
	}
}

// humid turns a humidity that air of that temperature cannot have into one that it can, said in the same way.
func (d *dice) humid(h *job.Humidity, t float64, j *job.Job) {
	p, real := j.Workshop.Pressure, j.Numerics.EnhancementFactor
	if t < air.LowTemperature {
		if *h != (job.Humidity{RelativeHumidity: h.RelativeHumidity}) { // frost: only a share of saturation is sure to be there
			rh := d.Float64()
			*h = job.Humidity{RelativeHumidity: &rh}
		}
		return
	}
	if s, err := h.State(t, p, real); err == nil && s.HumidityRatio() <= 1 {
		return
	}
	most := 0.5 / (0.5 + 0.622) // vapour's mole fraction at 0.5 kg/kg
	s, err := air.FromRelativeHumidity(t, p, d.Float64()*math.Min(1, most/air.SaturatedFraction(t, p, real)), real)
	if err != nil {
		return
	}
	for _, m := range []struct {
		at    *float64
		means func() float64
	}{{h.HumidityRatio, s.HumidityRatio}, {h.DewPoint, s.DewPoint}, {h.RelativeHumidity, s.RelativeHumidity},
		{h.WetBulb, s.WetBulb}, {h.VapourDensity, s.VapourDensity}} {
		if m.at != nil {
			*m.at = m.means()
		}
	}
}

// mendAir puts states of the air in the order of their times, from 0 on.
func (d *dice) mendAir(a []job.AirPoint, j *job.Job) {
	sort.Slice(a, func(i, k int) bool { return a[i].Time < a[k].Time })
	a[0].Time = 0
	for i := range a {
		d.humid(&a[i].Humidity, a[i].Temperature, j)
	}
}

func (d *dice) mendWorkshop(j *job.Job) {
	d.mendAir(j.Workshop.Air, j)
	s := j.Workshop.Space
	if s == nil {
		return
	}
	d.mendAir(s.Outside, j)
	if h := s.Heating; h != nil {
		h.SetBack = math.Min(h.SetBack, h.SetPoint)
		if h.SetBackAt == nil {
			h.ResumeAt = nil
		} else if h.ResumeAt != nil {
			*h.ResumeAt = *h.SetBackAt + 3600*(1+10*d.Float64())
		}
	}
	if m := s.Dehumidifier; m != nil {
		m.Power = math.Min(m.Power, 20e6*m.Capacity*d.Float64())
	}
}

// mendPart names the spots, gives them a coat that a coat may be, and takes from a back what it cannot have.
func (d *dice) mendPart(j *job.Job) {
	coat := d.fields["film.wet_coat_kg_per_m2"]
	for i := range j.Part.Spots {
		s := &j.Part.Spots[i]
		s.Name = "spot " + string(rune('a'+i))
		if here := j.Film.WetCoat * s.CoatFactor; here < coat.Low || here > coat.High {
			s.CoatFactor = 1
		}
	}
	if j.Part.Back == job.BackCoated {
		j.Part.Carrier, j.Part.Orientation = nil, job.Vertical
	}
	t := j.Tunnel
	if t == nil {
		return
	}
	if j.Part.Carrier == nil {
		t.CarrierReturn = nil
	}
	slices.SortStableFunc(t.Zones, func(x, y job.Zone) int { return -strings.Compare(string(x.Kind), string(y.Kind)) })
	t.Zones[0].Kind = job.Heated
	for i := range t.Zones {
		z := &t.Zones[i]
		if z.Kind == job.Cooling {
			z.Infrared = nil
		} else if z.Infrared != nil && j.Part.Back != job.BackExposed {
			z.Infrared.BackFlux = 0
		}
	}
}

// mendPlaces gives nozzles to the laws that need them and air to every place.
func (d *dice) mendPlaces(j *job.Job) {
	transfers := []*job.Transfer{&j.Workshop.Transfer}
	if o := j.StaticOven; o != nil {
		transfers = append(transfers, &o.Transfer)
		d.humid(&o.Humidity, o.SetPoint, j)
		if s, err := o.Humidity.State(o.SetPoint, j.Workshop.Pressure, j.Numerics.EnhancementFactor); err == nil && o.Chamber.AirAtLoading != nil {
			*o.Chamber.AirAtLoading = math.Max(*o.Chamber.AirAtLoading, s.DewPoint()) // else fog would fill it
		}
	}
	if t := j.Tunnel; t != nil {
		for i := range t.Zones {
			transfers = append(transfers, &t.Zones[i].Transfer)
			d.humid(&t.Zones[i].Humidity, t.Zones[i].AirTemperature, j)
		}
	}
	speed := d.fields["workshop.transfer.velocity_m_per_s"]
	for _, t := range transfers {
		if n := t.Nozzles; n != nil {
			n.Pitch = math.Max(n.Pitch, 3*n.Width)
		} else if t.Kind == job.SlotNozzles || t.Kind == job.RoundNozzles {
			t.Kind = job.Combined
		}
		if f := t.Fan; f != nil {
			f.AirFlow = f.CrossSection * d.within(f.AirFlow/f.CrossSection, 0.021, speed.High)
		}
		t.Velocity = math.Max(t.Velocity, 0.021) // slower air than 0.02 m/s is still, which parallel flow is not
		if j.Part.Back == job.BackCoated {
			t.BackCoefficient = nil
		}
	}
}

// mendTimes puts flocking, oven, deadline and the end of watching one after the other. Every other job is watched for two weeks,
// when all of them have come to rest, the rest for some time between its last step and that.
func (d *dice) mendTimes(j *job.Job) {
	const day = 86400.0
	late := 0.0
	if j.Pile != nil {
		j.Pile.AppliedAfter = math.Min(j.Pile.AppliedAfter, 3600)
		late = j.Pile.AppliedAfter
	}
	times := func(deadline, horizon *float64, from float64) {
		*horizon = 14 * day
		if d.IntN(2) == 0 {
			*horizon = d.between(math.Max(1.01*from+1, d.fields["room.horizon_s"].Low), 14*day)
		}
		*deadline = math.Max(d.fields["room.deadline_s"].Low, math.Min(*deadline, 0.9**horizon))
	}
	if r := j.Room; r != nil {
		times(&r.Deadline, &r.Horizon, late)
	}
	if o := j.StaticOven; o != nil {
		o.LoadedAfter = math.Max(late, math.Min(o.LoadedAfter, day))
		o.DoorOpen = math.Min(o.DoorOpen, 0.3*o.Dwell)
		if o.Batches > 1 {
			o.BatchInterval = d.within(o.BatchInterval, math.Max(1.01*o.DoorOpen, d.fields["static_oven.batch_interval_s"].Low), 0.5*o.Dwell)
		}
		times(&o.Deadline, &o.Horizon, o.LoadedAfter+o.Dwell)
	}
	if t := j.Tunnel; t != nil {
		t.EnteredAfter = math.Max(late, math.Min(t.EnteredAfter, day))
		length := 0.0
		for i := range t.Zones {
			length += t.Zones[i].Length
		}
		times(&t.Deadline, &t.Horizon, t.EnteredAfter+length/t.LineSpeed)
	}
}
