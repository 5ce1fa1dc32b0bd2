package job

import (
	"fmt"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// checkRoutes demands at least one route, and in each that one thing follows the other.
func (v *validator) checkRoutes(j *Job) {
	if j.Room == nil && j.StaticOven == nil && j.Tunnel == nil {
		v.add(&fault.Fault{Code: fault.Missing, Path: "room",
			Advice: words.Told("Give at least one route: room, static oven or tunnel oven.")})
	}
	if r := j.Room; r != nil {
		v.checkHorizon("room", r.Deadline, r.Horizon)
		if v.sound("room.horizon_s", "pile.applied_after_s") && j.Pile != nil && r.Horizon <= j.Pile.AppliedAfter {
			v.conflict("room.horizon_s", words.Told("the run ends before the part is flocked"), words.Told("Watch for longer, or flock earlier."))
		}
	}
	if o := j.StaticOven; o != nil {
		v.checkStaticOven(o, j)
	}
	if t := j.Tunnel; t != nil {
		v.checkTunnel(t, j)
	}
}

func (v *validator) checkHorizon(route string, deadline, horizon float64) {
	if v.sound(route+".deadline_s", route+".horizon_s") && horizon <= deadline {
		v.conflict(route+".horizon_s", words.Told("{horizon} is not after the deadline of {deadline}",
			"horizon", lasting(horizon), "deadline", lasting(deadline)), words.Told("Watch for longer than until the deadline."))
	}
}

// checkExit demands that the run goes on after the part has left the oven.
func (v *validator) checkExit(route string, exit, horizon float64) {
	if v.sound(route+".horizon_s") && horizon <= exit {
		v.conflict(route+".horizon_s", words.Told("{horizon}, but the part leaves the oven after {exit}",
			"horizon", lasting(horizon), "exit", lasting(exit)), words.Told("Watch for longer than until the oven's exit."))
	}
}

// checkFlocked demands that the part is flocked before it goes into the oven.
func (v *validator) checkFlocked(path string, entry float64, j *Job) {
	if j.Pile != nil && v.sound(path, "pile.applied_after_s") && entry < j.Pile.AppliedAfter {
		v.conflict(path, words.Told("{entry}, but the part is flocked after {flocked}",
			"entry", lasting(entry), "flocked", lasting(j.Pile.AppliedAfter)), words.Told("Flock before the oven: enter it later, or flock earlier."))
	}
}

func (v *validator) checkStaticOven(o *StaticOven, j *Job) {
	const at = "static_oven"
	v.checkHorizon(at, o.Deadline, o.Horizon)
	v.checkFlocked(at+".loaded_after_s", o.LoadedAfter, j)
	if v.sound(at+".loaded_after_s", at+".dwell_s") {
		v.checkExit(at, o.LoadedAfter+o.Dwell, o.Horizon)
	}
	v.checkLoading(o)
	v.checkTransfer(o.Transfer, at+".transfer")
	state, ok := v.checkMoist(o.Humidity, o.SetPoint, j, at+".humidity", at+".set_point_K")
	if loading := o.Chamber.AirAtLoading; ok && loading != nil && v.sound(at+".chamber.air_at_loading_K") {
		if dew := state.DewPoint(); *loading < dew {
			v.conflict(at+".chamber.air_at_loading_K", words.Told("{loading} is below the dew point of the oven's air, {dew}",
				"loading", degrees(*loading), "dew", degrees(dew)), words.Told("Fog would fill the oven: load it warmer, or give drier air."))
		}
	}
}

// checkLoading demands that the door is shut for some of the time, and that loads overlap: those that do not are each a
// job of their own.
func (v *validator) checkLoading(o *StaticOven) {
	const at = "static_oven"
	if v.sound(at+".door_open_s", at+".dwell_s") && o.DoorOpen >= o.Dwell {
		v.conflict(at+".door_open_s", words.Told("{open} of the {dwell} in the oven",
			"open", lasting(o.DoorOpen), "dwell", lasting(o.Dwell)), words.Told("The door is open for less than the time in the oven."))
	}
	if o.Batches < 2 || !v.sound(at+".batches", at+".batch_interval_s", at+".door_open_s", at+".dwell_s") {
		return
	}
	switch {
	case o.BatchInterval >= o.Dwell:
		v.conflict(at+".batch_interval_s", words.Told("{interval} between loads, but each stays only {dwell}",
			"interval", lasting(o.BatchInterval), "dwell", lasting(o.Dwell)),
			words.Told("Loads that do not meet in the oven are computed as one: set the loads to 1, or give a shorter time between them."))
	case o.BatchInterval <= o.DoorOpen:
		v.conflict(at+".batch_interval_s", words.Told("{interval} between loads, with the door open for {open}",
			"interval", lasting(o.BatchInterval), "open", lasting(o.DoorOpen)),
			words.Told("The door shuts between loads: give a longer time between them, or load all at once as one load."))
	}
}

// checkZoneAir demands that a zone whose humidity is balanced has some air through it.
func (v *validator) checkZoneAir(t *Tunnel, i int) {
	a, at := t.Zones[i].Air, fmt.Sprintf("tunnel.zones[%d].air", i)
	if a == nil || !v.sound(at, "tunnel.entry_leak_m3_per_s", "tunnel.exit_leak_m3_per_s") {
		return
	}
	through := a.Exhaust > 0 || a.MakeUp > 0 || a.LeakToNext != 0
	if i == 0 {
		through = through || t.EntryLeak > 0
	} else if before := t.Zones[i-1].Air; before != nil {
		through = through || before.LeakToNext != 0
	}
	if i == len(t.Zones)-1 {
		through = through || t.ExitLeak > 0
	}
	if !through {
		v.conflict(at, words.Told("no air passes this zone"), words.Told("Its water could not leave: give exhaust or make-up, or leave the air through the zone out."))
	}
}

func (v *validator) checkTunnel(t *Tunnel, j *Job) {
	const at = "tunnel"
	v.checkHorizon(at, t.Deadline, t.Horizon)
	v.checkFlocked(at+".entered_after_s", t.EnteredAfter, j)
	length, heated, cooled := 0.0, false, false
	for i := range min(len(t.Zones), v.blocks["tunnel.zones"].MaxItems) {
		z := &t.Zones[i]
		zone := fmt.Sprintf("tunnel.zones[%d]", i)
		length += z.Length
		v.checkTransfer(z.Transfer, zone+".transfer")
		v.checkZoneAir(t, i)
		v.checkMoist(z.Humidity, z.AirTemperature, j, zone+".humidity", zone+".air_temperature_K")
		if z.Kind == Heated && cooled {
			v.conflict(zone+".kind", words.Told("a heated zone after a cooling zone"),
				words.Told("Cooling zones come last: the part counts as cooling from the end of the last heated zone."))
		}
		if z.Kind == Cooling && z.Infrared != nil {
			v.conflict(zone+".infrared", words.Told("a cooling zone with radiators"), words.Told("Leave infrared out, or call the zone heated."))
		}
		heated = heated || z.Kind == Heated
		cooled = cooled || z.Kind == Cooling
	}
	if t.CarrierReturn != nil && j.Part.Carrier == nil {
		v.conflict(at+".carrier_return_K", words.Told("the part has no carrier"), words.Told("Give the part a carrier, or leave this empty."))
	}
	if v.sound("tunnel.zones") && !heated {
		v.conflict("tunnel.zones", words.Told("no zone heats"), words.Told("Give at least one heated zone, or leave the tunnel out."))
	}
	if v.sound("tunnel.zones", at+".entered_after_s", at+".line_speed_m_per_s") {
		v.checkExit(at, t.EnteredAfter+length/t.LineSpeed, t.Horizon)
	}
}

// checkTargets demands that tack goes before full cure does.
func (v *validator) checkTargets(j *Job) {
	if v.sound("targets.tack_conversion", "targets.full_conversion") && j.Targets.TackConversion > j.Targets.FullConversion {
		v.conflict("targets.tack_conversion", words.Told("{tack} is above the full conversion {full}",
			"tack", v.typed(j.Targets.TackConversion, "targets.tack_conversion"), "full", v.typed(j.Targets.FullConversion, "targets.full_conversion")),
			words.Told("A film stops being tacky before it is fully cured."))
	}
}
