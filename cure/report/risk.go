package report

import "github.com/drywright/drywright/cure/result"

// riskText says one risk with its place and figures. A risk without words is still told, by its name and numbers.
func (w Speaker) riskText(r result.Risk) string {
	show := func(v float64) string { return w.Quantity(v, r.Unit) }
	if r.Name == "near_saturation" {
		show = w.Percent
	}
	where := ""
	if r.Where != "" {
		where = w.Say("report.in_place", "place", r.Where)
	}
	values := []any{"where", where, "start", w.Duration(r.Start), "worst", show(r.Worst), "limit", show(r.Limit), "name", r.Name}
	key := "risk." + r.Name + "." + string(r.Severity)
	if !w.Has(key) {
		key = "report.unknown_risk"
	}
	return w.Say(key, values...)
}
