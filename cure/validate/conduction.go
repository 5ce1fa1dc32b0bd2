package validate

import (
	"math"

	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/transfer"
)

// conduction is parts that heat and cool, run as the part of a job under a film that weighs nothing.
func conduction() cases {
	return cases{
		"CND-5.1": junction, "CND-5.3": curedPanel, "CND-5.4": pipeline, "CND-WALL-*": wallSeries, "CND-SEMI": deepWall,
		"CND-TAU": func(e *entry) {
			b := sheet(e, e.kelvin("T_i_C"), stillAir{air: dryAir(e.kelvin("T_inf_C"))})
			e.check("tau_s", b.timeTo(e, e.kelvin("T_inf_C")+(e.one("T_i_C")-e.one("T_inf_C"))/math.E))
			e.check("t_s", b.timeTo(e, e.kelvin("T_C")))
		},
		"CND-RAMP": rampedSheet,
	}
}

// slab is a part without film, one face in the air, the other sealed.
func slab(thickness, k, rho, c float64, cells int, start float64, around stillAir, h float64) *bench {
	around.wall = around.air.T
	return &bench{coat: noFilm(), cells: 8, start: start, around: around, front: given(h),
		part: film.Part{Thickness: thickness, Density: rho, HeatCapacity: c, Conductivity: k, Back: film.Insulated, Cells: cells}}
}

// timeTo is when the part, lumped, passes a temperature [s].
func (b *bench) timeTo(e *entry, T float64) float64 {
	sign := 1.0
	if T < b.start {
		sign = -1
	}
	m, ok := b.run(e, 1e6, func(m moment) float64 { return sign * (m.wall()[0] - T) })
	if !ok {
		return math.NaN()
	}
	return m.time
}

// lumped is a conductivity so high that the part has one temperature [W/(m K)].
const lumped = 1e4

// junction: a sphere of diameter D in a gas warms as a slab of D/6 with one face open.
func junction(e *entry) {
	T, gas := e.kelvin("T_i"), e.kelvin("T_inf")
	b := func(d float64) *bench {
		return slab(d/6, lumped, e.one("rho"), e.one("c"), 2, T, stillAir{air: dryAir(gas)}, e.one("h"))
	}
	// The size whose time constant is the one asked for: time constants go with the size.
	const trial = 1e-3
	e.check("D_m", trial*e.one("tau_s")/b(trial).timeTo(e, gas+(T-gas)/math.E))
	e.check("t_s", b(e.want("D_m")[0]).timeTo(e, e.kelvin("T")))
}

// curedPanel: a coated panel in an oven until its coating is cured, then in air until it may be touched; both faces alike.
func curedPanel(e *entry) {
	room, oven := e.kelvin("cool_T_C"), e.kelvin("oven_T_C")
	b := bench{coat: noFilm(), cells: 8, start: e.kelvin("T_i_C"), around: stillAir{air: dryAir(oven), wall: oven},
		front: film.Face{Law: transfer.Given{H: e.one("oven_h")}, Emissivity: e.one("eps"), Factor: 1},
		part: film.Part{Thickness: e.one("thickness_m"), Density: e.one("rho"), HeatCapacity: e.one("c"), Conductivity: e.one("k"),
			Back: film.Mirrored, Cells: 2}}
	cured := b.timeTo(e, e.kelvin("cure_T_C"))
	e.check("t_cure_s", cured)
	m, ok := b.run(e, cured+e.one("cure_s"), nil)
	if !ok {
		return
	}
	b.start = m.wall()[0]
	b.around = stillAir{air: dryAir(room), wall: room}
	b.front.Law = transfer.Given{H: e.one("cool_h")}
	e.check("t_total_s", cured+e.one("cure_s")+b.timeTo(e, e.kelvin("safe_T_C")))
}

// wallCells keep the middle of the last cell within an eightieth of the wall from its face.
const wallCells = 40

// pipeline: a plane wall sealed outside, heated inside.
func pipeline(e *entry) {
	h, k, l, hot := e.one("h"), e.one("k"), e.one("L_m"), e.kelvin("T_inf_C")
	c := k / e.one("alpha") / 1000
	b := slab(l, k, 1000, c, wallCells, e.kelvin("T_i_C"), stillAir{air: dryAir(hot)}, h)
	m, ok := b.run(e, e.one("t_s"), nil)
	if !ok {
		return
	}
	T, wall := m.film(), m.wall()
	face := transfer.Surface{Air: dryAir(hot), Wall: hot, Law: transfer.Given{H: h}, Factor: 1}
	e.check("Bi", h*l/k)
	e.check("Fo", e.one("alpha")*e.one("t_s")/(l*l))
	e.check("T_insulated_C", wall[wallCells-1]-zero)
	e.check("T_heated_C", T-zero)
	e.check("q_W_per_m2", face.DryHeat(T))
	zeta, _ := b.slowestMode(e, e.one("alpha")/(l*l), hot)
	e.check("zeta1", zeta)
}

