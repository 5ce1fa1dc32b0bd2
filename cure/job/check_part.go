package job

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// checkPart demands spots that can be told apart, and radiators only where a back is bare.
func (v *validator) checkPart(j *Job) {
	v.checkSpots(j)
	if t := j.Tunnel; t != nil && j.Part.Back != BackExposed && v.sound("part.back") {
		for i := range min(len(t.Zones), v.blocks["tunnel.zones"].MaxItems) {
			if r := t.Zones[i].Infrared; r != nil && r.BackFlux > 0 {
				v.conflict(fmt.Sprintf("tunnel.zones[%d].infrared.back_flux_W_per_m2", i), words.Told("the back is {back}", "back", v.chosen(string(j.Part.Back), "part.back")), words.Told("Radiators reach only a bare, open back: set this to 0, or choose a back that is open to the air."))
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
			v.add(&fault.Fault{Code: fault.Missing, Path: at + ".name", Advice: words.Told("Give the spot a name.")})
		case names[name]:
			v.conflict(at+".name", words.Told("another spot is called {name}", "name", strconv.Quote(shorten(s.Name))), words.Told("Give each spot a name of its own."))
		default:
			names[name] = true
		}
		if !v.sound(at+".coat_factor", "film.wet_coat_kg_per_m2") {
			continue
		}
		here := j.Film.WetCoat * s.CoatFactor
		if here < coat.Low || here > coat.High {
			v.conflict(at+".coat_factor", words.Told("a wet coat of {coat} there",
				"coat", v.computed(here, coat.Path)),
				words.Told("A wet coat has {low} to {high}: give another factor.",
					"low", v.typed(coat.Low, coat.Path), "high", v.typed(coat.High, coat.Path)))
			continue
		}
		a := &j.Film.Adhesive
		layer := here * a.Solids / (a.PolymerDensity * a.Packing)
		if v.sound("film.adhesive.solids_fraction", "film.adhesive.polymer_density_kg_per_m3",
			"film.adhesive.packing_fraction", "targets.open_layer_m") && j.Targets.OpenLayer >= layer {
			v.conflict(at+".coat_factor", words.Told("the whole packed film has {whole} there, and {layer} keep fibres out",
				"whole", v.computed(layer, "targets.open_layer_m"), "layer", v.typed(j.Targets.OpenLayer, "targets.open_layer_m")), words.Told("Give a larger factor, or a thinner layer that keeps fibres out."))
		}
	}
}

// checkTwoFaced demands that a part coated on both faces is a mirror image of itself.
func (v *validator) checkTwoFaced(j *Job) {
	if j.Part.Carrier != nil {
		v.conflict("part.carrier", words.Told("a carrier touches the back, which is coated"),
			words.Told("A part coated on both faces has no bare back: leave the carrier out."))
	}
	if v.sound("part.orientation") && j.Part.Orientation != Vertical {
		v.conflict("part.orientation", words.Told("{orientation} and coated on both faces", "orientation", v.chosen(string(j.Part.Orientation), "part.orientation")),
			words.Told("Both faces dry alike only when the part hangs: choose upright, or another back."))
	}
	back := func(t Transfer, path string) {
		if t.BackCoefficient != nil {
			v.conflict(path+".back_coefficient_W_per_m2K", words.Told("the back is coated like the face"),
				words.Told("Both faces share one law: leave the coefficient at the back empty."))
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
