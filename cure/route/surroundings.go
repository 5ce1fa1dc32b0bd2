package route

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/num"
)

// Schedule is air whose temperature and relative humidity run in straight lines between given points.
type Schedule struct {
	temperature, humidity num.Linear
	pressure              float64
	real                  bool
	wall                  *float64
	steady                bool
}

// over returns the schedule for one stage, noting whether it stands still there.
func (s *Schedule) over(start, end float64) *Schedule {
	c := *s
	knots := s.temperature.Knots()
	c.steady = len(knots) == 1 || start >= knots[len(knots)-1]
	return &c
}

// State returns the air at time t [s].
func (s *Schedule) State(t float64) air.State {
	a := air.State{T: s.temperature.At(t), P: s.pressure, Real: s.real}
	a.Y = s.humidity.At(t) * a.SaturatedFraction()
	return a
}

// States implements film.Surroundings.
func (s *Schedule) States() int { return 0 }

// Climate implements film.Surroundings.
func (s *Schedule) Climate(t float64, _ []float64) film.Climate {
	a := s.State(t)
	c := film.Climate{Air: a, Wall: a.T}
	if s.wall != nil {
		c.Wall = *s.wall
	}
	return c
}

// Rates implements film.Surroundings.
func (s *Schedule) Rates(float64, []float64, film.Drawn, []float64) {}

// Varies implements film.Surroundings.
func (s *Schedule) Varies() bool { return !s.steady }

// Steady is air that stays as it is.
type Steady film.Climate

// States implements film.Surroundings.
func (s *Steady) States() int { return 0 }

// Climate implements film.Surroundings.
func (s *Steady) Climate(float64, []float64) film.Climate { return film.Climate(*s) }

// Rates implements film.Surroundings.
func (s *Steady) Rates(float64, []float64, film.Drawn, []float64) {}

// Varies implements film.Surroundings.
func (s *Steady) Varies() bool { return false }

// Chamber is a box oven whose air and walls are states: they sag under a cold load and climb back as far as the heater
// reaches. Its humidity is given.
//
//	C_a dT_a/dt = P + U_w (T_w - T_a) + G cp (T_m - T_a) - A q_air
//	C_w dT_w/dt = U_w (T_a - T_w) - U_l (T_w - T_room) - A q_walls
//
// P follows the set-point in proportion, with a bias that holds the empty oven at it:
// P = clamp(P_hold + P_max (T_set - T_a)/band, 0, P_max), its corners rounded.
type Chamber struct {
	Air          air.State // at the set-point; its vapour fraction holds throughout
	CoatedArea   float64   // A [m2]
	HeaterPower  float64   // P_max [W]
	Band         float64   // [K]
	AirCapacity  float64   // C_a [J/K]
	MakeUp       float64   // G cp [W/K]
	MakeUpAir    float64   // T_m [K]
	WallCapacity float64   // C_w [J/K]
	WallExchange float64   // U_w [W/K]
	WallLoss     float64   // U_l [W/K]
	Room         float64   // T_room [K]
}

// Hold is the power that keeps the empty oven at its set-point [W].
func (c *Chamber) Hold() float64 {
	walls := 0.0
	if c.WallExchange+c.WallLoss > 0 {
		walls = c.WallExchange * c.WallLoss / (c.WallExchange + c.WallLoss)
	}
	return walls*(c.Air.T-c.Room) + c.MakeUp*(c.Air.T-c.MakeUpAir)
}

// Power is the heater's power at the chamber air temperature T [W].
func (c *Chamber) Power(T float64) float64 {
	return c.HeaterPower * clamp((c.Hold()+c.HeaterPower*(c.Air.T-T)/c.Band)/c.HeaterPower)
}

// clampCorner is the width over which the ends of the proportional band are rounded: an integrator whose air rests
// right at a sharp corner would see another slope with every stage and creep.
const clampCorner = 0.05

// clamp holds x between 0 and 1 with rounded corners; half way it is x within 1e-3.
func clamp(x float64) float64 {
	return (1 + math.Hypot(x, clampCorner) - math.Hypot(x-1, clampCorner)) / 2
}

// States implements film.Surroundings.
func (c *Chamber) States() int { return 2 }

// Climate implements film.Surroundings.
func (c *Chamber) Climate(_ float64, own []float64) film.Climate {
	a := c.Air
	a.T = own[0]
	return film.Climate{Air: a, Wall: own[1]}
}

// Rates implements film.Surroundings.
func (c *Chamber) Rates(_ float64, own []float64, d film.Drawn, out []float64) {
	toWall := c.WallExchange * (own[0] - own[1])
	out[0] = (c.Power(own[0]) - toWall + c.MakeUp*(c.MakeUpAir-own[0]) - c.CoatedArea*d.FromAir) / c.AirCapacity
	out[1] = (toWall - c.WallLoss*(own[1]-c.Room) - c.CoatedArea*d.FromWalls) / c.WallCapacity
}

// Varies implements film.Surroundings.
func (c *Chamber) Varies() bool { return false }
