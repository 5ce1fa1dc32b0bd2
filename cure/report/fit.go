package report

import (
	"math"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/result"
)

// FillFit writes every text of a trial's result from its numbers; like Fill it changes no number.
func FillFit(f *result.Fit) {
	w := english()
	var numbers []string
	for i := range f.Parameters {
		p := &f.Parameters[i]
		shown := scale{p.Symbol, p.Factor, p.Offset}
		p.Text = fill(w.fit.parameter, "label", p.Label, "value", shown.print(p.Value), "interval", w.interval(shown, p.Low, p.High),
			"before", fill(w.fit.before, "before", shown.print(p.Before)))
		p.ValueText, p.BeforeText, p.LearntText = shown.print(p.Value), shown.print(p.Before), Percent(p.Learnt)
		p.IntervalText, p.BootstrapText = w.span(shown, p.Low, p.High), ""
		if p.BootstrapLow != nil {
			p.BootstrapText = w.span(shown, p.BootstrapLow, p.BootstrapHigh)
		}
		numbers = append(numbers, p.Label+" "+shown.print(p.Value)+w.interval(shown, p.Low, p.High))
	}
	for i := range f.Doubts {
		f.Doubts[i].Text = w.doubt(&f.Doubts[i], f)
	}
	for i := range f.Correlations {
		c := &f.Correlations[i]
		c.Text = fill(w.fit.correlation, "first", parameterLabel(f, c.First), "second", parameterLabel(f, c.Second), "value", Number(c.Value))
	}
	for i := range f.Choices {
		f.Choices[i].Text = w.choice(&f.Choices[i])
	}
	f.ResidualText = w.residual(f)
	f.Text = fill(w.fit.none, "count", strconv.Itoa(f.Count))
	if len(numbers) > 0 {
		f.Text = fill(w.fit.summary, "count", strconv.Itoa(f.Count), "numbers", w.join(numbers))
	}
	if f.Scatter > 0 && len(numbers) > 0 {
		f.Text += " " + fill(w.fit.scatter, "scatter", change(f.Scatter, f.Axes.YUnit))
	}
	if t := f.CureTime; t != nil {
		span := w.fit.unknown
		if t.Low != nil && t.High != nil {
			span = fill(w.fit.interval, "low", Duration(*t.Low), "high", Duration(*t.High))
		}
		t.Text = fill(w.fit.cureTime, "temperature", Temperature(t.Temperature), "conversion", Percent(t.Conversion), "time", Duration(t.Time),
			"interval", span)
		f.Text += " " + t.Text
	}
	if !f.Converged {
		f.Text += " " + w.fit.unfinished
	}
	if r := f.Recorded; r != nil {
		w.route(&r.Route)
		r.EquivalentText = w.fit.noCrosslink
		if r.EquivalentTime != nil {
			r.EquivalentText = fill(w.fit.equivalent, "time", Duration(*r.EquivalentTime), "temperature", Temperature(r.Reference))
		}
		r.TimeAboveText = fill(w.fit.above, "time", Duration(r.TimeAbove), "limit", Temperature(r.Limit))
		r.PeakText = fill(w.fit.peak, "whose", r.WhoseTemperature, "peak", Temperature(r.Peak))
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
func (w words) span(s scale, low, high *float64) string {
	return strings.Trim(w.interval(s, low, high), " ()")
}

// choice says how one set of parameters did.
func (w words) choice(c *result.FitChoice) string {
	aicc, chosen := absent, ""
	if c.AICc != nil {
		aicc = fixed(*c.AICc, 1, "")
	}
	if c.Chosen {
		chosen = w.fit.chosen
	}
	return fill(w.fit.choice, "aicc", aicc, "bic", fixed(c.BIC, 1, ""), "paths", strings.Join(c.Paths, ", ")) + chosen
}

// scale is how a number of the job is shown.
type scale struct {
	symbol         string
	factor, offset float64
}

func (s scale) print(v float64) string { return three(v*s.factor+s.offset, s.symbol) }

// width prints a difference of two shown numbers.
func (s scale) width(v float64) string { return three(v*s.factor, s.symbol) }

// change prints a scatter or residual: a difference of temperatures has no zero to count from.
func change(v float64, unit string) string {
	switch unit {
	case "K":
		return Difference(v)
	case "kg/m²":
		return Areal(v)
	case "kg/kg":
		return Water(v)
	case "1":
		return three(v*100, "%")
	}
	return three(v, "")
}

// interval is "(low to high)"; the unit stands behind the value already.
func (w words) interval(s scale, low, high *float64) string {
	if low == nil || high == nil {
		return w.fit.unknown
	}
	bare := scale{"", s.factor, s.offset}
	return fill(w.fit.interval, "low", bare.print(*low), "high", bare.print(*high))
}

// doubt says one thing that the trial cannot tell.
func (w words) doubt(d *result.FitDoubt, f *result.Fit) string {
	name := func(i int) string {
		if i < len(d.Labels) {
			return d.Labels[i]
		}
		return ""
	}
	width := fill(w.fit.wideFactor, "value", Number(d.Value))
	for _, p := range f.Parameters {
		if d.Code == "wide" && p.Path == d.Paths[0] && !p.Logarithmic {
			width = fill(w.fit.wideWidth, "value", scale{p.Symbol, p.Factor, p.Offset}.width(d.Value))
		}
	}
	return fill(w.fit.doubts[d.Code], "first", name(0), "second", name(1), "width", width, "share", Percent(d.Value),
		"value", Number(d.Value), "count", strconv.Itoa(int(d.Value)))
}

// rest says which trial a number of the job rests on.
func (w words) rest(r *result.FromTrial) {
	s := scale{r.Symbol, r.Factor, r.Offset}
	date := ""
	if r.Date != "" {
		date = fill(w.fit.dated, "date", r.Date)
	}
	r.Text = fill(w.fit.rest, "label", r.Label, "trial", w.fit.trials[r.Kind], "fit", r.Fit, "date", date, "value", s.print(r.Value),
		"interval", w.interval(s, r.Low, r.High))
}

func (w words) restLines(b *strings.Builder, rests []result.FromTrial) {
	if len(rests) == 0 {
		return
	}
	b.WriteString(w.fit.headRest + "\n")
	for _, r := range rests {
		b.WriteString("  " + r.Text + "\n")
	}
	b.WriteString("\n")
}

// FitTable lays a filled fit out for a terminal: the numbers with their intervals, what the trial cannot tell, the residuals, and how
// the data were taken.
func FitTable(f result.Fit) string {
	w := english()
	var b strings.Builder
	title := w.fit.titles[f.Kind]
	b.WriteString(title + "\n" + strings.Repeat("=", len([]rune(title))) + "\n" + f.Text + "\n\n")
	if r := f.Recorded; r != nil {
		b.WriteString(w.fit.headRecord + "\n")
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
			b.WriteString(w.fit.headNotes + "\n")
		}
		b.WriteString("  " + n + "\n")
	}
	return b.String()
}

func (w words) numberLines(b *strings.Builder, f *result.Fit) {
	b.WriteString(w.fit.headNumbers + "\n")
	for _, p := range f.Parameters {
		line := "  " + p.Text
		if p.BootstrapLow != nil {
			bare := scale{"", p.Factor, p.Offset}
			line += "; " + fill(w.fit.resampled, "low", bare.print(*p.BootstrapLow), "high", bare.print(*p.BootstrapHigh))
		}
		b.WriteString(line + "\n    " + p.Path + "\n")
	}
	b.WriteString("\n")
	b.WriteString(w.fit.headDoubts + "\n")
	if len(f.Doubts) == 0 {
		b.WriteString("  " + w.fit.noDoubt + "\n")
	}
	for _, d := range f.Doubts {
		b.WriteString("  " + d.Text + "\n")
	}
	b.WriteString("\n")
	if len(f.Choices) > 1 {
		b.WriteString(w.fit.headChoices + "\n")
		for _, c := range f.Choices {
			b.WriteString("  " + w.choice(&c) + "\n")
		}
		b.WriteString("\n")
	}
	w.residualLines(b, f)
}

func (w words) residualLines(b *strings.Builder, f *result.Fit) {
	text := w.residual(f)
	if text == "" {
		return
	}
	b.WriteString(w.fit.headResiduals + "\n")
	for line := range strings.SplitSeq(text, "; ") {
		b.WriteString("  " + line + "\n")
	}
	b.WriteString("\n")
}

// residual says how far the points lie from the curve: on the whole, and the farthest.
func (w words) residual(f *result.Fit) string {
	if f.Scatter == 0 || len(f.Points) == 0 {
		return ""
	}
	worst := &f.Points[0]
	for i := range f.Points {
		if math.Abs(f.Points[i].Residual) > math.Abs(worst.Residual) {
			worst = &f.Points[i]
		}
	}
	x := Duration(worst.X)
	if f.Axes.XUnit != "s" {
		x = Percent(worst.X)
	}
	largest := w.fit.largest
	if worst.Line == 0 { // a record that was averaged
		largest = w.fit.largestAlone
	}
	return fill(w.fit.residual, "scatter", change(f.Scatter, f.Axes.YUnit)) + "; " +
		fill(largest, "residual", change(worst.Residual, f.Axes.YUnit), "x", x, "line", strconv.Itoa(worst.Line))
}
