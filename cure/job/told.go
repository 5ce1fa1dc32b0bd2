package job

import (
	"errors"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// What a contradiction tells of numbers goes out as amounts, so that every reader meets them in units of their own.

// typed is a number [SI] as it stands in the field of a path, with all its digits.
func (v *validator) typed(x float64, path string) words.Amount {
	a := words.Amount{Value: x, Of: generic(path)}
	if f := v.fields[a.Of]; f != nil {
		a.Unit = f.Unit
	}
	return a
}

// computed is a number [SI] that follows from several fields, told in the unit of one that measures the same.
func (v *validator) computed(x float64, path string) words.Amount {
	a := v.typed(x, path)
	a.Rough = true
	return a
}

// degrees is a temperature [K] of no field of its own.
func degrees(t float64) words.Amount { return words.Amount{Value: t, Unit: "K", Rough: true} }

// lasting is a time [s], told in the unit that suits its length.
func lasting(t float64) words.Amount { return words.Amount{Value: t, Unit: "s", Rough: true} }

// chosen is the label of a choice.
func (v *validator) chosen(value, path string) string {
	if f := v.fields[generic(path)]; f != nil {
		for _, c := range f.Choices {
			if c.Value == value {
				return words.Inside(f.choice(c.Value))
			}
		}
	}
	return value
}

// whatOf is what an error has found, without the place that it knows it by.
func whatOf(err error) string {
	var f *fault.Fault
	if errors.As(err, &f) {
		return f.Got
	}
	return err.Error()
}
