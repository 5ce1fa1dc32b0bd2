package report

import (
	"reflect"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/words"
)

// Units name a system of units to print in.
type Units string

// The systems of units.
const (
	SI Units = "si" // as workshops read it where the metre is at home: °C, µm, g/m²
	US Units = "us" // as workshops in the United States read it: °F, mil, oz/yd²
)

// Speaker says results in one language and one system of units.
type Speaker struct {
	*words.Words
	unitSystem Units
}

// New is a speaker; units other than US are SI.
func New(w *words.Words, units Units) Speaker { return Speaker{w, units} }

// Text puts a text on its way into words.
func (w Speaker) Text(text string) string { return w.Render(text, w.amount) }

// amount prints a number of a fault in the unit of its field, with all its digits: a limit that is told rounded would be
// refused when it is typed.
func (w Speaker) amount(a words.Amount) string {
	number, symbol := a.Value, a.Unit
	if f, known := job.NewRules().Field(a.Of); known {
		d := w.Display(f.Display, f.USDisplay)
		number, symbol = a.Value*d.Factor+d.Offset, d.Symbol
	}
	if a.Bare {
		symbol = ""
	}
	return withUnit(w.Words.Number(fault.Number(number)), symbol)
}

// Display chooses between the units of the two systems.
func (w Speaker) Display(si, us job.Display) job.Display {
	if w.unitSystem == US && us.Factor != 0 {
		return us
	}
	return si
}

// Tell puts every text on its way in a document into words, and what is displayed into the units of the reader, through
// pointers, lists and members.
func (w Speaker) Tell(document any) { w.tell(reflect.ValueOf(document)) }

func (w Speaker) tell(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			w.tell(v.Elem())
		}
	case reflect.Struct:
		w.show(v)
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				w.tell(v.Field(i))
			}
		}
	case reflect.Slice:
		switch v.Type().Elem().Kind() {
		case reflect.Float64, reflect.Int, reflect.Uint8, reflect.Bool: // curves and raw documents hold no words
			return
		}
		for i := range v.Len() {
			w.tell(v.Index(i))
		}
	case reflect.String:
		if v.CanSet() {
			v.SetString(w.Text(v.String()))
		}
	}
}

// show puts what is displayed in units of both systems, a field or a variable, into those of the reader.
func (w Speaker) show(v reflect.Value) {
	if w.unitSystem != US {
		return
	}
	here, us := v.FieldByName("Display"), v.FieldByName("USDisplay")
	if !here.IsValid() || !us.IsValid() || !here.CanSet() {
		return
	}
	si, both := here.Interface().(job.Display)
	other, display := us.Interface().(job.Display)
	if both && display {
		here.Set(reflect.ValueOf(w.Display(si, other)))
	}
}

// Told is a fault in this language: what was found and what to do in words.
func (w Speaker) Told(f *fault.Fault) fault.Fault {
	said := *f
	said.Got, said.Advice = w.Text(f.Got), w.Text(f.Advice)
	return said
}
