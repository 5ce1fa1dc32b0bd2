package sim

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// loaded is the tunnel reference with the air of its zones balanced: area is the coated area on a metre of line [m2/m].
func loaded(area float64) job.Job {
	j := tunnelReference()
	j.Tunnel.CoatedPerLength = area
	for i := range j.Tunnel.Zones {
		j.Tunnel.Zones[i].Air = &job.ZoneAir{Exhaust: 0.15, WallLoss: 20, HeaterPower: 60e3}
	}
	j.Tunnel.Zones[0].Air.LeakToNext = 0.02
	j.Tunnel.EntryLeak = 0.01
	return j
}

// In steady running each zone's exhaust and leaks carry off what evaporates there: 1e-8, as the project promises. More parts
// make the zones moister and dry later.
func TestTunnelBalances(t *testing.T) {
	before := 0.0
	for _, area := range []float64{0.5, 2, 8} {
		j := loaded(area)
		r := only(t, j)
		if len(r.Accounts) != 2 {
			t.Fatalf("%d accounts", len(r.Accounts))
		}
		for _, a := range r.Accounts {
			if !(a.Water.Relative <= 1e-8) {
				t.Errorf("%g m2/m: water of %s is open by %.2g", area, a.Place, a.Water.Relative)
			}
		}
		dry := times(r)[result.DryThrough] - j.Tunnel.EnteredAfter
		t.Logf("%g m2/m: dry after %.1f s in the tunnel, %.1f and %.1f g/kg", area, dry, 1e3*r.Accounts[0].HumidityRatio, 1e3*r.Accounts[1].HumidityRatio)
		if dry <= before {
			t.Errorf("%g m2/m dry sooner than fewer", area)
		}
		before = dry
	}
}

// With hardly any parts the zones hold the workshop's humidity, as a hand balance says: no water, no rise.
func TestEmptyTunnelHoldsTheWorkshopsHumidity(t *testing.T) {
	r := only(t, loaded(1e-6))
	for _, a := range r.Accounts {
		// 20 degC, 50 % RH is 7.3 g/kg (ASHRAE tables; 7.26 with ideal gas, 7.29 with the enhancement factor).
		if math.Abs(a.HumidityRatio-0.00729) > 2e-5 {
			t.Errorf("%s: %.3f g/kg", a.Place, 1e3*a.HumidityRatio)
		}
	}
}

// Cutting a zone in two changes nothing but what the integrator does at a seam: 1e-6.
func TestCutZoneChangesNothing(t *testing.T) {
	j := tunnelReference()
	j.Numerics.RelativeTolerance = 1e-8
	whole := times(only(t, j))
	z := j.Tunnel.Zones[0]
	z.Length /= 2
	j.Tunnel.Zones = []job.Zone{z, z, j.Tunnel.Zones[1]}
	for m, got := range times(only(t, j)) {
		if math.Abs(got-whole[m]) > 1e-6*whole[m] {
			t.Errorf("%s at %.9g s, in one zone %.9g", m, got, whole[m])
		}
	}
}

// A tunnel of one zone is a static oven whose air cannot sag: the same film in the same air, to 0.01 %.
func TestOneZoneEqualsAnOvenThatHolds(t *testing.T) {
	j := tunnelReference()
	j.Tunnel.Zones = j.Tunnel.Zones[:1]
	j.StaticOven = &job.StaticOven{LoadedAfter: j.Tunnel.EnteredAfter, Dwell: 300, SetPoint: 393.15,
		Humidity: j.Tunnel.Zones[0].Humidity, Transfer: j.Tunnel.Zones[0].Transfer, Deadline: 3600, Horizon: 86400, Batches: 1,
		Chamber: job.Chamber{CoatedArea: 1e-6, HeaterPower: 1e4, ProportionalBand: 1, AirVolume: 1, WallHeatCapacity: 1e7, WallExchange: 100}}
	res := solve(t, j)
	oven, tunnel := times(&res.Routes[0]), times(&res.Routes[1])
	for _, m := range []result.MarkName{result.Touch, result.DryThrough, result.TackFree} {
		if math.Abs(oven[m]-tunnel[m]) > 1e-4*tunnel[m] {
			t.Errorf("%s at %.7g s in the oven, %.7g s in the tunnel", m, oven[m], tunnel[m])
		}
	}
}

