package report

import (
	"math"
	"reflect"
	"strconv"
	"strings"

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
func (w Speaker) Text(text string) string {
	var rules *job.Rules
	return w.Render(text, func(a words.Amount) string {
		if rules == nil {
			rules = job.NewRules()
		}
		return w.amount(a, rules)
	})
}

// amount prints a number of a fault in the unit of its field, with all its digits: a limit that is told rounded would be
// refused when it is typed. Times that belong to no field are told in the unit that suits their length.
func (w Speaker) amount(a words.Amount, rules *job.Rules) string {
	var d job.Display
	switch f, known := rules.Field(a.Of); {
	case known:
		d = w.Display(f.Display, f.USDisplay)
	case a.Unit == "s":
		d = w.timeUnit(a.Value)
	default:
		d = w.ofUnit(a.Unit)
	}
	v := a.Value*d.Factor + d.Offset
	number := fault.Number(v)
	if a.Rough {
		number = few(v)
	}
	if a.Bare {
		d.Symbol = ""
	}
	return withUnit(w.Words.Number(number), d.Symbol)
}

// few prints a computed number, without an exponent where it has a usual size.
func few(v float64) string {
	const digits = 4
	text := strconv.FormatFloat(v, 'e', digits-1, 64)
	r, _ := strconv.ParseFloat(text, 64) // its own output always parses
	if size := math.Abs(r); size < 1e-4 && r != 0 || size >= 1e7 {
		return text
	}
	return strconv.FormatFloat(r, 'f', -1, 64)
}

// timeUnit is the unit for a time [s] of this length: minutes for the short ones, as the fields of the job have them.
func (w Speaker) timeUnit(seconds float64) job.Display {
	rungs := ladder()
	for _, u := range rungs[1:] {
		if math.Abs(seconds)/u.seconds < u.limit {
			return job.Display{Symbol: w.Say("unit." + u.name), Factor: 1 / u.seconds}
		}
	}
	return job.Display{Symbol: "s", Factor: 1} // no number
}

// ofUnit is the unit in which a reader likes what is told in a unit of SI; one that nobody converts stands as it is.
func (w Speaker) ofUnit(symbol string) job.Display {
	switch symbol {
	case "K":
		return w.unit(temperature)
	case "Pa":
		return w.unit(pressure)
	case "kg/m2", "kg/m²":
		return w.unit(coatWeight)
	case "kg/kg":
		return w.unit(airHumidity)
	}
	return job.Display{Symbol: symbol, Factor: 1}
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
			if f := v.Field(i); f.CanInterface() { // exported; its type would tell at ten times the price
				w.tell(f)
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

// Sentence is a fault as one line: what it is about by the names that a reader knows, what was found, what to do.
func (w Speaker) Sentence(f *fault.Fault) string {
	place := w.whereIs(f.Path)
	if place == "" {
		place = f.Path // a place in a table or a question, or a name that the document should not have
	}
	said := w.Text(f.Said())
	if place != "" {
		said = place + ": " + said
	}
	return said
}

// whereIs is what a path of the job is called: "Tunnel oven, Zone 2, Air speed". A block that the label of its field begins with
// ("Heating: power") is not told twice.
func (w Speaker) whereIs(path string) string {
	var told []string
	for _, name := range job.NewRules().Place(path) {
		name = w.Text(name)
		if last := len(told) - 1; last >= 0 && strings.HasPrefix(name, told[last]+": ") {
			told = told[:last]
		}
		told = append(told, name)
	}
	return strings.Join(told, ", ")
}

// Told is a fault in this language: what was found and what to do in words.
func (w Speaker) Told(f *fault.Fault) fault.Fault {
	said := *f
	said.Got, said.Advice = w.Text(f.Got), w.Text(f.Advice)
	return said
}
