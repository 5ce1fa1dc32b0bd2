package job

import (
	"reflect"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/fault"
)

// Clone is a copy of a job that shares nothing with it.
func Clone(j *Job) Job {
	return clone(reflect.ValueOf(j).Elem()).Interface().(Job)
}

func clone(v reflect.Value) reflect.Value {
	out := reflect.New(v.Type()).Elem()
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			out.Field(i).Set(clone(v.Field(i)))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			out.Set(reflect.New(v.Type().Elem()))
			out.Elem().Set(clone(v.Elem()))
		}
	case reflect.Slice:
		if !v.IsNil() {
			out.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
			for i := range v.Len() {
				out.Index(i).Set(clone(v.Index(i)))
			}
		}
	default:
		out.Set(v)
	}
	return out
}

// Number is the place in a job of the number at a JSON path ("tunnel.zones[1].length_m"), to be read and written, with its
// entry of Fields.
//
// Errors: fault.Unknown where the path leads nowhere, fault.Missing where a block or number on the way is null,
// fault.Type where it is no number that may be any fraction.
func Number(j *Job, path string) (*float64, Field, error) {
	number, err := Place(j, path)
	if err != nil {
		return nil, Field{}, err
	}
	f, _ := FieldAt(path)
	return number, f, nil
}

// Place is Number without the entry of Fields, which takes longer to find than the place.
func Place(j *Job, path string) (*float64, error) {
	v := reflect.ValueOf(j).Elem()
	for rest := path; rest != ""; {
		var name string
		name, rest, _ = strings.Cut(rest, ".")
		next, err := step(v, name, path)
		if err != nil {
			return nil, err
		}
		v = next
	}
	number, ok := v.Addr().Interface().(*float64)
	if !ok {
		return nil, fault.New(fault.Type, path, "is no number that can be varied", "Name a number of the job, such as film.wet_coat_kg_per_m2.")
	}
	return number, nil
}

// FieldAt is the entry of Fields for a concrete path, and whether there is one.
func FieldAt(path string) (Field, bool) {
	pattern := generic(path)
	for _, g := range groups() {
		if g.root != "" && g.root != firstWord(pattern) {
			continue
		}
		for _, f := range g.fields() {
			if f.Path == pattern {
				return f.completed(), true
			}
		}
	}
	return Field{}, false
}

// step goes from a struct to the member of a name, with an index where the name has one, through pointers.
func step(v reflect.Value, name, path string) (reflect.Value, error) {
	name, index, indexed := strings.Cut(strings.TrimSuffix(name, "]"), "[")
	if v.Kind() != reflect.Struct {
		return v, nowhere(path)
	}
	for _, m := range members(v) {
		if m.name != name {
			continue
		}
		at := m.value
		if indexed {
			i, err := strconv.Atoi(index)
			if err != nil || at.Kind() != reflect.Slice || i < 0 || i >= at.Len() {
				return v, nowhere(path)
			}
			at = at.Index(i)
		}
		if at.Kind() == reflect.Pointer {
			if at.IsNil() {
				return v, fault.New(fault.Missing, path, "", "The job leaves it open; give it before it is varied.")
			}
			at = at.Elem()
		}
		return at, nil
	}
	return v, nowhere(path)
}

func nowhere(path string) error {
	return fault.New(fault.Unknown, path, "the job has no such place", "See the job's schema for its fields.")
}
