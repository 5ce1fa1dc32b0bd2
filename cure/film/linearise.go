package film

import "math"

// The boundary's partial derivatives are one-sided differences; these steps leave about 1e-5 relative error, which a
// Rosenbrock method of order 4 does not notice. Everything else in the Jacobian is exact.
const (
	temperatureStep = 3e-4 // K
	waterStep       = 1e-7 // kg/kg
	relativeStep    = 1e-6 // of an own state
	ownStepFloor    = 1e-9 // smallest step of an own state
	timeStep        = 1e-2 // s
)

// tailPattern lists, for each tail unknown, the leading unknowns that its rate depends on.
func (s *System) tailPattern() [][]int {
	p := make([][]int, 0, s.counts+s.conversions+ledgerSize)
	inputs := append([]int{s.iBorder() - 1, s.walls - 1}, s.borderList()...)
	for range s.counts {
		p = append(p, inputs)
	}
	for i := range s.conversions {
		row := []int{s.iWater() + s.water.seat(i)}
		for k := range s.perBorder {
			row = append(row, s.iBorder()+k)
		}
		p = append(p, row)
	}
	for range ledgerSize {
		p = append(p, inputs)
	}
	return p
}

// borderList lists the border unknowns.
func (s *System) borderList() []int {
	l := make([]int, s.borders())
	for i := range l {
		l[i] = s.iBorder() + i
	}
	return l
}

// slopes are the derivatives of the boundary by one of its inputs.
type slopes struct {
	activity                                         float64
	flux, drift, given, film, back, carrier, contact float64
	ledger                                           [ledgerSize]float64
}

// between is (b - a)/step. The counts of the ledger close the accounts for these differences to the last digit, as they do for
// the fluxes themselves: rounding divided by a small step would open them.
func between(a, b *boundary, step float64) slopes {
	d := slopes{
		activity: (b.contact.Activity - a.contact.Activity) / step,
		flux:     (b.contact.Flux - a.contact.Flux) / step,
		drift:    (b.drift - a.drift) / step,
		given:    (b.given - a.given) / step,
		film:     (b.film - a.film) / step,
		back:     (b.back.Convected + b.back.Radiated + b.back.Contact - a.back.Convected - a.back.Radiated - a.back.Contact) / step,
		carrier:  (b.carrier - a.carrier) / step,
		contact:  (b.back.Contact - a.back.Contact) / step,
	}
	for i := range d.ledger {
		d.ledger[i] = (b.ledger[i] - a.ledger[i]) / step
	}
	d.ledger[vapour] = d.ledger[convected] + d.ledger[radiated] - d.film
	d.ledger[backConvected] = d.back - d.ledger[backRadiated] - d.contact
	return d
}

// Linearise implements ode.System.
func (s *System) Linearise(t float64, y, _, dfdt []float64) bool {
	a := s.arrow
	a.Clear()
	in := s.input(t, y)
	s.forecast.activity = s.meetBorder(&in).contact.Activity
	s.forecast.at.set(&in)

	// The film's temperature by H, by M and by the fibre's water.
	_, binding := s.coat.binding(in.mass)
	perEnthalpy := 1 / s.capacity(s.held(y))
	perWater := -(in.film - EnthalpyZero) * WaterHeatCapacity * perEnthalpy
	s.perBorder[0], s.perBorder[1] = perEnthalpy, perWater+binding*perEnthalpy
	if s.fibre {
		s.perBorder[2] = perWater
	}

	s.interior(y, &in)

	// The boundary, input by input.
	warm := in
	warm.film += temperatureStep
	d := s.slope(&warm, temperatureStep)
	s.forecast.byFilm = d.activity
	for i, per := range s.perBorder {
		s.place(s.iBorder()+i, d, per)
	}

	wetter := in
	wetter.water += waterStep
	d = s.slope(&wetter, waterStep)
	s.forecast.byWater = d.activity
	s.place(s.iBorder()-1, d, 1)

	if s.water.seesMass() {
		heavier := in
		step := waterStep * s.grid.Solids
		heavier.mass += step
		d = s.slope(&heavier, step)
		s.forecast.byMass = d.activity
		s.place(s.iMass(), d, 1)
	}

	if s.fibre {
		damper := in
		step := waterStep * s.exposure.Regain
		damper.fibre += step
		d = s.slope(&damper, step)
		s.forecast.byFibre = d.activity
		s.place(s.iFibre(), d, 1)
	}

	hotter := in
	hotter.last += temperatureStep
	s.place(s.walls-1, s.slope(&hotter, temperatureStep), 1)

	if s.carrier {
		hotter = in
		hotter.carrier += temperatureStep
		s.place(s.iCarrier(), s.slope(&hotter, temperatureStep), 1)
	}
	for i := range s.own - s.counts {
		kept := in.own[i]
		step := relativeStep*math.Abs(kept) + ownStepFloor
		in.own[i] += step
		d = s.slope(&in, step)
		s.forecast.byOwn[i] = d.activity
		s.place(s.iOwn()+i, d, 1)
		in.own[i] = kept
	}
	if !s.exposure.Around.Varies() {
		clear(dfdt)
		return false
	}
	later := in
	later.t += timeStep
	d = s.slope(&later, timeStep)
	s.forecast.byTime = d.activity
	s.differentiateTime(d, dfdt)
	return true
}

