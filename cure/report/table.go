package report

import (
	"strings"
	"unicode/utf8"

	"github.com/drywright/drywright/cure/result"
)

// Table lays a filled result out for a terminal: for each route its sentence, the marks with the state in which the
// film is then, the exit, the risks, the balances and the warnings.
func Table(r result.Result) string {
	w := english()
	var b strings.Builder
	if r.JobName != "" {
		b.WriteString(r.JobName + "\n\n")
	}
	for i := range r.Routes {
		w.routeTable(&b, &r.Routes[i])
	}
	w.restLines(&b, r.Rests)
	w.warningLines(&b, r.Warnings)
	return b.String()
}

func (w words) routeTable(b *strings.Builder, r *result.Route) {
	b.WriteString(r.Title + "\n" + strings.Repeat("=", utf8.RuneCountInString(r.Title)) + "\n")
	b.WriteString(r.Answer.Text + "\n")
	if !r.Status.Complete {
		b.WriteString(w.say(incomplete, "time", Duration(horizonOf(r))) + "\n")
	}
	rows := [][]string{w.column[:]}
	for _, m := range r.Marks {
		rows = append(rows, w.markRow(m))
	}
	b.WriteString("\n" + columns(rows) + "\n")
	if r.Exit != nil {
		s := r.Exit.State
		b.WriteString(w.say(exitLine, "exit", r.Exit.Text, "water", Water(s.MeanWater), "conversion",
			Percent(s.MeanConversion), "film", Temperature(s.FilmTemperature), "part", Temperature(s.PartHottest)) + "\n\n")
	}
	w.spotLines(b, r.Spots)
	w.riskLines(b, r.Risks)
	w.limitLines(b, r.Limits)
	w.airLines(b, r.Accounts)
	w.amountLines(b, r.Amounts)
	w.balanceLines(b, r.Balances)
	w.warningLines(b, r.Warnings)
}

func (w words) markRow(m result.Mark) []string {
	atExit := ""
	if m.AtExit != nil {
		atExit = w.line[no]
		if *m.AtExit {
			atExit = w.line[yes]
		}
	}
	s := m.State
	return []string{m.Label, m.Text, m.Where, atExit, Water(s.MeanWater), Percent(s.MeanConversion),
		Temperature(s.FilmTemperature), m.Note}
}

func (w words) riskLines(b *strings.Builder, risks []result.Risk) {
	b.WriteString(w.line[headRisks] + "\n")
	if len(risks) == 0 {
		b.WriteString("  " + w.line[noRisk] + "\n")
	}
	for _, r := range risks {
		b.WriteString("  " + w.say(riskLine, "grade", w.grades[r.Severity], "text", r.Text) + "\n")
	}
	b.WriteString("\n")
}

func (w words) balanceLines(b *strings.Builder, all result.Balances) {
	line := func(account phrase, a result.Balance, show func(float64) string) {
		b.WriteString("  " + w.say(balanceLine, "account", w.line[account], "in", show(a.In), "out", show(a.Out),
			"kept", show(a.Kept), "relative", Relative(a.Relative)) + "\n")
	}
	b.WriteString(w.line[headBalances] + "\n")
	line(waterAccount, all.Water, Areal)
	line(heatAccount, all.Heat, func(v float64) string { return three(v*1e-3, "kJ/m²") })
	b.WriteString("\n")
}

func (w words) warningLines(b *strings.Builder, warnings []result.Warning) {
	if len(warnings) == 0 {
		return
	}
	b.WriteString(w.line[headWarnings] + "\n")
	for _, x := range warnings {
		b.WriteString("  " + x.Text + "\n")
	}
	b.WriteString("\n")
}

// columns pads the cells of each column to one width, counted in characters, and drops a column without any entry
// below its head. The first column is set left, times and numbers right, the remark left.
func columns(rows [][]string) string {
	width := make([]int, len(rows[0]))
	used := make([]bool, len(rows[0]))
	for i, row := range rows {
		for c, cell := range row {
			width[c] = max(width[c], utf8.RuneCountInString(cell))
			used[c] = used[c] || i > 0 && cell != ""
		}
	}
	var b strings.Builder
	for _, row := range rows {
		var line strings.Builder
		for c, cell := range row {
			if !used[c] {
				continue
			}
			pad := strings.Repeat(" ", width[c]-utf8.RuneCountInString(cell))
			if c == 0 || c == 2 || c == len(row)-1 {
				line.WriteString("  " + cell + pad)
			} else {
				line.WriteString("  " + pad + cell)
			}
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
	return b.String()
}
