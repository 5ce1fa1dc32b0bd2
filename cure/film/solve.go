package film

// Factorise implements ode.System.
func (s *System) Factorise(shift float64) bool {
	s.shift = shift
	return s.arrow.Factorise(shift)
}

// Solve implements ode.System. Diffusion through a thin wet film and conduction through film, part and carrier are faster than a
// step by up to ten orders of magnitude, and rounding in the elimination is magnified as much; what it takes from the water of all
// cells together and from the heat of all bodies together, which the equations conserve exactly, is given back evenly.
func (s *System) Solve(b []float64) {
	water, heat := s.excess(b)/s.shift, s.excessHeat(b)/s.shift
	s.arrow.Solve(b)
	if s.water.conserves() {
		lost := (s.excess(b) - water) / s.grid.Solids
		cells := s.unknowns(b)
		for i := range cells {
			cells[i] -= lost
		}
	}
	s.warm(b, heat-s.excessHeat(b))
}

// warm adds a heat [J/m2] to film, part and carrier, as one change of temperature for all of them.
func (s *System) warm(y []float64, heat float64) {
	wall := y[:s.walls]
	whole := s.fixedCapacity + float64(s.walls)*s.part.cellCapacity()
	if s.carrier {
		whole += s.part.Carrier.Capacity
	}
	by := heat / whole
	y[s.iBorder()] += by * s.fixedCapacity
	for i := range wall {
		wall[i] += by
	}
	if s.carrier {
		y[s.iCarrier()] += by
	}
}

// excess is the water in the cells over that of the film's mass [kg/m2].
func (s *System) excess(y []float64) float64 {
	sum := -y[s.iMass()]
	for i, x := range s.unknowns(y) {
		sum += s.grid.Width[i] * x
	}
	return sum
}

// excessHeat is the heat in film, part and carrier over what has come in from outside [J/m2].
func (s *System) excessHeat(y []float64) float64 {
	l := y[s.iLedger():]
	sum, wall := 0.0, y[:s.walls]
	for _, t := range wall {
		sum += t
	}
	sum = sum*s.part.cellCapacity() + y[s.iBorder()]
	if s.carrier {
		sum += y[s.iCarrier()] * s.part.Carrier.Capacity
	}
	return sum - (l[convected] + l[radiated] - l[vapour] + l[backConvected] + l[backRadiated] + l[carried])
}
