package sim

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"sync"

	"github.com/drywright/drywright/cure/job"
)

// rulebook is what dice know of a job. It is made once: for every throw it would take as long as many a run.
var rulebook = sync.OnceValue(func() dice {
	d := dice{fields: map[string]job.Field{}, blocks: map[string]job.Block{}, members: map[reflect.Type][]member{}, rules: job.NewRules()}
	for _, f := range job.Fields() {
		d.fields[f.Path] = f
	}
	for _, b := range job.Blocks() {
		d.blocks[b.Path] = b
	}
	d.learn(reflect.TypeFor[job.Job](), "")
	return d
})

// dice throws jobs inside the accepted ranges of job.Fields. One seed throws one job, on every machine.
type dice struct {
	*rand.Rand
	fields  map[string]job.Field
	blocks  map[string]job.Block
	members map[reflect.Type][]member
	rules   *job.Rules
	thrown  int // jobs thrown so far, refused ones too
}

// member is what has to be known of a struct's member: reading tags for every throw would take a third of it.
type member struct {
	name  string
	below map[string]string // its path by the path of the struct
}

func newDice(seed uint64) *dice {
	d := rulebook()
	d.Rand = rand.New(rand.NewPCG(seed, 7))
	return &d
}

// learn lists the members of t, which stands at a path, and of all below it.
func (d *dice) learn(t reflect.Type, path string) {
	switch t.Kind() {
	case reflect.Pointer:
		d.learn(t.Elem(), path)
	case reflect.Slice:
		d.learn(t.Elem(), path+"[]")
	case reflect.Struct:
		m := d.members[t]
		for i := range t.NumField() {
			if len(m) <= i {
				m = append(m, member{t.Field(i).Tag.Get("json"), map[string]string{}})
			}
			m[i].below[path] = m[i].name
			if path != "" {
				m[i].below[path] = path + "." + m[i].name
			}
			d.learn(t.Field(i).Type, m[i].below[path])
		}
		d.members[t] = m
	}
}

// number is drawn over the whole accepted range half of the time, evenly or, where it spans decades, evenly in its
// logarithm; otherwise over the usual range, where the physics is richer.
func (d *dice) number(f job.Field) float64 {
	lo, hi := f.Low, f.High
	if d.IntN(2) == 0 && f.UsualHigh > f.UsualLow {
		lo, hi = f.UsualLow, f.UsualHigh
	}
	if d.IntN(20) == 0 {
		return []float64{f.Low, f.High}[d.IntN(2)] // the ends themselves
	}
	return d.between(lo, hi)
}

// between draws evenly, or evenly in the logarithm where the range spans decades.
func (d *dice) between(lo, hi float64) float64 {
	if lo > 0 && hi/lo > 100 {
		return lo * math.Pow(hi/lo, d.Float64())
	}
	return lo + (hi-lo)*d.Float64()
}

// fill draws every leaf below v.
func (d *dice) fill(v reflect.Value, path string) {
	switch v.Kind() {
	case reflect.Struct:
		if m := d.members[v.Type()]; d.blocks[path].OneOf {
			i := d.IntN(v.NumField())
			v.Field(i).Set(reflect.New(v.Field(i).Type().Elem()))
			d.fill(v.Field(i).Elem(), m[i].below[path])
		} else {
			for i := range v.NumField() {
				d.fill(v.Field(i), m[i].below[path])
			}
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

// throw draws jobs until one is accepted, mending on the way what chance alone would hardly ever get right.
func (d *dice) throw() job.Job {
	for {
		d.thrown++
		j := job.Job{}
		d.fill(reflect.ValueOf(&j).Elem(), "")
		j.Version = job.Version
		j.Fits = nil // they change no computation, and chance would hardly ever name a number of the job
		d.thin(&j)
		d.mend(&j)
		// Cheap settings: the properties must hold for any grid and any tolerance.
		j.Numerics.FilmCells, j.Numerics.PartCells = int(d.fields["numerics.film_cells"].Low), int(d.fields["numerics.part_cells"].Low)
		j.Numerics.RelativeTolerance, j.Numerics.StepBudget = d.fields["numerics.relative_tolerance"].High, stepsFor(&j)
		if d.rules.Validate(j) == nil {
			return j
		}
	}
}

// stepsFor is what a job may take: 20,000 steps for one run, five times that where runs multiply by spots, loads or zones in balance.
func stepsFor(j *job.Job) int {
	const one = 20_000
	routes, many := 0, len(j.Part.Spots) > 0
	if j.Room != nil {
		routes++
	}
	if j.StaticOven != nil {
		routes++
		many = many || j.StaticOven.Batches > 1
	}
	if j.Tunnel != nil {
		routes++
		many = many || slices.ContainsFunc(j.Tunnel.Zones, func(z job.Zone) bool { return z.Air != nil })
	}
	if many {
		return 5 * one
	}
	return one * routes
}

// thin leaves what takes many runs a job to some jobs only: several routes and spots to every tenth, loads that follow each other
// to every twentieth, balanced zones to every fifth. So the many go to what one run can show.
func (d *dice) thin(j *job.Job) {
	if d.IntN(10) > 0 || (j.Room == nil && j.StaticOven == nil && j.Tunnel == nil) {
		d.oneRoute(j)
		j.Part.Spots = nil
	}
	if o := j.StaticOven; o != nil && d.IntN(20) > 0 {
		o.Batches = 1
	}
	if t := j.Tunnel; t != nil && d.IntN(5) > 0 {
		for i := range t.Zones {
			t.Zones[i].Air = nil
		}
	}
}

// oneRoute leaves one of the three routes, each as often.
func (d *dice) oneRoute(j *job.Job) {
	v, m := reflect.ValueOf(j).Elem(), d.members[reflect.TypeFor[job.Job]()]
	keep := []string{"room", "static_oven", "tunnel"}[d.IntN(3)]
	for i := range m {
		switch f := v.Field(i); {
		case m[i].name == keep && f.IsNil():
			f.Set(reflect.New(f.Type().Elem()))
			d.fill(f.Elem(), keep)
		case m[i].name != keep && (m[i].name == "room" || m[i].name == "static_oven" || m[i].name == "tunnel"):
			f.SetZero()
		}
	}
}

// fillAt draws every leaf of what x points to, which stands at a path.
func (d *dice) fillAt(x any, path string) { d.fill(reflect.ValueOf(x).Elem(), path) }
