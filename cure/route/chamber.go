package route

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
)

// Chamber is a box oven whose air, walls and, where asked for, humidity are states: they sag under a cold wet load and
// climb back as far as the heater and the exhaust reach.
//
//	C_a dT_a/dt = P + U_w (T_w - T_a) + G cp (T_m - T_a) - A q_air
//	C_w dT_w/dt = U_w (T_a - T_w) - U_l (T_w - T_room) - A q_walls
//	m dW/dt     = A j + G (W_m - W)
//
// G is the dry air that comes in as make-up, and through the open door while it is open; as much leaves as exhaust. q_air
// includes the warming of the vapour to the chamber's air. P follows the set-point in proportion, with a bias that holds
// the empty oven at it: P = P_max clamp(bias + (T_set - T_a)/band), the corners rounded.
type Chamber struct {
	Air          air.State // at the set-point and the humidity to start from
	Balanced     bool      // the humidity follows from the balance; else it holds
	CoatedArea   float64   // A [m2]
	HeaterPower  float64   // P_max [W]
	Band         float64   // [K]
	DryAir       float64   // m, dry air in the chamber [kg]
	AirCapacity  float64   // C_a [J/K]
	MakeUp       float64   // G without the door, dry air [kg/s]
	Door         float64   // further dry air that comes in over this stage, its door being open [kg/s]
	MakeUpAir    air.State
	Others       []Company // further loads in the oven over this stage
	WallCapacity float64   // C_w [J/K]
	WallExchange float64   // U_w [W/K]
	WallLoss     float64   // U_l [W/K]
	Room         float64   // T_room [K]
}

// Positions of the own states. The last five are counts that nothing depends on: heat from the heater, lost through the walls,
// taken by the passing air [J], water carried off by it [kg], heat drawn by all loads [J].
const (
	chamberAir = iota
	chamberWall
	chamberHumidity
	chamberHeater
	chamberLost
	chamberPassed
	chamberWater
	chamberDrawn
	chamberStates
)

// Start returns the own states when loading, for the temperatures of air and walls.
func (c *Chamber) Start(airT, wallT float64) []float64 {
	own := make([]float64, chamberStates)
	own[chamberAir], own[chamberWall], own[chamberHumidity] = airT, wallT, c.Air.HumidityRatio()
	return own
}

// passing is the heat capacity flow of the dry air and its vapour at make-up [W/K].
func (c *Chamber) passing(dry float64) float64 {
	return dry * (1 + c.MakeUpAir.HumidityRatio()) * c.MakeUpAir.SpecificHeat()
}

// Hold is the power that keeps the empty, shut oven at its set-point [W].
func (c *Chamber) Hold() float64 {
	walls := 0.0
	if c.WallExchange+c.WallLoss > 0 {
		walls = c.WallExchange * c.WallLoss / (c.WallExchange + c.WallLoss)
	}
	return walls*(c.Air.T-c.Room) + c.passing(c.MakeUp)*(c.Air.T-c.MakeUpAir.T)
}

// Power is the heater's power at the chamber air temperature T [W].
func (c *Chamber) Power(T float64) float64 {
	bias := unclamp(math.Min(1, c.Hold()/c.HeaterPower))
	return c.HeaterPower * clamp(bias+(c.Air.T-T)/c.Band)
}

// States implements film.Surroundings.
func (c *Chamber) States() int { return chamberStates }

// Scale implements film.Surroundings.
func (c *Chamber) Scale(i int) float64 {
	return [chamberStates]float64{temperatureScale, temperatureScale, humidityScale,
		math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1)}[i]
}

// Climate implements film.Surroundings.
func (c *Chamber) Climate(_ float64, own []float64) film.Climate {
	a := c.Air
	a.T = own[chamberAir]
	if c.Balanced {
		a.Y = fraction(math.Max(0, own[chamberHumidity])) // below zero by the tolerance at most
	}
	return film.Climate{Air: a, Wall: own[chamberWall]}
}

// Rates implements film.Surroundings.
func (c *Chamber) Rates(t float64, own []float64, d film.Drawn, out []float64) {
	if len(c.Others) > 0 {
		in := c.Climate(t, own)
		for i := range c.Others {
			c.Others[i].add(t, &in, &d)
		}
	}
	T, wall := own[chamberAir], own[chamberWall]
	toWall := c.WallExchange * (T - wall)
	lost := c.WallLoss * (wall - c.Room)
	dry := c.MakeUp + c.Door
	passed := c.passing(dry) * (T - c.MakeUpAir.T)
	power := c.Power(T)
	out[chamberAir] = (power - toWall - passed - c.CoatedArea*d.FromAir) / c.AirCapacity
	out[chamberWall] = (toWall - lost - c.CoatedArea*d.FromWalls) / c.WallCapacity
	out[chamberHumidity], out[chamberWater] = 0, 0
	if c.Balanced {
		out[chamberWater] = dry * (own[chamberHumidity] - c.MakeUpAir.HumidityRatio())
		out[chamberHumidity] = (c.CoatedArea*d.Vapour - out[chamberWater]) / c.DryAir
	}
	out[chamberHeater], out[chamberLost], out[chamberPassed] = power, lost, passed
	out[chamberDrawn] = c.CoatedArea * (d.FromAir + d.FromWalls)
}

// Varies implements film.Surroundings.
func (c *Chamber) Varies() bool { return len(c.Others) > 0 }

// fraction is the vapour mole fraction of air with the humidity ratio w [kg/kg].
func fraction(w float64) float64 {
	const ratio = air.WaterMolarMass / air.AirMolarMass
	return w / (ratio + w)
}
