package report

import (
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/result"
)

// limits fills the text of each limit.
func (w Speaker) limits(r *result.Route) {
	for i := range r.Limits {
		l := &r.Limits[i]
		place := w.Maybe("mark.name." + l.Place) // a mark, or else a zone
		if place == "" {
			place = l.Place
		}
		l.Text = w.Say("used_up."+l.Name, "place", place)
	}
}

func (w Speaker) limitLines(b *strings.Builder, limits []result.Limit) {
	if len(limits) == 0 {
		return
	}
	b.WriteString(w.Say("report.head_limits") + "\n")
	for _, l := range limits {
		b.WriteString("  " + w.Say("report.limit_line", "share", w.Percent(l.Share), "text", l.Text) + "\n")
	}
	b.WriteString("\n")
}

func (w Speaker) airLines(b *strings.Builder, accounts []result.Account) {
	if len(accounts) == 0 {
		return
	}
	b.WriteString(w.Say("report.head_air") + "\n")
	for _, a := range accounts {
		parts := []string{w.Say("report.air_line", "place", a.Place, "humidity", w.Humidity(a.HumidityRatio), "dew", w.Temperature(a.DewPoint))}
		if a.Share != nil && a.Installed != nil {
			parts = append(parts, w.Say("report.air_duty", "share", w.Percent(*a.Share), "installed", w.Power(*a.Installed)))
		}
		if a.Flammable != nil {
			parts = append(parts, w.Say("report.air_flammable", "share", w.Percent(*a.Flammable)))
		}
		b.WriteString("  " + strings.Join(parts, "; ") + "\n")
	}
	b.WriteString("\n")
}

func (w Speaker) amountLines(b *strings.Builder, a result.Amounts) {
	square := w.unit(area)
	lines := []string{w.Say("report.amount_evaporated", "water", w.Areal(a.Evaporated))}
	if a.Cycle != nil {
		lines = append(lines, w.Say("report.amount_cycle", "cycle", w.Duration(*a.Cycle)))
	}
	if a.Throughput != nil && a.PerShift != nil {
		lines = append(lines, w.Say("report.amount_throughput", "rate", w.three(*a.Throughput*square.Factor, square.Symbol+"/h"), "shift", w.in(*a.PerShift, area)))
	}
	if a.Energy != nil {
		lines = append(lines, w.Say("report.amount_energy", "energy", w.energy(*a.Energy)))
	}
	if a.Cost != nil && a.Carbon != nil {
		lines = append(lines, w.Say("report.amount_cost", "cost", w.number(strconv.FormatFloat(*a.Cost/square.Factor, 'f', 3, 64)), "currency", a.Currency,
			"area", square.Symbol, "carbon", w.in(*a.Carbon, carbon)))
	}
	b.WriteString(w.Say("report.head_amounts") + "\n  " + strings.Join(lines, "\n  ") + "\n\n")
}
