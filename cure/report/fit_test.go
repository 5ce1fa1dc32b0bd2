package report

import (
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/result"
)

// Every doubt that a fit may have has its words, and they name what is doubted and by how much.
func TestFitWords(t *testing.T) {
	low, high := 1.2e-12, 5.1e-12
	factor := 1e12
	f := result.Fit{Kind: "weight", Count: 40, Scatter: 0.0007, Converged: true, Axes: result.FitAxes{YUnit: "kg/m²", XUnit: "s"},
		Parameters: []result.FitParameter{{Path: "a", Label: "Dry diffusivity", Value: 2.4e-12, Low: &low, High: &high, Logarithmic: true, Before: 5e-12,
			Symbol: "µm²/s", Factor: factor, BootstrapLow: &low, BootstrapHigh: &high},
			{Path: "b", Label: "Closing fraction", Value: 0.74, Symbol: "%", Factor: 100}},
		Points: []result.FitPoint{{X: 600, Residual: 0.0003, Line: 4}, {X: 1200, Residual: -0.0021, Line: 5}},
		Doubts: []result.FitDoubt{{Code: "wide", Paths: []string{"a"}, Labels: []string{"Dry diffusivity"}, Value: 4.25},
			{Code: "wide", Paths: []string{"b"}, Labels: []string{"Closing fraction"}, Value: 0.12},
			{Code: "prior", Paths: []string{"b"}, Labels: []string{"Closing fraction"}, Value: 0.05},
			{Code: "bound", Paths: []string{"b"}, Labels: []string{"Closing fraction"}}, {Code: "left", Paths: []string{"b"}, Labels: []string{"Closing fraction"}},
			{Code: "together", Paths: []string{"a", "b"}, Labels: []string{"Dry diffusivity", "Closing fraction"}, Value: -0.98},
			{Code: "few", Value: 2}, {Code: "bent", Paths: []string{"a"}, Labels: []string{"Dry diffusivity"}, Value: 0.4}, {Code: "outliers", Value: 3}},
		Correlations: []result.FitCorrelation{{First: "a", Second: "b", Value: -0.98}},
		Notes:        []string{"2 rows with gaps were left out."}}
	english().FillFit(&f)
	for i, want := range []string{"a factor of 4.25", "12 % wide", "5.0 % of what was open", "“Closing fraction” stands at the end", "it stays as the job has it",
		"correlation −0.98", "no interval", "another interval for “Dry diffusivity”", "less: 3 of the readings"} {
		if got := f.Doubts[i].Text; !strings.Contains(got, want) || strings.Contains(got, "{") {
			t.Errorf("%s: %q lacks %q", f.Doubts[i].Code, got, want)
		}
	}
	for _, c := range []struct{ got, want string }{
		{f.Parameters[0].ValueText, "2.4 µm²/s"}, {f.Parameters[0].IntervalText, "1.2 to 5.1"}, {f.Parameters[0].BeforeText, "5 µm²/s"},
		{f.Parameters[0].BootstrapText, "1.2 to 5.1"}, {f.Parameters[1].IntervalText, "no interval"}, {f.Parameters[1].BootstrapText, ""},
		{f.ResidualText, "standard deviation 0.7 g/m²; largest −2.1 g/m² at 20 min (line 5)"},
		{f.Correlations[0].Text, "“Dry diffusivity” and “Closing fraction”: correlation −0.98"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	text := english().FitTable(f)
	for _, want := range []string{"Dry diffusivity: 2.4 µm²/s (1.2 to 5.1); the job had 5 µm²/s; resampled 1.2 to 5.1", "Closing fraction: 74 % (no interval)",
		"40 points tell Dry diffusivity", "Scatter about the curve 0.7 g/m²", "largest −2.1 g/m² at 20 min (line 5)", "2 rows with gaps"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	if strings.Contains(text, "{") {
		t.Errorf("a name was not filled in:\n%s", text)
	}
}

// A result says which of the job's numbers rest on a trial.
func TestRests(t *testing.T) {
	low, high := 1.2, 1.5
	r := result.Result{Rests: []result.FromTrial{{Label: "Multiplier", Fit: "Card", Kind: "weight", Date: "12 May", Value: 1.3, Low: &low, High: &high, Factor: 1},
		{Label: "C", Fit: "Salts", Kind: "sorption", Value: 7, Factor: 1}}}
	english().Fill(&r)
	text := english().Table(r)
	for _, want := range []string{"Numbers from trials", "“Multiplier” rests on a weighed coupon, “Card” of 12 May: 1.3 (1.2 to 1.5).",
		"“C” rests on sorption points, “Salts”: 7 (no interval)."} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}
