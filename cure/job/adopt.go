package job

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

const (
	crosslinking = "film.adhesive.crosslinking"
	sorptionKind = "film.adhesive.sorption.isotherm"
)

// Adopt returns the job with the fit's values in place and the fit in its list, with what stood there before. What would keep a
// value from counting is changed too: pairs of a cure schedule, which go before frequency factor and activation energy, are
// taken out; the isotherm becomes the one whose constants were fitted; a job without a crosslinker gets one. j is left as it is.
//
// Errors are *fault.Fault or fault.List: a path that leads nowhere, a name that another fit has, values that Validate refuses.
func Adopt(j Job, f Fit) (Job, error) {
	out := Clone(j)
	if strings.TrimSpace(f.Name) == "" {
		f.Name = "Fit"
	}
	if slices.ContainsFunc(out.Fits, func(g Fit) bool { return g.Name == f.Name }) {
		return j, fault.New(fault.Conflict, "fits", words.Told("there is a fit {name} already", "name", strconv.Quote(f.Name)), words.Told("Drop it first, or give this one another name."))
	}
	f = withLists(Clone(Job{Fits: []Fit{f}}).Fits)[0]
	f.Before = []FitBefore{}
	for _, v := range f.Values {
		if err := f.enable(&out, v.Path); err != nil {
			return j, err
		}
		if err := f.remember(&out, v.Path); err != nil {
			return j, err
		}
		if err := SetNumber(&out, v.Path, v.Value); err != nil {
			return j, err
		}
	}
	out.Fits = append(out.Fits, f)
	return out, Validate(out)
}

// remember notes what stands at a path, once.
func (f *Fit) remember(j *Job, path string) error {
	for _, b := range f.Before {
		if rest, ok := strings.CutPrefix(path, b.Path); ok && (rest == "" || rest[0] == '.' || rest[0] == '[') {
			return nil // the whole block is noted
		}
	}
	content, err := text(j, path)
	if err != nil {
		return err
	}
	f.Before = append(f.Before, FitBefore{Path: path, JSON: content})
	return nil
}

// enable changes what would keep the number at a path from counting.
func (f *Fit) enable(j *Job, path string) error {
	a := &j.Film.Adhesive
	switch {
	case strings.HasPrefix(path, crosslinking+"."):
		if a.Crosslinking == nil {
			if err := f.remember(j, crosslinking); err != nil {
				return err
			}
			fresh := *Default().Film.Adhesive.Crosslinking
			a.Crosslinking = &fresh
		}
		if len(a.Crosslinking.Schedule.Pairs) > 0 {
			if err := f.remember(j, crosslinking+".schedule"); err != nil {
				return err
			}
			a.Crosslinking.Schedule.Pairs = []SchedulePair{}
		}
	case strings.HasPrefix(path, "film.adhesive.sorption."):
		want := IsothermGAB
		if strings.HasSuffix(path, ".chi") {
			want = IsothermFloryHuggins
		}
		if a.Sorption.Isotherm != want {
			if err := f.remember(j, sorptionKind); err != nil {
				return err
			}
			a.Sorption.Isotherm = want
		}
	}
	return nil
}

// Drop returns the job without the fit of that name. What stood before comes back where the number still is the fitted one; a
// number that was changed since stays, and one that a later fit has taken over stays too: dropping that one then brings back what
// stood before both. The error is a *fault.Fault: there is no such fit, or what stood before cannot be read.
func Drop(j Job, name string) (Job, error) {
	out := Clone(j)
	at := slices.IndexFunc(out.Fits, func(f Fit) bool { return f.Name == name })
	if at < 0 {
		return j, fault.New(fault.Unknown, "fits", words.Told("there is no fit {name}", "name", strconv.Quote(name)), words.Told("Name a fit of this job."))
	}
	f := out.Fits[at]
	later := out.Fits[at+1:]
	for _, b := range slices.Backward(f.Before) {
		if taken := laterBefore(later, b.Path); taken != nil {
			taken.JSON = b.JSON
			continue
		}
		if v := f.value(b.Path); v != nil {
			if now, ok := Number(&out, b.Path); ok && !same64(now, v.Value) {
				continue
			}
		}
		if err := setText(&out, b.Path, b.JSON); err != nil {
			return j, err
		}
	}
	out.Fits = slices.Delete(out.Fits, at, at+1)
	return out, nil
}

// laterBefore is the note of the first later fit about the same place.
func laterBefore(later []Fit, path string) *FitBefore {
	for i := range later {
		for k := range later[i].Before {
			if later[i].Before[k].Path == path {
				return &later[i].Before[k]
			}
		}
	}
	return nil
}

func (f *Fit) value(path string) *FittedValue {
	for i := range f.Values {
		if f.Values[i].Path == path {
			return &f.Values[i]
		}
	}
	return nil
}

// same64 compares two numbers to the digits that a document keeps.
func same64(a, b float64) bool { return math.Abs(a-b) <= 1e-12*math.Max(math.Abs(a), math.Abs(b)) }

// Rest is one number of the job that rests on a fit.
type Rest struct {
	Path  string
	Field Field
	Fit   *Fit
	Value FittedValue
}

// Resting lists the numbers of the job that still are what a fit made them, the latest fit counting where several told one.
func Resting(j *Job) []Rest {
	if len(j.Fits) == 0 {
		return nil
	}
	fields := newTable().fields
	var all []Rest
	seen := map[string]bool{}
	for i := len(j.Fits) - 1; i >= 0; i-- {
		f := &j.Fits[i]
		for _, v := range f.Values {
			now, ok := Number(j, v.Path)
			if seen[v.Path] || !ok || !same64(now, v.Value) {
				continue
			}
			seen[v.Path] = true
			if field := fields[generic(v.Path)]; field != nil {
				all = append(all, Rest{Path: v.Path, Field: field.worded(), Fit: f, Value: v})
			}
		}
	}
	return all
}

// checkFits demands names of their own, numbers that the job knows, and intervals around them.
func (v *validator) checkFits(j *Job) {
	names := map[string]bool{}
	for i := range j.Fits {
		f := &j.Fits[i]
		at := fmt.Sprintf("fits[%d]", i)
		if names[f.Name] || strings.TrimSpace(f.Name) == "" {
			v.conflict(at+".name", fmt.Sprintf("%q", shorten(f.Name)), words.Told("Give every fit a name of its own: it is dropped by it."))
		}
		names[f.Name] = true
		for k := range f.Values {
			value := &f.Values[k]
			path := fmt.Sprintf("%s.values[%d]", at, k)
			if field := v.fields[generic(value.Path)]; field == nil || field.Kind != KindNumber {
				v.add(fault.New(fault.Choice, path+".path", fmt.Sprintf("%q", shorten(value.Path)), words.Told("Name a number of the job.")))
			}
			if value.Low != nil && *value.Low > value.Value || value.High != nil && *value.High < value.Value {
				v.conflict(path, words.Told("the value is outside its interval"), words.Told("The interval holds the value."))
			}
		}
	}
}
