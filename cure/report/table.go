package report

import (
	"strings"
	"unicode/utf8"

	"github.com/drywright/drywright/cure/result"
)

// Table lays a filled result out for a terminal: for each route its sentence, the marks with the state in which the
// film is then, the exit, the risks, the balances and the warnings.
func (w Speaker) Table(r result.Result) string {
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

func (w Speaker) routeTable(b *strings.Builder, r *result.Route) {
	b.WriteString(r.Title + "\n" + strings.Repeat("=", utf8.RuneCountInString(r.Title)) + "\n")
	b.WriteString(r.Answer.Text + "\n")
	if !r.Status.Complete {
		b.WriteString(w.Say("report.incomplete", "time", w.Duration(horizonOf(r))) + "\n")
	}
	var head []string
	for _, name := range []string{"mark", "time", "where", "at_exit", "water", "conversion", "film", "remark"} {
		head = append(head, w.Say("table."+name))
	}
	rows := [][]string{head}
	for _, m := range r.Marks {
		rows = append(rows, w.markRow(m))
	}
	b.WriteString("\n" + columns(rows) + "\n")
	if r.Exit != nil {
		s := r.Exit.State
		b.WriteString(w.Say("report.exit_line", "exit", r.Exit.Text, "water", w.Water(s.MeanWater), "conversion",
			w.Percent(s.MeanConversion), "film", w.Temperature(s.FilmTemperature), "part", w.Temperature(s.PartHottest)) + "\n\n")
	}
	w.spotLines(b, r.Spots)
	w.riskLines(b, r.Risks)
	w.limitLines(b, r.Limits)
	w.airLines(b, r.Accounts)
	w.amountLines(b, r.Amounts)
	w.balanceLines(b, r.Balances)
	w.warningLines(b, r.Warnings)
}

func (w Speaker) markRow(m result.Mark) []string {
	atExit := ""
	if m.AtExit != nil {
		atExit = w.Say("report.no")
		if *m.AtExit {
			atExit = w.Say("report.yes")
		}
	}
	s := m.State
	return []string{m.Label, m.Text, m.Where, atExit, w.Water(s.MeanWater), w.Percent(s.MeanConversion),
		w.Temperature(s.FilmTemperature), m.Note}
}

func (w Speaker) riskLines(b *strings.Builder, risks []result.Risk) {
	b.WriteString(w.Say("report.head_risks") + "\n")
	if len(risks) == 0 {
		b.WriteString("  " + w.Say("report.no_risk") + "\n")
	}
	for _, r := range risks {
		b.WriteString("  " + w.Say("report.risk_line", "grade", w.Say("grade."+string(r.Severity)), "text", r.Text) + "\n")
	}
	b.WriteString("\n")
}

func (w Speaker) balanceLines(b *strings.Builder, all result.Balances) {
	line := func(account string, a result.Balance, show func(float64) string) {
		b.WriteString("  " + w.Say("report.balance_line", "account", w.Say(account), "in", show(a.In), "out", show(a.Out),
			"kept", show(a.Kept), "relative", w.Relative(a.Relative)) + "\n")
	}
	b.WriteString(w.Say("report.head_balances") + "\n")
	line("report.water_account", all.Water, w.Areal)
	line("report.heat_account", all.Heat, w.heat)
	b.WriteString("\n")
}

func (w Speaker) warningLines(b *strings.Builder, warnings []result.Warning) {
	if len(warnings) == 0 {
		return
	}
	b.WriteString(w.Say("report.head_warnings") + "\n")
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
