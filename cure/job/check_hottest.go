package job

import (
	"fmt"
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/kinetics"
	"github.com/drywright/drywright/cure/words"
)

const (
	stefanBoltzmann = 5.670374419e-8 // W/(m2 K4), CODATA 2018
	// hottestFilm [K] is where infrared is refused: 325 degC, past which neither film nor part is one any more, and
	// safely below the critical point of water.
	hottestFilm = 598.15
	// driedAirRise [K] is the most that a dehumidifier is taken to warm a closed room above everything else in it. It dries
	// the air as it warms it and so turns itself off; in closed drying rooms they reach 10 to 20 K (common practice, no
	// source).
	driedAirRise = 30.0
)

// checkHottest demands that film and cure stay meaningful at the highest temperature that the job can reach.
func (v *validator) checkHottest(j *Job) {
	if !v.sound("workshop", "static_oven", "tunnel", "pile", "part", "film.adhesive.emissivity") {
		return
	}
	t, zone := hottest(j)
	if t > hottestFilm {
		v.conflict(fmt.Sprintf("tunnel.zones[%d].infrared.flux_W_per_m2", zone),
			words.Told("the film could reach {hottest} in this zone",
				"hottest", degrees(t)),
			words.Told("At most {most} is accepted: less flux, a shorter zone or a faster line.",
				"most", degrees(hottestFilm)))
		return
	}
	const at = "film.adhesive"
	a := &j.Film.Adhesive
	if v.sound(at+".capillary_diffusivity_m2_per_s", at+".particle_diameter_m") {
		particles := boltzmann * t / (3 * math.Pi * air.WaterViscosity(t) * a.ParticleDiameter)
		if particles >= a.CapillaryDiffusion {
			v.conflict(at+".capillary_diffusivity_m2_per_s",
				words.Told("{film} is not above the particles' own {particles} at {hottest}",
					"film", v.typed(a.CapillaryDiffusion, at+".capillary_diffusivity_m2_per_s"), "particles", v.computed(particles, at+".capillary_diffusivity_m2_per_s"), "hottest", degrees(t)),
				words.Told("Water moves faster than the particles do: raise this diffusivity or the particle diameter."))
		}
	}
	if c := a.Crosslinking; c != nil && v.sound(at+".crosslinking") {
		if law, _, err := c.Law(); err == nil {
			v.checkSpeed(law, t, *c)
		}
	}
}

func (v *validator) checkSpeed(law kinetics.Law, t float64, c Crosslinking) {
	const at = "film.adhesive.crosslinking."
	k1, k2 := law.Constants(t)
	first := at + "schedule.pairs"
	if len(c.Schedule.Pairs) == 0 {
		first = at + "frequency_factor_per_s"
	}
	for _, k := range []struct {
		path string
		rate float64
	}{{first, k1}, {at + "autocatalysis.frequency_factor_per_s", k2}} {
		if !(k.rate <= fastest) {
			v.conflict(k.path, words.Told("a rate constant of {rate} at {hottest}",
				"rate", v.computed(k.rate, at+"frequency_factor_per_s"), "hottest", degrees(t)),
				words.Told("The film would cure in an instant: check frequency factor, activation energy and schedule."))
		}
	}
}

// hottest is the highest temperature that film, air, walls and part can reach [K], and the zone of the tunnel at whose end
// infrared alone makes it so.
func hottest(j *Job) (t float64, zone int) {
	see := func(values ...*float64) {
		for _, v := range values {
			if v != nil {
				t = max(t, *v)
			}
		}
	}
	see(j.Part.StartTemperature, j.Workshop.WallTemperature)
	for i := range j.Workshop.Air {
		see(&j.Workshop.Air[i].Temperature)
	}
	if s := j.Workshop.Space; s != nil && s.HeatBalance {
		for i := range s.Outside {
			see(&s.Outside[i].Temperature)
		}
		if s.Heating != nil {
			see(&s.Heating.SetPoint)
		}
		if s.Dehumidifier != nil {
			t += driedAirRise
		}
	}
	film := t // of the part that enters the tunnel
	if o := j.StaticOven; o != nil {
		see(&o.SetPoint, o.Chamber.AirAtLoading, o.Chamber.WallAtLoading)
	}
	if o := j.Tunnel; o != nil {
		see(o.CarrierReturn)
		if o.CarrierReturn != nil {
			film = max(film, *o.CarrierReturn)
		}
		for i := range o.Zones {
			film = o.Zones[i].hottestFilm(film, o.Zones[i].Length/o.LineSpeed, j)
			if film > t {
				t, zone = film, i
			}
		}
	}
	return t, zone
}

// hottestFilm bounds the temperature of a film that enters the zone at a temperature of at most entering [K] and stays for
// dwell [s]. Without infrared nothing gets hotter than air, walls and what it was. Infrared adds the lesser of two bounds, both
// without evaporation, with all that both faces absorb, q [W/m2]:
//
//   - nothing is given back: q t/(rho c b) on average, and q b/(3 k) more at the face (Carslaw and Jaeger 1959, Conduction
//     of Heat in Solids, section 3.8, from memory: slab under constant flux after long times, approached from below);
//   - all is given back at the coated face, by radiation to walls at T_s and a given coefficient only:
//     eps sigma (T^4 - T_s^4) + h (T - T_s) = q, and below a pile what reaches the film has to pass up through it.
func (z *Zone) hottestFilm(entering, dwell float64, j *Job) float64 {
	around := z.AirTemperature
	if z.WallTemperature != nil {
		around = max(around, *z.WallTemperature)
	}
	start := max(entering, around)
	if z.Infrared == nil {
		return start
	}
	front := z.Infrared.Absorptivity * z.Infrared.Flux
	back := z.Infrared.BackAbsorptivity * z.Infrared.BackFlux
	q := front + back
	if !(q > 0) {
		return start
	}
	p := &j.Part
	depth := p.Thickness
	if p.Back == BackCoated {
		depth /= 2
	}
	kept := start + q*dwell/(p.Density*p.HeatCapacity*depth) + q*depth/(3*p.Conductivity)

	emissivity, below := j.Film.Adhesive.Emissivity, 0.0
	if j.Pile != nil {
		emissivity = j.Pile.Emissivity
		below = (z.Infrared.FilmShare*front + back) * j.Pile.Length / j.Pile.Conductivity
	}
	h := 0.0
	if z.Transfer.Kind == Given {
		h = z.Transfer.Coefficient
		for _, s := range p.Spots {
			h = min(h, s.TransferFactor*z.Transfer.Coefficient)
		}
	}
	given := balance(around, q, emissivity, h) + below
	return max(start, min(kept, given))
}

// balance solves eps sigma (T^4 - T_s^4) + h (T - T_s) = q for T [K]. The left side is convex and rises, so that Newton's
// method from above stays above the root: each step is a bound already.
func balance(around, q, emissivity, h float64) float64 {
	c := emissivity * stefanBoltzmann
	fourth := around * around * around * around
	t := math.Sqrt(math.Sqrt(fourth + q/c))
	for range 40 {
		step := (c*(t*t*t*t-fourth) + h*(t-around) - q) / (4*c*t*t*t + h)
		if !(step > 1e-9*t) {
			break
		}
		t -= step
	}
	return t
}