// slowestMode reads the first eigenvalue of the wall off its late decay, theta = C1 exp(-zeta1^2 Fo) at the sealed face,
// between Fo = 2 and 3, where the second mode is gone (below 1e-8 of the first); rate is Fo per second.
func (b *bench) slowestMode(e *entry, rate, hot float64) (zeta, c1 float64) {
	theta := func(fo float64) float64 {
		m, ok := b.run(e, fo/rate, nil)
		if !ok {
			return math.NaN()
		}
		w := m.wall()
		// The sealed face lies half a cell beyond the last cell's middle, where the profile is flat: a parabola through it.
		last, before := w[len(w)-1], w[len(w)-2]
		return (hot - (last + (last-before)/8)) / (hot - b.start)
	}
	early, late := theta(2), theta(3)
	zeta2 := math.Log(early / late)
	return math.Sqrt(zeta2), early * math.Exp(2*zeta2)
}

// wallSeries: a plane wall, one face heated, the other sealed, against the exact series.
func wallSeries(e *entry) {
	const k, rho, c, l, cold, hot = 0.25, 1000, 1000, 0.01, 293.15, 393.15
	b := slab(l, k, rho, c, wallCells, cold, stillAir{air: dryAir(hot)}, e.one("Bi")*k/l)
	const rate = k / (rho * c * l * l)
	var centre, face, mean []float64
	for _, fo := range e.in("Fo") {
		m, ok := b.run(e, fo/rate, nil)
		if !ok {
			return
		}
		theta := func(T float64) float64 { return (hot - T) / (hot - cold) }
		wall := m.wall()
		sum := 0.0
		for _, T := range wall {
			sum += theta(T) / wallCells
		}
		centre = append(centre, theta(wall[wallCells-1]))
		face = append(face, theta(m.film()))
		mean = append(mean, sum)
	}
	e.check("theta_centre", centre...)
	e.check("theta_surface", face...)
	e.check("theta_mean", mean...)
	zeta, c1 := b.slowestMode(e, rate, hot)
	// 40 cells leave their own error of the eigenvalue, of second order: 1e-4 at Bi 0.1 and 1, 3e-4 at Bi 10; C1 carries it
	// through exp(2 zeta1^2).
	const reason = "40 cells of the part"
	e.richer("zeta1", relative(3e-4), reason, zeta)
	e.richer("C1", relative(2e-3), reason, c1)
}

// deepWall: heat has gone into a wall that is deep against its reach, sqrt(alpha t) = 0.2 m of 2 m.
func deepWall(e *entry) {
	k, alpha := e.one("k"), e.one("alpha")
	const rho = 1000
	b := slab(2, k, rho, k/alpha/rho, 200, e.kelvin("T_i_C"), stillAir{air: dryAir(e.kelvin("T_inf_C"))}, e.one("h"))
	if m, ok := b.run(e, e.one("t_s"), nil); ok {
		e.check("T_surface_C", m.film()-zero)
	}
}

// sheet is CND-TAU's, both faces in the air.
func sheet(e *entry, start float64, around stillAir) *bench {
	b := slab(e.one("thickness_m"), lumped, e.one("rho"), e.one("c"), 2, start, around, e.one("h"))
	b.part.Back, b.back = film.Exposed, given(e.one("h"))
	return b
}

// rampedSheet: a lumped part in air that warms at a constant rate from the part's own temperature.
func rampedSheet(e *entry) {
	const h, rho, c = 30.0, 7850.0, 460.0
	start := e.kelvin("T_0_C")
	b := slab(e.one("tau_s")*h/(rho*c), lumped, rho, c, 2, start, stillAir{air: dryAir(start), ramp: e.one("ramp_K_per_s")}, h)
	m, ok := b.run(e, e.one("t_s"), nil)
	if !ok {
		return
	}
	T := m.wall()[0]
	e.check("T_part_C", T-zero)
	e.check("lag_K", b.around.Climate(e.one("t_s"), nil).Air.T-T)
}
