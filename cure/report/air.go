package report

import (
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/result"
)

// limits fills the text of each limit.
func (w words) limits(r *result.Route) {
	for i := range r.Limits {
		l := &r.Limits[i]
		place := l.Place
		if name, known := w.marks[result.MarkName(place)]; known {
			place = name
		}
		l.Text = fill(w.limitsOf[l.Name], "place", place)
	}
}

func (w words) limitLines(b *strings.Builder, limits []result.Limit) {
	if len(limits) == 0 {
		return
	}
	b.WriteString(w.line[headLimits] + "\n")
	for _, l := range limits {
		b.WriteString("  " + w.say(limitLine, "share", Percent(l.Share), "text", l.Text) + "\n")
	}
	b.WriteString("\n")
}

func (w words) airLines(b *strings.Builder, accounts []result.Account) {
	if len(accounts) == 0 {
		return
	}
	b.WriteString(w.line[headAir] + "\n")
	for _, a := range accounts {
		parts := []string{w.say(airLine, "place", a.Place, "humidity", Water(a.HumidityRatio), "dew", Temperature(a.DewPoint))}
		if a.Share != nil && a.Installed != nil {
			parts = append(parts, w.say(airDuty, "share", Percent(*a.Share), "installed", three(*a.Installed*1e-3, "kW")))
		}
		if a.Flammable != nil {
			parts = append(parts, w.say(airFlammable, "share", Percent(*a.Flammable)))
		}
		b.WriteString("  " + strings.Join(parts, "; ") + "\n")
	}
	b.WriteString("\n")
}

func (w words) amountLines(b *strings.Builder, a result.Amounts) {
	lines := []string{w.say(amountEvaporated, "water", Areal(a.Evaporated))}
	if a.Cycle != nil {
		lines = append(lines, w.say(amountCycle, "cycle", Duration(*a.Cycle)))
	}
	if a.Throughput != nil && a.PerShift != nil {
		lines = append(lines, w.say(amountThroughput, "rate", Number(*a.Throughput), "shift", Number(*a.PerShift)))
	}
	if a.Energy != nil {
		lines = append(lines, w.say(amountEnergy, "energy", three(*a.Energy/3.6e6, "kWh/m²")))
	}
	if a.Cost != nil && a.Carbon != nil {
		lines = append(lines, w.say(amountCost, "cost", strconv.FormatFloat(*a.Cost, 'f', 3, 64), "currency", a.Currency,
			"carbon", three(*a.Carbon, "kg/m²")))
	}
	b.WriteString(w.line[headAmounts] + "\n  " + strings.Join(lines, "\n  ") + "\n\n")
}
