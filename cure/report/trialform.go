package report

import "github.com/drywright/drywright/cure/result"

// FillForms writes the texts of what the kinds of trial want to know.
func FillForms(f *result.TrialForms) {
	w := english()
	for i := range f.Quantities {
		f.Quantities[i].Label = w.fit.quantities[f.Quantities[i].Name]
	}
	for i := range f.Kinds {
		k := &f.Kinds[i]
		k.Title, k.Tells, k.Needs = w.fit.titles[k.Kind], w.fit.tells[k.Kind], w.fit.needs[k.Kind]
		for n := range k.Numbers {
			w.ask(&k.Numbers[n], k.Kind)
		}
		for n := range k.Parameters {
			p := &k.Parameters[n]
			p.Text = scale{p.Symbol, p.Factor, p.Offset}.print(p.Value)
		}
		for n := range k.Isotherms {
			k.Isotherms[n].Label = w.fit.isotherms[k.Isotherms[n].Value]
		}
	}
}

// ask puts a number of a question into words. A number that is taken where the field is left empty is told in its unit.
func (w words) ask(n *result.TrialNumber, kind string) {
	a, own := w.fit.questions[kind+"/"+n.Name]
	if !own {
		a = w.fit.questions[n.Name]
	}
	n.Label, n.Help, n.Empty = a.label, a.help, a.empty
	if n.Default != nil {
		n.Empty = scale{n.Symbol, n.Factor, n.Offset}.print(*n.Default)
	}
}
