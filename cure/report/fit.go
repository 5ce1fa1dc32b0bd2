package report

import (
	"math"
	"strings"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// FillFit writes every text of a trial's result from its numbers; like Fill it changes no number.
func (w Speaker) FillFit(f *result.Fit) {
	w.Tell(f)
	var numbers []string
	for i := range f.Parameters {
		p := &f.Parameters[i]
		w.rescale(p.Path, &p.Symbol, &p.Factor, &p.Offset)
		shown := scale{p.Symbol, p.Factor, p.Offset}
		p.Text = w.Say("fit.parameter", "label", p.Label, "value", w.scaled(shown, p.Value), "interval", w.interval(shown, p.Low, p.High),
			"before", w.Say("fit.before", "before", w.scaled(shown, p.Before)))
		p.ValueText, p.BeforeText, p.LearntText = w.scaled(shown, p.Value), w.scaled(shown, p.Before), w.Percent(p.Learnt)
		p.IntervalText, p.BootstrapText = w.span(shown, p.Low, p.High), ""
		if p.BootstrapLow != nil {
			p.BootstrapText = w.span(shown, p.BootstrapLow, p.BootstrapHigh)
		}
		numbers = append(numbers, p.Label+" "+w.scaled(shown, p.Value)+w.interval(shown, p.Low, p.High))
	}
	for i := range f.Doubts {
		f.Doubts[i].Text = w.doubt(&f.Doubts[i], f)
	}
	for i := range f.Correlations {
		c := &f.Correlations[i]
		c.Text = w.Say("fit.correlation", "first", parameterLabel(f, c.First), "second", parameterLabel(f, c.Second), "value", w.Number(c.Value))
	}
	for i := range f.Choices {
		f.Choices[i].Text = w.choice(&f.Choices[i])
	}
	f.ResidualText = w.residual(f)
	f.Text = w.Say("fit.none", "count", f.Count)
	if len(numbers) > 0 {
		f.Text = w.Say("fit.summary", "count", f.Count, "numbers", w.join(numbers))
	}
	if f.Scatter > 0 && len(numbers) > 0 {
		f.Text += " " + w.Say("fit.scatter", "scatter", w.scatter(f.Scatter, f.Axes.YUnit))
	}
	if t := f.CureTime; t != nil {
		span := w.Say("fit.unknown")
		if t.Low != nil && t.High != nil {
			span = w.Say("fit.interval", "low", w.Duration(*t.Low), "high", w.Duration(*t.High))
		}
		t.Text = w.Say("fit.cure_time", "temperature", w.Temperature(t.Temperature), "conversion", w.Percent(t.Conversion), "time", w.Duration(t.Time),
			"interval", span)
		f.Text += " " + t.Text
	}
	if !f.Converged {
		f.Text += " " + w.Say("fit.unfinished")
	}
	if r := f.Recorded; r != nil {
		w.route(&r.Route)
		r.EquivalentText = w.Say("fit.no_crosslink")
		if r.EquivalentTime != nil {
			r.EquivalentText = w.Say("fit.equivalent", "time", w.Duration(*r.EquivalentTime), "temperature", w.Temperature(r.Reference))
		}
		r.TimeAboveText = w.Say("fit.above", "time", w.Duration(r.TimeAbove), "limit", w.Temperature(r.Limit))
		r.PeakText = w.Say("fit.peak", "whose", r.WhoseTemperature, "peak", w.Temperature(r.Peak))
	}
}

// parameterLabel is the label of the parameter at a path.
func parameterLabel(f *result.Fit, path string) string {
	for _, p := range f.Parameters {
		if p.Path == path {
			return p.Label
		}
	}
	return path
}

// span is an interval without its brackets.
func (w Speaker) span(s scale, low, high *float64) string {
	return strings.Trim(w.interval(s, low, high), " ()")
}

// choice says how one set of parameters did.
func (w Speaker) choice(c *result.FitChoice) string {
	aicc, chosen := absent, ""
	if c.AICc != nil {
		aicc = w.fixed(*c.AICc, 1, "")
	}
	if c.Chosen {
		chosen = w.Say("fit.chosen")
	}
	return w.Say("fit.choice", "aicc", aicc, "bic", w.fixed(c.BIC, 1, ""), "paths", strings.Join(c.Paths, ", ")) + chosen
}

// scale is how a number of the job is shown.
type scale struct {
	symbol         string
	factor, offset float64
}

func (w Speaker) scaled(s scale, v float64) string { return w.three(v*s.factor+s.offset, s.symbol) }

// scatter prints a scatter or residual: a difference of temperatures has no zero to count from.
func (w Speaker) scatter(v float64, unit string) string {
	switch unit {
	case "K":
		return w.Difference(v)
	case "kg/m²":
		return w.Areal(v)
	case "kg/kg":
		return w.Water(v)
	case "1":
		return w.three(v*100, "%")
	}
	return w.three(v, "")
}

// rescale changes the unit in which a number of the job is shown to the one that the reader likes.
func (w Speaker) rescale(path string, symbol *string, factor, offset *float64) {
	f, known := job.NewRules().Field(path)
	if !known || w.unitSystem != US {
		return
	}
	d := w.Display(f.Display, f.USDisplay)
	*symbol, *factor, *offset = d.Symbol, d.Factor, d.Offset
}

// interval is "(low to high)"; the unit stands behind the value already.
func (w Speaker) interval(s scale, low, high *float64) string {
	if low == nil || high == nil {
		return w.Say("fit.unknown")
	}
	bare := scale{"", s.factor, s.offset}
	return w.Say("fit.interval", "low", w.scaled(bare, *low), "high", w.scaled(bare, *high))
}

// doubt says one thing that the trial cannot tell.
func (w Speaker) doubt(d *result.FitDoubt, f *result.Fit) string {
	name := func(i int) string {
		if i < len(d.Labels) {
			return d.Labels[i]
		}
		return ""
	}
	width := w.Say("fit.wide_factor", "value", w.Number(d.Value))
	for _, p := range f.Parameters {
		if d.Code == "wide" && p.Path == d.Paths[0] && !p.Logarithmic {
			width = w.Say("fit.wide_width", "value", w.scaled(scale{p.Symbol, p.Factor, 0}, d.Value))
		}
	}
	return w.Say("fit.doubt."+d.Code, "first", name(0), "second", name(1), "width", width, "share", w.Percent(d.Value),
		"value", w.Number(d.Value), "count", int(d.Value))
}

// rest says which trial a number of the job rests on.
func (w Speaker) rest(r *result.FromTrial) {
	w.rescale(r.Path, &r.Symbol, &r.Factor, &r.Offset)
	s := scale{r.Symbol, r.Factor, r.Offset}
	date := ""
	if r.Date != "" {
		date = w.Say("fit.dated", "date", r.Date)
	}
	r.Text = w.Say("fit.rest", "label", r.Label, "trial", w.Say("fit.trial."+r.Kind), "fit", r.Fit, "date", date, "value", w.scaled(s, r.Value),
		"interval", w.interval(s, r.Low, r.High))
}

func (w Speaker) restLines(b *strings.Builder, rests []result.FromTrial) {
	if len(rests) == 0 {
		return
	}
	b.WriteString(w.Say("fit.head_rest") + "\n")
	for _, r := range rests {
		b.WriteString("  " + r.Text + "\n")
	}
	b.WriteString("\n")
}

// FitTable lays a filled fit out for a terminal: the numbers with their intervals, what the trial cannot tell, the residuals, and how
// the data were taken.
func (w Speaker) FitTable(f result.Fit) string {
	var b strings.Builder
	title := w.Say("fit.title." + f.Kind)
	b.WriteString(title + "\n" + strings.Repeat("=", len([]rune(title))) + "\n" + f.Text + "\n\n")
	if r := f.Recorded; r != nil {
		b.WriteString(w.Say("fit.head_record") + "\n")
		for _, line := range []string{r.Route.Answer.Text, r.EquivalentText, r.TimeAboveText, r.PeakText} {
			b.WriteString("  " + line + "\n")
		}
		b.WriteString("\n")
	}
	if len(f.Parameters) > 0 {
		w.numberLines(&b, &f)
	}
	for _, n := range f.Notes {
		if n == f.Notes[0] {
			b.WriteString(w.Say("fit.head_notes") + "\n")
		}
		b.WriteString("  " + n + "\n")
	}
	return b.String()
}

func (w Speaker) numberLines(b *strings.Builder, f *result.Fit) {
	b.WriteString(w.Say("fit.head_numbers") + "\n")
	for _, p := range f.Parameters {
		line := "  " + p.Text
		if p.BootstrapLow != nil {
			bare := scale{"", p.Factor, p.Offset}
			line += "; " + w.Say("fit.resampled", "low", w.scaled(bare, *p.BootstrapLow), "high", w.scaled(bare, *p.BootstrapHigh))
		}
		b.WriteString(line + "\n    " + p.Path + "\n")
	}
	b.WriteString("\n")
	b.WriteString(w.Say("fit.head_doubts") + "\n")
	if len(f.Doubts) == 0 {
		b.WriteString("  " + w.Say("fit.no_doubt") + "\n")
	}
	for _, d := range f.Doubts {
		b.WriteString("  " + d.Text + "\n")
	}
	b.WriteString("\n")
	if len(f.Choices) > 1 {
		b.WriteString(w.Say("fit.head_choices") + "\n")
		for _, c := range f.Choices {
			b.WriteString("  " + w.choice(&c) + "\n")
		}
		b.WriteString("\n")
	}
	w.residualLines(b, f)
}

func (w Speaker) residualLines(b *strings.Builder, f *result.Fit) {
	text := w.residual(f)
	if text == "" {
		return
	}
	b.WriteString(w.Say("fit.head_residuals") + "\n")
	for line := range strings.SplitSeq(text, "; ") {
		b.WriteString("  " + line + "\n")
	}
	b.WriteString("\n")
}

// residual says how far the points lie from the curve: on the whole, and the farthest.
func (w Speaker) residual(f *result.Fit) string {
	if f.Scatter == 0 || len(f.Points) == 0 {
		return ""
	}
	worst := &f.Points[0]
	for i := range f.Points {
		if math.Abs(f.Points[i].Residual) > math.Abs(worst.Residual) {
			worst = &f.Points[i]
		}
	}
	x := w.Duration(worst.X)
	if f.Axes.XUnit != "s" {
		x = w.Percent(worst.X)
	}
	largest := "fit.largest"
	if worst.Line == 0 { // a record that was averaged
		largest = "fit.largest_alone"
	}
	return w.Say("fit.residual", "scatter", w.scatter(f.Scatter, f.Axes.YUnit)) + "; " +
		w.Say(largest, "residual", w.scatter(worst.Residual, f.Axes.YUnit), "x", x, "line", worst.Line)
}