// A spot like the open face gives the open face's answer; a recess with less air and a thicker coat is the worst and the
// route is judged there.
func TestWorstSpotIsJudged(t *testing.T) {
	j := roomReference()
	j.Part.Spots = []job.Spot{{Name: "like the face", TransferFactor: 1, CoatFactor: 1}, {Name: "recess", TransferFactor: 0.5, CoatFactor: 1.3},
		{Name: "edge", TransferFactor: 1.5, CoatFactor: 0.8}}
	r := only(t, j)
	plain := only(t, roomReference())
	if got, want := *r.Spots[0].Answer.Ready, *plain.Answer.Ready; math.Abs(got-want) > 1e-9*want {
		t.Errorf("a spot like the face is ready at %g, the face at %g", got, want)
	}
	if r.Answer.Spot != "recess" || !r.Spots[1].Worst || *r.Answer.Ready <= *plain.Answer.Ready {
		t.Errorf("judged at %q", r.Answer.Spot)
	}
	dry := func(s result.SpotAnswer) float64 { return *s.Marks[3].Time }
	if !(dry(r.Spots[2]) < dry(r.Spots[0]) && dry(r.Spots[0]) < dry(r.Spots[1])) {
		t.Error("edge, face and recess do not dry in this order")
	}
}

// In an oven whose air sags, a spot sees the air that the whole load has made.
func TestSpotSeesTheLoadsAir(t *testing.T) {
	j := tunnelReference()
	j.Tunnel = nil
	j.StaticOven = &job.StaticOven{LoadedAfter: 300, Dwell: 900, SetPoint: 393.15, Humidity: job.Humidity{HumidityRatio: of(0.01)},
		Transfer: job.Transfer{Kind: job.Given, Coefficient: 25}, Deadline: 3600, Horizon: 86400, Batches: 1,
		Chamber: job.Chamber{VapourBalance: true, CoatedArea: 6, HeaterPower: 9e3, ProportionalBand: 3, AirVolume: 2, MakeUp: 0.02,
			WallHeatCapacity: 8e4, WallExchange: 60, WallLoss: 10}}
	j.Part.Spots = []job.Spot{{Name: "like the face", TransferFactor: 1, CoatFactor: 1}}
	r := only(t, j)
	for i, m := range r.Marks[1:6] {
		// Straight lines between the recorded points of the air stand for its curve: 0.5 %.
		if got := *r.Spots[0].Marks[i+1].Time; math.Abs(got-*m.Time) > 5e-3**m.Time {
			t.Errorf("%s at %g s, at the spot %g s", m.Name, *m.Time, got)
		}
	}
	a := r.Accounts[0]
	if !(a.Water.Relative <= 1e-8 && a.Heat.Relative <= 1e-8) {
		t.Errorf("the oven's accounts are open by %.2g (water) and %.2g (heat)", a.Water.Relative, a.Heat.Relative)
	}
	t.Logf("humidity rises to %.1f g/kg, heater at %.0f %%; ready after %.1f min", 1e3*a.HumidityRatio, 100**a.Share, *r.Answer.Ready/60)
}

// Water, heating and air changes of the full room are accounted for.
func TestFullRoomIsAccountedFor(t *testing.T) {
	j := full(20, 0.7)
	s := j.Workshop.Space
	s.HeatBalance = true
	s.Heating = &job.Heating{Power: 4000, SetPoint: 293.15, SetBack: 287.15, SetBackAt: of(7200), ResumeAt: of(43200)}
	s.Dehumidifier = &job.Dehumidifier{Capacity: 2e-4, RelativeHumidity: 0.6, Power: 600}
	s.Outside[0].Temperature = 278.15
	r := only(t, j)
	for _, a := range r.Accounts {
		if !(a.Water.Relative <= 1e-8) {
			t.Errorf("water of %s is open by %.2g", a.Place, a.Water.Relative)
		}
	}
	low, high := math.Inf(1), 0.0
	for i, T := range r.Curves.AirTemperature {
		if at := r.Curves.Time[i]; at > 20000 && at < 43200 {
			low, high = math.Min(low, T), math.Max(high, T)
		}
	}
	if !(low > 285 && high < 289) {
		t.Errorf("the set-back night runs from %.2f to %.2f degC", low-273.15, high-273.15)
	}
}

