package job

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// Clone returns a job that shares nothing with j.
func Clone(j Job) Job {
	var out Job
	cloneInto(reflect.ValueOf(&out).Elem(), reflect.ValueOf(j))
	return out
}

func cloneInto(to, from reflect.Value) {
	switch from.Kind() {
	case reflect.Pointer:
		if !from.IsNil() {
			to.Set(reflect.New(from.Type().Elem()))
			cloneInto(to.Elem(), from.Elem())
		}
	case reflect.Struct:
		for i := range from.NumField() {
			cloneInto(to.Field(i), from.Field(i))
		}
	case reflect.Slice:
		if !from.IsNil() {
			to.Set(reflect.MakeSlice(from.Type(), from.Len(), from.Len()))
			for i := range from.Len() {
				cloneInto(to.Index(i), from.Index(i))
			}
		}
	default:
		to.Set(from)
	}
}

// place finds what a path leads to ("tunnel.zones[0].transfer.multiplier"); ok is false where it leads nowhere in this job: an
// unknown name, a list that is shorter, a block that is null on the way. The last step may be null itself.
func place(v reflect.Value, path string) (found reflect.Value, ok bool) {
	for step := range strings.SplitSeq(path, ".") {
		for v.Kind() == reflect.Pointer {
			if v.IsNil() {
				return v, false
			}
			v = v.Elem()
		}
		name, index, listed := strings.Cut(step, "[")
		if v.Kind() != reflect.Struct {
			return v, false
		}
		i := slices.Index(members(v.Type()), name)
		if i < 0 {
			return v, false
		}
		v = v.Field(i)
		if listed {
			n, err := strconv.Atoi(strings.TrimSuffix(index, "]"))
			if err != nil || v.Kind() != reflect.Slice || n < 0 || n >= v.Len() {
				return v, false
			}
			v = v.Index(n)
		}
	}
	return v, true
}

// Number returns the number at a path; ok is false where the path leads to none, or to one that is null.
func Number(j *Job, path string) (x float64, ok bool) {
	v, ok := place(reflect.ValueOf(j).Elem(), path)
	if ok && v.Kind() == reflect.Pointer && !v.IsNil() {
		v = v.Elem()
	}
	if !ok || v.Kind() != reflect.Float64 {
		return 0, false
	}
	return v.Float(), true
}

// SetNumber writes a number at a path, also where it was null. The error is a *fault.Fault: the job has no number there.
func SetNumber(j *Job, path string, x float64) error {
	v, ok := place(reflect.ValueOf(j).Elem(), path)
	if ok && v.Kind() == reflect.Pointer && v.Type().Elem().Kind() == reflect.Float64 {
		v.Set(reflect.New(v.Type().Elem()))
		v = v.Elem()
	}
	if !ok || v.Kind() != reflect.Float64 {
		return nowhere(path)
	}
	v.SetFloat(x)
	return nil
}

func nowhere(path string) *fault.Fault {
	return fault.New(fault.Unknown, path, words.Told("the job has no number there"), words.Told("Name a number of a block that the job has."))
}

// text writes what stands at a path as JSON.
func text(j *Job, path string) (string, error) {
	v, ok := place(reflect.ValueOf(j).Elem(), path)
	if !ok {
		return "", nowhere(path)
	}
	b, err := json.Marshal(v.Interface())
	return string(b), err
}

// setText puts JSON text back at a path.
func setText(j *Job, path, content string) error {
	v, ok := place(reflect.ValueOf(j).Elem(), path)
	if !ok {
		return nil // the block is gone, and what stood in it with it
	}
	fresh := reflect.New(v.Type())
	if err := json.Unmarshal([]byte(content), fresh.Interface()); err != nil {
		return fault.New(fault.Syntax, path, words.Told("what stood here before the fit cannot be read: {err}", "err", fmt.Sprint(err)),
			words.Told("Set the number by hand and delete the fit's line."))
	}
	v.Set(fresh.Elem())
	return nil
}
