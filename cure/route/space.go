package route

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
)

// Space is a closed room in which many parts dry at once: its humidity, and where asked for its temperature and its
// walls, are states.
//
//	m dW/dt     = A j + n m (W_out - W) - dehumidified - fog
//	C_a dT/dt   = P + U_w (T_w - T) + n C_a (T_out - T) - A q_air + h_fg (dehumidified + fog) + dehumidifier's power
//	C_w dT_w/dt = U_w (T - T_w) - U_l (T_w - T_out) - A q_walls
//
// m is the dry air in the room, n the air changes, A the coated area of all parts. What passes saturation fogs and
// settles within a minute or so; its heat stays in the air.
type Space struct {
	Inside       *Schedule // the temperature, where it is not balanced
	Outside      *Schedule
	Balanced     bool // of heat
	CoatedArea   float64
	AirChanges   float64 // n [1/s]
	DryAir       float64 // m [kg]
	AirCapacity  float64 // C_a [J/K]
	WallCapacity float64
	WallExchange float64
	WallLoss     float64
	Heating      *Heating      // nil: none
	Dehumidifier *Dehumidifier // nil: none
}

// Heating is a thermostat with a proportional band of 1 K below its set-point, which holds over a stage.
type Heating struct {
	Power    float64 // [W]
	SetPoint float64 // [K]
}

// Dehumidifier takes water out in proportion to the relative humidity above its setting, fully 5 % above it; its capacity
// is stated at 80 % and falls with the humidity. The ends of the band are rounded by exponentials: air that rests where next to nothing
// is taken out feels the humidistat on both sides of its rest. Rounded by parabolas it would feel nothing on one, and a large
// machine in a small room make it hop across for days.
type Dehumidifier struct {
	Capacity float64 // [kg/s]
	Setting  float64 // relative humidity
	Power    float64 // [W] at full capacity
}

const (
	thermostatBand   = 1.0  // K
	humidistatBand   = 0.05 // of relative humidity
	humidistatCorner = 0.02 // of that band, over which its ends are rounded
	ratedHumidity    = 0.8  // at which capacities are stated
	settlingTime     = 60.0 // s, of fog on the walls
	fogCorner        = 1e-5 // kg/kg, over which the onset of fog is rounded
)

// Positions of the own states; the last four are counts: heat that the heating gave [J], water that left with the air, that
// the dehumidifier took and that settled on the walls [kg].
const (
	spaceHumidity = iota
	spaceAir
	spaceWall
	spaceHeater
	spaceAired
	spaceRemoved
	spaceFogged
	spaceStates
)

// Start returns the own states at time zero.
func (s *Space) Start() []float64 {
	inside := s.Inside.State(0)
	own := make([]float64, spaceStates)
	own[spaceHumidity], own[spaceAir], own[spaceWall] = inside.HumidityRatio(), inside.T, or(s.Inside.wall, inside.T)
	return own
}

// States implements film.Surroundings.
func (s *Space) States() int { return spaceStates }

// Scale implements film.Surroundings.
func (s *Space) Scale(i int) float64 {
	return [spaceStates]float64{humidityScale, temperatureScale, temperatureScale,
		math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1)}[i]
}

// state is the room's air at time t.
func (s *Space) state(t float64, own []float64) air.State {
	a := air.State{T: own[spaceAir], P: s.Inside.pressure, Real: s.Inside.real}
	if !s.Balanced {
		a.T = s.Inside.temperature.At(t)
	}
	a.Y = fraction(math.Max(0, own[spaceHumidity])) // below zero by the tolerance at most
	return a
}

// Climate implements film.Surroundings.
func (s *Space) Climate(t float64, own []float64) film.Climate {
	a := s.state(t, own)
	c := film.Climate{Air: a, Wall: a.T}
	switch {
	case s.Balanced:
		c.Wall = own[spaceWall] // what the parts draw is charged to them; a wall temperature that is given is their first
	case s.Inside.wall != nil:
		c.Wall = *s.Inside.wall
	}
	return c
}

// Rates implements film.Surroundings.
func (s *Space) Rates(t float64, own []float64, d film.Drawn, out []float64) {
	a, outside := s.state(t, own), s.Outside.State(t)
	w := own[spaceHumidity]
	full := a.SaturatedFraction()
	saturated := a
	saturated.Y = math.Min(full, 0.99)
	fog := s.DryAir / settlingTime * excess(w-saturated.HumidityRatio(), fogCorner)
	removed, driving := s.Dehumidifier.removes(a.Y / full)
	aired := s.AirChanges * s.DryAir * (w - outside.HumidityRatio())
	out[spaceHumidity] = (s.CoatedArea*d.Vapour - aired - removed - fog) / s.DryAir
	out[spaceAired], out[spaceRemoved], out[spaceFogged] = aired, removed, fog
	out[spaceAir], out[spaceWall], out[spaceHeater] = 0, 0, 0
	if !s.Balanced {
		return
	}
	latent := air.LatentHeat(a.T)
	toWall := s.WallExchange * (a.T - own[spaceWall])
	heat := s.Heating.gives(a.T)
	out[spaceAir] = (heat-toWall-s.CoatedArea*d.FromAir+latent*(removed+fog)+driving)/s.AirCapacity + s.AirChanges*(outside.T-a.T)
	out[spaceWall] = (toWall - s.WallLoss*(own[spaceWall]-outside.T) - s.CoatedArea*d.FromWalls) / s.WallCapacity
	out[spaceHeater] = heat
}

// Varies implements film.Surroundings.
func (s *Space) Varies() bool {
	return s.Outside.Varies() || !s.Balanced && s.Inside.Varies()
}

// gives is the heating's power at the room temperature T [W].
func (h *Heating) gives(T float64) float64 {
	if h == nil {
		return 0
	}
	return h.Power * clamp((h.SetPoint-T)/thermostatBand)
}

// removes is the water taken out [kg/s] and the power drawn [W] at a relative humidity.
func (d *Dehumidifier) removes(rh float64) (water, power float64) {
	if d == nil {
		return 0, 0
	}
	x := (rh - d.Setting) / humidistatBand
	run := excess(x, humidistatCorner) - excess(x-1, humidistatCorner)
	return d.Capacity * run * rh / ratedHumidity, d.Power * run
}