// Loads that follow each other into one oven draw on the same heater: each dries later than one alone, the later the closer they
// follow, and the oven's accounts stay closed.
func TestBatchesShareTheOven(t *testing.T) {
	oven := func(batches int, interval float64) job.Job {
		j := tunnelReference()
		j.Tunnel = nil
		j.StaticOven = &job.StaticOven{LoadedAfter: 300, Dwell: 900, SetPoint: 393.15, Humidity: job.Humidity{HumidityRatio: of(0.01)},
			Transfer: job.Transfer{Kind: job.Given, Coefficient: 25}, Deadline: 3600, Horizon: 86400, Batches: batches, BatchInterval: interval,
			Chamber: job.Chamber{CoatedArea: 2, HeaterPower: 8e3, ProportionalBand: 3, AirVolume: 2, MakeUp: 0.02,
				WallHeatCapacity: 8e4, WallExchange: 60, WallLoss: 10}}
		return j
	}
	alone, apart, close := only(t, oven(1, 0)), only(t, oven(3, 600)), only(t, oven(3, 120))
	at := func(r *result.Route) float64 { return times(r)[result.DryThrough] }
	t.Logf("dry through after %.1f s alone, %.1f s ten minutes apart, %.1f s two minutes apart", at(alone), at(apart), at(close))
	if !(math.Abs(at(apart)/at(alone)-1) < 0.01 && at(close) > 1.01*at(alone)) {
		t.Error("a warm load ten minutes ahead should not matter, cold ones two minutes apart should")
	}
	for _, a := range close.Accounts {
		if !(a.Heat.Relative <= 1e-8) {
			t.Errorf("heat of %s is open by %.2g", a.Place, a.Heat.Relative)
		}
	}
}

// An oven whose heater knows no limit, with next to no water in it, warms a sheet as the lumped closed form says: 0.05 % of the
// rise. Row CND-TAU's sheet: 2 mm steel seen from both sides, h = 30.
func TestUnlimitedOvenMeetsTheLumpedForm(t *testing.T) {
	j := tunnelReference()
	j.Tunnel, j.Pile = nil, nil
	j.Film.WetCoat, j.Film.Adhesive.Emissivity = 1e-7, 0
	j.Part.Thickness, j.Part.Density, j.Part.HeatCapacity, j.Part.Conductivity, j.Part.BackEmissivity = 2e-3, 7850, 460, 1e4, 0
	for _, dwell := range []float64{60, 120.367, 300} {
		j.StaticOven = &job.StaticOven{LoadedAfter: 1, Dwell: dwell, SetPoint: 393.15, Humidity: job.Humidity{HumidityRatio: of(0.005)},
			Transfer: job.Transfer{Kind: job.Given, Coefficient: 30}, Deadline: 3600, Horizon: 7200, Batches: 1,
			Chamber: job.Chamber{CoatedArea: 1, HeaterPower: 1e8, ProportionalBand: 0.5, AirVolume: 1, WallHeatCapacity: 1e6, WallExchange: 10}}
		j.Workshop.Transfer = job.Transfer{Kind: job.Given, Coefficient: 1e-6}
		r := only(t, j)
		want := 393.15 - 100*math.Exp(-dwell/120.367)
		if got := r.Exit.State.PartHottest; math.Abs(got-want) > 5e-4*(want-293.15) {
			t.Errorf("after %g s the sheet is at %.3f degC, closed form %.3f", dwell, got-273.15, want-273.15)
		}
	}
}

// Co-solvent in a box oven, by hand: 3 % of 150 g/m2 on 2 m2 are 9 g; without exhaust they end up in 2 m3 of air at 120 degC,
// whose limit is 50 g/m3 (1 - 0.078) 293/393 = 34.4 g/m3: 13.1 %. Exhaust thins it at the peak, less of it less.
func TestCoSolventByHand(t *testing.T) {
	oven := func(makeUp float64) float64 {
		j := tunnelReference()
		j.Tunnel = nil
		j.Film.Adhesive.CoSolvent = &job.CoSolvent{Fraction: 0.03, LFL: 0.05}
		j.StaticOven = &job.StaticOven{LoadedAfter: 300, Dwell: 900, SetPoint: 393.15, Humidity: job.Humidity{HumidityRatio: of(0.01)},
			Transfer: job.Transfer{Kind: job.Given, Coefficient: 25}, Deadline: 3600, Horizon: 86400, Batches: 1,
			Chamber: job.Chamber{CoatedArea: 2, HeaterPower: 9e3, ProportionalBand: 3, AirVolume: 2, MakeUp: makeUp,
				WallHeatCapacity: 8e4, WallExchange: 60, WallLoss: 10}}
		return *only(t, j).Accounts[0].Flammable
	}
	if got := oven(0); math.Abs(got-0.131) > 0.001 {
		t.Errorf("without exhaust %.4f of the limit, by hand 0.131", got)
	}
	little, much := oven(0.01), oven(0.1)
	if !(much < little && little <= oven(0)) {
		t.Errorf("%.4f of the limit with much exhaust, %.4f with little", much, little)
	}
}
