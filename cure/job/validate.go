package job

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// Validate returns every fault of a job as a fault.List, or nil: numbers outside Low..High of Fields or not finite, words
// that are no choice, lists too short or too long, and values that contradict each other. What contradicts is judged
// only among values that are in range themselves.
func Validate(j Job) error { return NewRules().Validate(j) }

// validator gathers the faults of one job.
type validator struct {
	table
	faults fault.List
}

func (v *validator) job(j *Job) {
	v.walk(reflect.ValueOf(j).Elem(), "", "")
	v.checkFilm(j)
	v.checkCrosslinking(j)
	v.checkPart(j)
	v.checkWorkshop(j)
	v.checkRoutes(j)
	v.checkTargets(j)
	v.checkHottest(j)
	v.checkFits(j)
}

func (v *validator) result() error {
	if len(v.faults) > maxFaults {
		v.faults = append(v.faults[:maxFaults:maxFaults], fault.New(fault.Limit, "", words.Told("there are more faults than these"),
			words.Told("Mend these first.")))
	}
	return v.faults.OrNil()
}

func (v *validator) add(f *fault.Fault) { v.faults = append(v.faults, f) }

func (v *validator) conflict(path, got, advice string) {
	v.add(fault.New(fault.Conflict, path, got, advice))
}

// sound reports whether no fault has been found at or below any of the paths.
func (v *validator) sound(paths ...string) bool {
	for _, f := range v.faults {
		for _, p := range paths {
			if rest, ok := strings.CutPrefix(f.Path, p); ok && (rest == "" || rest[0] == '.' || rest[0] == '[') {
				return false
			}
		}
	}
	return true
}

// generic turns the indices of a path into those of its pattern.
func generic(path string) string {
	var b strings.Builder
	inside := false
	for _, c := range path {
		if c == ']' {
			inside = false
		}
		if !inside {
			b.WriteRune(c)
		}
		if c == '[' {
			inside = true
		}
	}
	return b.String()
}

// walk checks every leaf against its entry of Fields and every list against its entry of Blocks.
func (v *validator) walk(x reflect.Value, path, pattern string) {
	switch x.Kind() {
	case reflect.Struct:
		for i, name := range v.names[x.Type()] {
			at, of := underBoth(path, pattern, name)
			v.walk(x.Field(i), at, of)
		}
	case reflect.Pointer:
		if !x.IsNil() {
			v.walk(x.Elem(), path, pattern)
		}
	case reflect.Slice:
		b := v.blocks[pattern]
		if n := x.Len(); n < b.MinItems || n > b.MaxItems {
			v.add(fault.New(fault.Limit, path, words.Told("{count} entries", "count", n),
				words.Told("Give {min_items} to {max_items}.", "min_items", b.MinItems, "max_items", b.MaxItems)))
		}
		for i := range min(x.Len(), b.MaxItems) {
			v.walk(x.Index(i), fmt.Sprintf("%s[%d]", path, i), pattern+"[]")
		}
	case reflect.String:
		v.text(x.String(), path, v.fields[pattern])
	case reflect.Int:
		v.number(float64(x.Int()), path, v.fields[pattern])
	case reflect.Float64:
		v.number(x.Float(), path, v.fields[pattern])
	}
}

func (v *validator) number(x float64, path string, f *Field) {
	if !(x >= f.Low && x <= f.High) { // so that NaN is refused too
		v.add(outOfRange(f, path, x))
	}
}

func (v *validator) text(s, path string, f *Field) {
	if f.Kind == KindChoice {
		var accepted []string
		for _, c := range f.Choices {
			if c.Value == s {
				return
			}
			accepted = append(accepted, c.Value)
		}
		v.add(fault.New(fault.Choice, path, strconv.Quote(shorten(s)), words.Told("Give one of {accepted}.", "accepted", strings.Join(accepted, ", "))))
		return
	}
	if !utf8.ValidString(s) {
		v.add(fault.New(fault.Type, path, words.Told("a text that is not UTF-8"), words.Told("Give plain text.")))
		return
	}
	if n := utf8.RuneCountInString(s); float64(n) > f.High {
		v.add(fault.New(fault.Limit, path, words.Told("{count} characters", "count", n),
			words.Told("Give at most {high}.", "high", words.Figure(fault.Number(f.High)))))
	}
}

// outOfRange complains of a number, with its range in the unit that a workshop reads.
func outOfRange(f *Field, path string, x float64) *fault.Fault {
	values := []any{"label", f.label(), "low", words.Amount{Value: f.Low, Of: path, Unit: f.Unit, Bare: true},
		"high", words.Amount{Value: f.High, Of: path, Unit: f.Unit}}
	advice := words.Told("{label} must be between {low} and {high}.", values...)
	if f.Integer {
		advice = words.Told("{label} must be a whole number from {low} to {high}.", values...)
	}
	return fault.OutOfRange(path, x, f.Low, f.High, f.Unit, advice)
}