// slope evaluates the boundary at a shifted input and differences it against the base, the coated face only where it sees
// the input.
func (s *System) slope(in *boundaryInput, step float64) slopes {
	b, base, at := &s.perturb, &s.border, &s.borderAt
	climate := s.exposure.Around.Climate(in.t, in.own)
	if climate == s.borderClimate && in.film == at.film && in.water == at.water && in.mass == at.mass && in.fibre == at.fibre {
		b.contact, b.drift, b.given, b.exchange = base.contact, base.drift, base.given, base.exchange
	} else {
		s.boundFront(in, climate, b)
	}
	s.boundRest(in, climate, b, s.ownRates)
	for i := range s.ownRates {
		s.ownRates[i] = (s.ownRates[i] - s.baseRates[i]) / step
	}
	return between(base, b, step)
}

// place adds the boundary's derivatives by one input, times the input's derivative by unknown j.
func (s *System) place(j int, d slopes, factor float64) {
	a, top, last := s.arrow, s.iBorder()-1, s.walls-1
	surface := s.water.lastRate(d.flux*factor, d.drift*factor)
	back := d.back * factor / s.part.cellCapacity()
	switch {
	case j == top:
		a.Diag[top] += surface
		// The back does not see the film's water, nor the film the back's temperature.
	case j == last:
		a.Diag[last] += back
	default:
		a.Col[j-s.iBorder()][top] += surface
		a.Col[j-s.iBorder()][last] += back
	}
	set := func(row int, v float64) {
		if j >= s.iBorder() {
			a.Corner[row*s.borders()+j-s.iBorder()] += v
		} else {
			a.Row[row][j] += v
		}
	}
	set(0, d.film*factor)
	set(1, -d.flux*factor)
	if s.fibre {
		set(2, (d.flux-d.given)*factor)
	}
	if s.carrier {
		set(s.iCarrier()-s.iBorder(), (d.carrier-d.contact)*factor/s.part.Carrier.Capacity)
	}
	count := func(row int, v float64) {
		for p := a.TailPtr[row]; p < a.TailPtr[row+1]; p++ {
			if a.TailIdx[p] == j {
				a.TailVal[p] += v * factor
			}
		}
	}
	seen := s.own - s.counts
	for i, r := range s.ownRates[:seen] {
		set(s.iOwn()-s.iBorder()+i, r*factor)
	}
	for i, r := range s.ownRates[seen:] {
		count(i, r)
	}
	for i, v := range d.ledger {
		count(s.counts+s.conversions+i, v)
	}
}

// interior fills what does not pass the boundary: water inside the film, conduction in the part, crosslinking.
func (s *System) interior(y []float64, in *boundaryInput) {
	a := s.arrow
	s.water.linearise(in.film, s.unknowns(y), in.mass, s.perBorder, a, s.iWater())

	capacity, conduct := s.part.cellCapacity(), s.part.cellConductance()
	enter := 2 * conduct
	a.Diag[0] -= enter / capacity
	for i, per := range s.perBorder {
		a.Col[i][0] += enter / capacity * per
		a.Corner[i] -= enter * per
	}
	a.Row[0][0] += enter
	for i := 0; i+1 < s.walls; i++ {
		a.Diag[i] -= conduct / capacity
		a.Upper[i] += conduct / capacity
		a.Lower[i+1] += conduct / capacity
		a.Diag[i+1] -= conduct / capacity
	}

	if s.conversions > 0 {
		s.interiorCure(y, in.film)
	}
}

// interiorCure fills the conversions' rows.
func (s *System) interiorCure(y []float64, film float64) {
	a := s.arrow
	s.kinetics = s.coat.Cure.At(film)
	alpha, water := s.Conversion(y), s.Water(y)
	for i := range alpha {
		_, byAlpha, byWater := s.kinetics.Rate(alpha[i], water[i])
		byT := s.kinetics.Warming(alpha[i], water[i])
		perUnknown, perMass := s.water.cellSlopes(i)
		a.TailDiag[s.counts+i] = byAlpha
		p := a.TailPtr[s.counts+i]
		a.TailVal[p] = byWater * perUnknown
		for k, per := range s.perBorder {
			a.TailVal[p+1+k] = byT * per
		}
		a.TailVal[p+2] += byWater * perMass
	}
}

// differentiateTime writes the partial time derivative, which comes through the boundary alone.
func (s *System) differentiateTime(d slopes, dfdt []float64) {
	clear(dfdt)
	dfdt[s.iBorder()-1] = s.water.lastRate(d.flux, d.drift)
	dfdt[s.walls-1] = d.back / s.part.cellCapacity()
	dfdt[s.iBorder()] = d.film
	dfdt[s.iMass()] = -d.flux
	if s.fibre {
		dfdt[s.iFibre()] = d.flux - d.given
	}
	if s.carrier {
		dfdt[s.iCarrier()] = (d.carrier - d.contact) / s.part.Carrier.Capacity
	}
	copy(s.Own(dfdt), s.ownRates)
	copy(dfdt[s.iLedger():], d.ledger[:])
}
