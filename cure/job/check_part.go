package job

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/fault"
)

// checkPart demands spots that can be told apart, and radiators only where a back is bare.
func (v *validator) checkPart(j *Job) {
	v.checkSpots(j)
	if t := j.Tunnel; t != nil && j.Part.Back != BackExposed && v.sound("part.back") {
		for i := range min(len(t.Zones), v.blocks["tunnel.zones"].MaxItems) {
			if r := t.Zones[i].Infrared; r != nil && r.BackFlux > 0 {
				v.conflict(fmt.Sprintf("tunnel.zones[%d].infrared.back_flux_W_per_m2", i), fmt.Sprintf("the back is %s",
					j.Part.Back), "Radiators reach only a bare, open back: set this to 0, or the back to exposed.")
			}
		}
	}
	if j.Part.Back == BackCoated {
		v.checkTwoFaced(j)
	}
}

// checkSpots demands distinct names, and coats within what a coat may be.
func (v *validator) checkSpots(j *Job) {
	coat := v.fields["film.wet_coat_kg_per_m2"]
	names := map[string]bool{}
	for i := range min(len(j.Part.Spots), v.blocks["part.spots"].MaxItems) {
		s, at := &j.Part.Spots[i], fmt.Sprintf("part.spots[%d]", i)
		switch name := strings.ToLower(strings.TrimSpace(s.Name)); {
		case !v.sound(at + ".name"):
		case name == "":
			v.add(&fault.Fault{Code: fault.Missing, Path: at + ".name", Advice: "Give the spot a name."})
		case names[name]:
			v.conflict(at+".name", "another spot is called "+strconv.Quote(shorten(s.Name)), "Give each spot a name of its own.")
		default:
			names[name] = true
		}
		if !v.sound(at+".coat_factor", "film.wet_coat_kg_per_m2") {
			continue
		}
		here := j.Film.WetCoat * s.CoatFactor
		if here < coat.Low || here > coat.High {
			v.conflict(at+".coat_factor", fmt.Sprintf("a wet coat of %s kg/m² there", fault.Number(here)),
				fmt.Sprintf("A wet coat has %s to %s kg/m²: give another factor.", fault.Number(coat.Low), fault.Number(coat.High)))
			continue
		}
		a := &j.Film.Adhesive
		layer := here * a.Solids / (a.PolymerDensity * a.Packing)
		if v.sound("film.adhesive.solids_fraction", "film.adhesive.polymer_density_kg_per_m3",
			"film.adhesive.packing_fraction", "targets.open_layer_m") && j.Targets.OpenLayer >= layer {
			v.conflict(at+".coat_factor", fmt.Sprintf("the whole packed film has %s m there, and %s m keep fibres out",
				fault.Number(layer), fault.Number(j.Targets.OpenLayer)), "Give a larger factor, or a thinner layer that keeps fibres out.")
		}
	}
}

// checkTwoFaced demands that a part coated on both faces is a mirror image of itself.
func (v *validator) checkTwoFaced(j *Job) {
	if j.Part.Carrier != nil {
		v.conflict("part.carrier", "a carrier touches the back, which is coated",
			"A part coated on both faces has no bare back: set the carrier to null.")
	}
	if v.sound("part.orientation") && j.Part.Orientation != Vertical {
		v.conflict("part.orientation", fmt.Sprintf("%s and coated on both faces", j.Part.Orientation),
			"Both faces dry alike only when the part hangs upright: choose vertical, or another back.")
	}
	back := func(t Transfer, path string) {
		if t.BackCoefficient != nil {
			v.conflict(path+".back_coefficient_W_per_m2K", "the back is coated like the face",
				"Both faces share one law: set the coefficient at the back to null.")
		}
	}
	back(j.Workshop.Transfer, "workshop.transfer")
	if j.StaticOven != nil {
		back(j.StaticOven.Transfer, "static_oven.transfer")
	}
	if j.Tunnel != nil {
		for i := range min(len(j.Tunnel.Zones), v.blocks["tunnel.zones"].MaxItems) {
			back(j.Tunnel.Zones[i].Transfer, fmt.Sprintf("tunnel.zones[%d].transfer", i))
		}
	}
}
