package report

import "github.com/drywright/drywright/cure/result"

// riskText says one risk with its place and figures. A risk that the catalogue does not know is still told, by its
// name and numbers.
func (w words) riskText(r result.Risk) string {
	show := func(v float64) string { return Quantity(v, r.Unit) }
	switch {
	case r.Name == "near_saturation" || r.Unit == "share":
		show = Percent
	case r.Unit == "W":
		show = func(v float64) string { return three(v*1e-3, "kW") }
	}
	where := ""
	if r.Where != "" {
		where = w.say(inPlace, "place", r.Where)
	}
	values := []string{"where", where, "start", Duration(r.Start), "worst", show(r.Worst), "limit", show(r.Limit)}
	pattern, known := w.risks[r.Name]
	switch {
	case !known:
		return w.say(unknownRisk, append(values, "name", r.Name)...)
	case r.Severity == result.Danger:
		return fill(pattern[1], values...)
	}
	return fill(pattern[0], values...)
}
