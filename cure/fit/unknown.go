package fit

import (
	"math"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/words"
)

// Places in the job of the numbers that trials tell.
const (
	adhesive       = "film.adhesive."
	dryDiffusivity = adhesive + "dry_diffusivity_at_25C_m2_per_s"
	closing        = adhesive + "closing_fraction"
	skinDiffusion  = adhesive + "transport.skin_vapour_diffusivity_m2_per_s"
	frequency      = adhesive + "crosslinking.frequency_factor_per_s"
	activation     = adhesive + "crosslinking.activation_energy_J_per_mol"
	order          = adhesive + "crosslinking.order"
	monolayer      = adhesive + "sorption.monolayer_kg_per_kg"
	gabC           = adhesive + "sorption.gab_c"
	gabK           = adhesive + "sorption.gab_k"
	chi            = adhesive + "sorption.chi"
	multiplier     = "transfer.multiplier"
)

// unknown is one number to be told, or a nuisance (a coupon's own coat, an offset of its scale) that is not reported.
type unknown struct {
	paths     []string // places that get the value; none for a nuisance
	parameter regress.Parameter
	before    float64
	wide      float64 // width of the interval, in the search's scale, from which on the trial does not tell the number
	field     job.Field
}

// scatter is how widely a number scatters among adhesives and ovens: the standard deviation of the prior, and from which width of its
// interval on the number counts as not told. For logarithmic ones both are of the natural logarithm.
type scatter struct {
	log      bool
	sd, wide float64
}

// scatters by the end of the path. Reasons: transfer laws differ by a factor of up to four (two standard deviations of ln 2);
// water in dry films by a factor of five either way in the usual range of the field; closing fractions by 0.03 (Kiil 2006);
// activation energies of one chemistry by some 15 kJ/mol; isotherms of one polymer by a factor of two. Widths: a factor of four from end to end
// leaves a drying time open by half.
var scatters = []struct {
	path string
	scatter
}{
	{multiplier, scatter{true, math.Ln2, 2 * math.Ln2}},
	{dryDiffusivity, scatter{true, 0.8, 2 * math.Ln2}},
	{skinDiffusion, scatter{true, 0.35, 2 * math.Ln2}},
	{closing, scatter{false, 0.03, 0.08}},
	{activation, scatter{false, 15e3, 40e3}},
	{order, scatter{false, 0.5, 1}},
	{monolayer, scatter{true, math.Ln2, 2 * math.Ln2}},
	{gabC, scatter{true, 1, 2 * math.Ln2}},
	{gabK, scatter{false, 0.08, 0.2}},
	{chi, scatter{false, 0.8, 1}},
}

// unknownAt makes an unknown of a number of the job, together with those at the further paths, which move along with it.
func (w *work) unknownAt(path string, further ...string) (unknown, error) {
	f, ok := w.fields()[pattern(path)]
	if !ok || f.Kind != job.KindNumber || f.Integer {
		return unknown{}, fault.New(fault.Choice, "parameters", path, words.Told("Name a number of the job by its path."))
	}
	u := unknown{paths: append([]string{path}, further...), field: f}
	u.before = f.Default
	if now, ok := job.Number(&w.job, path); ok {
		u.before = now
	}
	s := scatter{f.Low > 0, 0.5 * math.Ln2, 2 * math.Ln2}
	if !s.log {
		s.sd, s.wide = (f.UsualHigh-f.UsualLow)/4, f.UsualHigh-f.UsualLow
	}
	for _, known := range scatters {
		if suffix(path, known.path) {
			s = known.scatter
		}
	}
	u.wide = s.wide
	low, high := w.limits(path, f)
	start := math.Max(low, math.Min(high, u.before))
	u.parameter = regress.Parameter{Name: path, Start: start, Low: low, High: high, Log: s.log}
	if !w.question.Free {
		u.parameter.Prior = &regress.Prior{Mean: start, SD: s.sd}
	}
	return u, nil
}

// limits are the field's, narrowed to what the film's equations demand of their neighbours (see job.Validate).
func (w *work) limits(path string, f job.Field) (low, high float64) {
	a := &w.job.Film.Adhesive
	low, high = f.Low, f.High
	switch path {
	case closing:
		low = math.Max(low, a.Packing+0.01)
	case dryDiffusivity:
		high = math.Min(high, 0.999*a.CapillaryDiffusion)
	}
	return low, high
}

func suffix(s, end string) bool { return len(s) >= len(end) && s[len(s)-len(end):] == end }

// fields are the job's fields by path pattern, made once.
func (w *work) fields() map[string]job.Field {
	if w.table == nil {
		w.table = map[string]job.Field{}
		for _, f := range job.Fields() {
			w.table[f.Path] = f
		}
	}
	return w.table
}

// pattern is a path with its list indices taken out.
func pattern(path string) string {
	out := make([]byte, 0, len(path))
	inside := false
	for i := 0; i < len(path); i++ {
		switch c := path[i]; {
		case c == '[':
			inside = true
			out = append(out, '[')
		case c == ']':
			inside = false
			out = append(out, ']')
		case !inside:
			out = append(out, c)
		}
	}
	return string(out)
}
