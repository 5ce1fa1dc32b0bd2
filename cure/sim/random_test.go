package sim

import (
	"errors"
	"flag"
	"math"
	"math/rand/v2"
	"reflect"
	"runtime"
	"slices"
	"sort"
	"strings"
	"sync"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// rulebook is what dice know of a job. It is made once: for every throw it would take as long as many a run.
var rulebook = sync.OnceValue(func() dice {
	d := dice{fields: map[string]job.Field{}, blocks: map[string]job.Block{}, rules: job.NewRules()}
	for _, f := range job.Fields() {
		d.fields[f.Path] = f
	}
	for _, b := range job.Blocks() {
		d.blocks[b.Path] = b
	}
	return d
})

// dice throws jobs inside the accepted ranges of job.Fields.
type dice struct {
	*rand.Rand
	fields map[string]job.Field
	blocks map[string]job.Block
	rules  *job.Rules
}

func newDice(seed uint64) *dice {
	d := rulebook()
	d.Rand = rand.New(rand.NewPCG(seed, 7))
	return &d
}

// number is drawn over the whole accepted range half of the time, evenly or, where it spans decades, evenly in its
// logarithm; otherwise over the usual range, where the physics is richer.
func (d *dice) number(f job.Field) float64 {
	lo, hi := f.Low, f.High
	if d.IntN(2) == 0 && f.UsualHigh > f.UsualLow {
		lo, hi = f.UsualLow, f.UsualHigh
	}
	switch {
	case d.IntN(20) == 0:
		return []float64{f.Low, f.High}[d.IntN(2)] // the ends themselves
	case lo > 0 && hi/lo > 100:
		return lo * math.Pow(hi/lo, d.Float64())
	default:
		return lo + (hi-lo)*d.Float64()
	}
}

// fill draws every leaf below v.
func (d *dice) fill(v reflect.Value, path string) {
	switch v.Kind() {
	case reflect.Struct:
		if d.blocks[path].OneOf {
			i := d.IntN(v.NumField())
			v.Field(i).Set(reflect.New(v.Field(i).Type().Elem()))
			d.fill(v.Field(i).Elem(), under(path, name(v, i)))
			return
		}
		for i := range v.NumField() {
			d.fill(v.Field(i), under(path, name(v, i)))
		}
	case reflect.Pointer:
		if d.IntN(2) == 0 {
			v.Set(reflect.New(v.Type().Elem()))
			d.fill(v.Elem(), path)
		}
	case reflect.Slice:
		n := d.blocks[path].MinItems + d.IntN(3)
		v.Set(reflect.MakeSlice(v.Type(), n, n))
		for i := range n {
			d.fill(v.Index(i), path+"[]")
		}
	case reflect.String:
		if f := d.fields[path]; len(f.Choices) > 0 {
			v.SetString(f.Choices[d.IntN(len(f.Choices))].Value)
		}
	case reflect.Bool:
		v.SetBool(d.IntN(2) == 0)
	case reflect.Int:
		v.SetInt(int64(d.number(d.fields[path])))
	case reflect.Float64:
		v.SetFloat(d.number(d.fields[path]))
	}
}

func name(v reflect.Value, i int) string { return v.Type().Field(i).Tag.Get("json") }

func under(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// throw draws jobs until one is accepted, mending on the way what chance alone would hardly ever get right: the order of
// times and of zones.
func (d *dice) throw() job.Job {
	for {
		j := job.Job{}
		d.fill(reflect.ValueOf(&j).Elem(), "")
		j.Version = job.Version
		j.Fits = nil // they change no computation, and chance would hardly ever name a number of the job
		d.order(&j)
		if d.IntN(5) > 0 { // what takes many runs a job is thrown in every fifth only
			j.Part.Spots = nil
			if j.StaticOven != nil {
				j.StaticOven.Batches = 1
			}
			if j.Tunnel != nil {
				for i := range j.Tunnel.Zones {
					j.Tunnel.Zones[i].Air = nil
				}
			}
		}
		// Cheap settings: the property must hold for any grid.
		j.Numerics.FilmCells, j.Numerics.PartCells = 10, 3
		j.Numerics.RelativeTolerance, j.Numerics.StepBudget = 1e-4, 20000
		if d.rules.Validate(j) == nil {
			return j
		}
	}
}

func (d *dice) order(j *job.Job) {
	a := j.Workshop.Air
	sort.Slice(a, func(i, k int) bool { return a[i].Time < a[k].Time })
	a[0].Time = 0
	if s := &j.Film.Adhesive; s.Closing < s.Packing+0.01 {
		s.Closing = math.Min(0.95, s.Packing+0.02+0.2*d.Float64())
	}
	if c := j.Film.Adhesive.Crosslinking; c != nil {
		c.Autocatalysis = nil
		if len(c.Schedule.Pairs) == 0 && d.IntN(3) == 0 {
			c.Autocatalysis = &job.Autocatalysis{}
			d.fill(reflect.ValueOf(c.Autocatalysis).Elem(), "film.adhesive.crosslinking.autocatalysis")
		}
		p := c.Schedule.Pairs
		sort.Slice(p, func(i, k int) bool { return p[i].Temperature < p[k].Temperature })
		for i := 1; i < len(p); i++ {
			p[i].Time = p[i-1].Time * math.Exp(-(2+16*d.Float64())*1e3*(1/p[i-1].Temperature-1/p[i].Temperature))
		}
	}
	d.orderSpace(j)
	d.orderPlaces(j)
	late := 0.0
	if j.Pile != nil {
		j.Pile.AppliedAfter = math.Min(j.Pile.AppliedAfter, 3600)
		late = j.Pile.AppliedAfter
	}
	if j.Part.Back == job.BackCoated {
		j.Part.Carrier, j.Part.Orientation = nil, job.Vertical
	}
	const day = 86400.0
	if r := j.Room; r != nil {
		r.Deadline, r.Horizon = math.Min(r.Deadline, 10*day), 14*day
	}
	if o := j.StaticOven; o != nil {
		o.LoadedAfter = math.Max(late, math.Min(o.LoadedAfter, day))
		o.Deadline, o.Horizon = math.Min(o.Deadline, 10*day), 14*day
	}
	if t := j.Tunnel; t != nil {
		t.EnteredAfter = math.Max(late, math.Min(t.EnteredAfter, day))
		t.Deadline, t.Horizon = math.Min(t.Deadline, 10*day), 14*day
		slices.SortStableFunc(t.Zones, func(x, y job.Zone) int { return -strings.Compare(string(x.Kind), string(y.Kind)) })
		t.Zones[0].Kind = job.Heated
	}
}

// orderSpace puts the night of a full room in order.
func (d *dice) orderSpace(j *job.Job) {
	s := j.Workshop.Space
	if s == nil {
		return
	}
	sort.Slice(s.Outside, func(i, k int) bool { return s.Outside[i].Time < s.Outside[k].Time })
	s.Outside[0].Time = 0
	if h := s.Heating; h != nil {
		h.SetBack = math.Min(h.SetBack, h.SetPoint)
		if h.SetBackAt == nil {
			h.ResumeAt = nil
		} else if h.ResumeAt != nil {
			*h.ResumeAt = *h.SetBackAt + 3600*(1+10*d.Float64())
		}
	}
}

// orderPlaces names the spots, gives nozzles to the laws that need them and flows to zones.
func (d *dice) orderPlaces(j *job.Job) {
	for i := range j.Part.Spots {
		j.Part.Spots[i].Name = "spot " + string(rune('a'+i))
	}
	transfers := []*job.Transfer{&j.Workshop.Transfer}
	if j.StaticOven != nil {
		transfers = append(transfers, &j.StaticOven.Transfer)
		if o := j.StaticOven; o.Batches > 1 {
			o.BatchInterval = math.Min(o.BatchInterval, o.Dwell/2)
		}
	}
	if t := j.Tunnel; t != nil {
		if j.Part.Carrier == nil {
			t.CarrierReturn = nil
		}
		for i := range t.Zones {
			transfers = append(transfers, &t.Zones[i].Transfer)
		}
	}
	for _, t := range transfers {
		if n := t.Nozzles; n != nil {
			n.Pitch = math.Max(n.Pitch, 3*n.Width)
		} else if t.Kind == job.SlotNozzles || t.Kind == job.RoundNozzles {
			t.Kind = job.Combined
		}
	}
}

// sane lists what is wrong with a result.
func sane(res *result.Result) error {
	for i := range res.Routes {
		r := &res.Routes[i]
		if !r.Status.Complete {
			return errors.New(string(r.Kind) + " ended early: " + r.Warnings[len(r.Warnings)-1].Text)
		}
		m := times(r)
		later := func(a, b result.MarkName) bool {
			ta, okA := m[a]
			tb, okB := m[b]
			return okA && (!okB || ta < tb)
		}
		for _, o := range [][2]result.MarkName{{result.TackFree, result.Touch}, {result.Cured, result.DryThrough},
			{result.Ready, result.TackFree}, {result.Ready, result.DryThrough}, {result.Ready, result.Cool}} {
			if later(o[0], o[1]) {
				return errors.New(string(r.Kind) + ": " + string(o[0]) + " before " + string(o[1]))
			}
		}
		for k := range r.Marks {
			if w := r.Marks[k].State; !(w.MeanWater >= 0 && w.OuterWater >= 0 && w.LeastConversion >= 0 && w.MeanConversion <= 1+1e-11) {
				return errors.New(string(r.Kind) + ": the state at " + string(r.Marks[k].Name) + " makes no sense")
			}
		}
		c := &r.Curves
		for name, column := range map[string][]float64{"time": c.Time, "mean water": c.MeanWater, "outer water": c.OuterWater,
			"surface water": c.SurfaceWater, "inner water": c.InnerWater, "equilibrium": c.Equilibrium, "mean conversion": c.MeanConversion,
			"least conversion": c.LeastConversion, "film": c.FilmTemperature, "back": c.PartBack, "air": c.AirTemperature,
			"humidity": c.AirHumidity, "thickness": c.Thickness} {
			for k, v := range column {
				if math.IsNaN(v) || math.IsInf(v, 0) || v < -1e-12 {
					return errors.New(string(r.Kind) + ": " + name + " is not a number or negative at point " + string(rune('0'+k%10)))
				}
			}
		}
		for k := range c.Time {
			if c.MeanConversion[k] > 1+1e-11 || c.LeastConversion[k] > c.MeanConversion[k]+1e-11 {
				return errors.New(string(r.Kind) + ": conversions make no sense")
			}
		}
		for _, b := range []result.Balance{r.Balances.Water, r.Balances.Heat} {
			if !(b.Relative <= 1e-8) {
				return errors.New(string(r.Kind) + ": a balance is open")
			}
		}
	}
	return nil
}

// jobs is how many TestRandomJobs throws.
var jobs = flag.Int("jobs", 10000, "how many random jobs are computed")

// Random jobs inside the accepted ranges: no panic, no number that is none, no negative water, no mark out of order, no
// open balance, no run over its step budget.
func TestRandomJobs(t *testing.T) {
	count := *jobs
	if testing.Short() {
		count = 300
	}
	var wg sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	var mu sync.Mutex
	failures, worst := 0, 0
	for w := range workers {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for i := w; i < count; i += workers {
				j := newDice(uint64(i)).throw()
				res, err := Run(&j)
				if err == nil {
					err = sane(&res)
				}
				mu.Lock()
				for k := range res.Routes {
					worst = max(worst, res.Routes[k].Status.Steps+res.Routes[k].Status.Rejected)
				}
				if err != nil {
					if failures++; failures <= 5 {
						text, _ := job.Encode(j)
						t.Errorf("seed %d: %v\n%s", i, err, text)
					}
				}
				mu.Unlock()
			}
		}()
	}
	wg.Wait()
	t.Logf("%d jobs, %d wrong, at most %d steps", count, failures, worst)
}
