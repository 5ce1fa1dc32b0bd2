package job

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// Decode reads a document over the defaults: what it leaves out takes the default of Fields and Blocks, null for an
// optional block or number means that there is none, a humidity is taken as it stands because it is one number out of
// five. It returns every fault of the document at once, as a fault.List: text that is not JSON (one fault with line and
// column), a missing or newer version, unknown or doubled fields, wrong types, and whatever Validate finds. A number
// that is refused is left at its default, so that it is complained of once.
//
// A document of a newer version is refused for that alone: what else seems wrong in it may be right there.
func Decode(data []byte) (Job, error) { return NewRules().Decode(data) }

// Decode is Decode of the package.
func (r *Rules) Decode(data []byte) (Job, error) {
	root, f := parse(data)
	if f != nil {
		return Job{}, fault.List{f}
	}
	top, ok := root.(object)
	if !ok {
		return Job{}, fault.List{fault.New(fault.Type, "", kindName(root), words.Told("A job is a JSON object."))}
	}
	version, f := versionOf(top)
	if f != nil && f.Code == fault.Version {
		return Job{}, fault.List{f}
	}
	d := decoder{table: r.table}
	if f != nil {
		d.add(f)
	}
	var j Job
	v := reflect.ValueOf(&j).Elem()
	d.fill(v, "")
	d.object(top, v, "", "")
	j.Version = version
	checked := validator(d)
	checked.job(&j)
	if err := checked.result(); err != nil {
		return Job{}, err
	}
	return j, nil
}

// versionOf reads the version, by which the rest of the document is read. Where it is missing or no number the rest is
// read as of this version.
func versionOf(top object) (int, *fault.Fault) {
	advice := words.Told("Every job states its version; this program writes and reads version 1.")
	for _, e := range top {
		if e.key != "version" {
			continue
		}
		n, ok := e.value.(json.Number)
		if !ok {
			return Version, fault.New(fault.Type, "version", words.Told("{value}, not a number", "value", kindName(e.value)), advice)
		}
		v, err := n.Float64()
		switch {
		case err == nil && v == Version:
			return Version, nil
		case err == nil && v > Version && v == math.Trunc(v):
			return 0, fault.New(fault.Version, "version", words.Told("version {count} is newer than this program", "count", shorten(n.String())),
				words.Told("It reads versions up to {version}: use a newer program, or save the job there in an older version.", "version", Version))
		}
		return 0, fault.New(fault.Version, "version", words.Told("there is no version {count}", "count", shorten(n.String())), advice)
	}
	return Version, &fault.Fault{Code: fault.Missing, Path: "version", Advice: advice}
}

// decoder lays a parsed document over a value that already holds the defaults.
type decoder struct {
	table
	faults fault.List
}

func (d *decoder) add(f *fault.Fault) { d.faults = append(d.faults, f) }

func (d *decoder) wrongType(n node, path, want string) {
	d.add(fault.New(fault.Type, path, words.Told("{value}, not {want}", "value", kindName(n), "want", want), words.Told("Give {want} here.", "want", want)))
}

// value lays one JSON value over v. Path has list indices, pattern has [].
func (d *decoder) value(n node, v reflect.Value, path, pattern string) {
	switch v.Kind() {
	case reflect.Pointer:
		if n == nil {
			v.SetZero()
			return
		}
		if v.IsNil() {
			d.create(v, pattern)
		}
		d.value(n, v.Elem(), path, pattern)
	case reflect.Struct:
		if o, ok := n.(object); ok {
			d.object(o, v, path, pattern)
			return
		}
		d.wrongType(n, path, words.Told("an object in braces"))
	case reflect.Slice:
		d.list(n, v, path, pattern)
	case reflect.String:
		if s, ok := n.(string); ok {
			v.SetString(s)
			return
		}
		d.wrongType(n, path, words.Told("a text in quotation marks"))
	case reflect.Bool:
		if b, ok := n.(bool); ok {
			v.SetBool(b)
			return
		}
		d.wrongType(n, path, words.Told("true or false"))
	default:
		d.number(n, v, path, pattern)
	}
}

func (d *decoder) object(o object, v reflect.Value, path, pattern string) {
	if d.blocks[pattern].OneOf {
		v.SetZero() // one number out of several: the default must not stand beside the given one
	}
	all := d.names[v.Type()]
	seen := make([]bool, len(all))
	for _, e := range o {
		at, of := underBoth(path, pattern, e.key)
		i := slices.Index(all, e.key)
		switch {
		case len(d.faults) > maxFaults:
			return
		case i < 0:
			d.add(unknown(path, e.key, all))
			continue
		case seen[i]:
			d.add(fault.New(fault.Conflict, at, words.Told("appears twice"), words.Told("Keep one of the two.")))
		case at == "version":
		default:
			d.value(e.value, v.Field(i), at, of)
		}
		seen[i] = true
	}
}

func (d *decoder) list(n node, v reflect.Value, path, pattern string) {
	items, ok := n.([]node)
	if !ok {
		d.wrongType(n, path, words.Told("a list in brackets"))
		return
	}
	if most := d.blocks[pattern].MaxItems; len(items) > most {
		d.add(fault.New(fault.Limit, path, words.Told("{count} entries", "count", len(items)), words.Told("Give at most {most}.", "most", most)))
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(items), len(items)))
	for i, item := range items {
		d.fill(v.Index(i), pattern+"[]")
		d.value(item, v.Index(i), fmt.Sprintf("%s[%d]", path, i), pattern+"[]")
	}
}

func (d *decoder) number(n node, v reflect.Value, path, pattern string) {
	text, ok := n.(json.Number)
	if !ok {
		d.wrongType(n, path, words.Told("a number"))
		return
	}
	field := d.fields[pattern]
	x, err := text.Float64()
	if err != nil {
		f := outOfRange(field, path, 0)
		f.Got = shorten(text.String())
		d.add(f)
		return
	}
	if v.Kind() != reflect.Int {
		v.SetFloat(x + 0) // the sum turns a negative zero into zero
		return
	}
	switch {
	case x != math.Trunc(x):
		d.wrongType(n, path, words.Told("a whole number"))
	case x < field.Low || x > field.High:
		d.add(outOfRange(field, path, x))
	default:
		v.SetInt(int64(x))
	}
}

// unknown complains of a field that is not in the job and guesses which one was meant.
func unknown(path, key string, all []string) *fault.Fault {
	best, nearest := "", 1+len(key)/2
	for _, name := range all {
		distance := edits(key, name)
		if key != "" && strings.HasPrefix(name, key+"_") {
			distance = 0 // the unit was left off
		}
		if distance < nearest {
			best, nearest = name, distance
		}
	}
	advice := words.Told("Leave it out. Known here: {names}.", "names", strings.Join(all, ", "))
	if best != "" {
		advice = words.Told("Did you mean {name}? Otherwise leave it out.", "name", best)
	}
	return fault.New(fault.Unknown, under(path, shorten(key)), words.Told("there is no such field"), advice)
}

// edits is the least number of letters to insert, delete or replace that turns a into b (Levenshtein 1966).
func edits(a, b string) int {
	if len(a) > 80 {
		return len(a)
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
