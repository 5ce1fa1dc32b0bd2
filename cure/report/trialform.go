package report

import (
	"github.com/drywright/drywright/cure/result"
)

// FillForms writes the texts of what the kinds of trial want to know.
func (w Speaker) FillForms(f *result.TrialForms) {
	w.Tell(f)
	for i := range f.Quantities {
		f.Quantities[i].Label = w.Say("quantity." + f.Quantities[i].Name)
	}
	for i := range f.Kinds {
		k := &f.Kinds[i]
		k.Title, k.Tells, k.Needs = w.Say("fit.title."+k.Kind), w.Say("fit.tells."+k.Kind), w.Say("fit.needs."+k.Kind)
		for n := range k.Numbers {
			w.ask(&k.Numbers[n], k.Kind)
		}
		for n := range k.Parameters {
			p := &k.Parameters[n]
			w.rescale(p.Path, &p.Symbol, &p.Factor, &p.Offset)
			p.Text = w.scaled(scale{p.Symbol, p.Factor, p.Offset}, p.Value)
		}
		for n := range k.Isotherms {
			k.Isotherms[n].Label = w.Say("isotherm." + k.Isotherms[n].Value)
		}
	}
}

// ask puts a number of a question into words. A number that is taken where the field is left empty is told in its unit.
func (w Speaker) ask(n *result.TrialNumber, kind string) {
	if m, known := askedIn[n.Name]; known && w.unitSystem == US {
		d := w.unit(m)
		n.Symbol, n.Factor, n.Offset = d.Symbol, d.Factor, d.Offset
	}
	group := "fit.question." + kind + "_" + n.Name
	if !w.Has(group + ".label") {
		group = "fit.question." + n.Name
	}
	n.Label, n.Help, n.Empty = w.Say(group+".label"), w.Say(group+".help"), w.Maybe(group+".empty")
	if n.Default != nil {
		n.Empty = w.scaled(scale{n.Symbol, n.Factor, n.Offset}, *n.Default)
	}
}

// askedIn is what the numbers of a question measure, where the unit is another one in the United States.
var askedIn = map[string]measure{"area_m2": smallArea, "tare_kg": smallMass, "reference_K": temperature, "limit_K": temperature}
