package job

import (
	"slices"

	"github.com/drywright/drywright/cure/unit"
	"github.com/drywright/drywright/cure/words"
)

// Field describes one number, text, choice or switch of a Job. All numbers are in the SI unit Unit. Its words are texts on their way
// (package words), made from its path.
type Field struct {
	Path      string     `json:"path"` // pattern: the JSON path with [] for every list index ("tunnel.zones[].length_m")
	Kind      FieldKind  `json:"kind"`
	Label     string     `json:"label"`
	Group     string     `json:"group"` // first word of the path; "document" for the document's own fields
	Unit      string     `json:"unit"`
	Display   Display    `json:"display"`    // as a workshop outside the United States reads it
	USDisplay Display    `json:"us_display"` // as a workshop in the United States reads it
	Low       float64    `json:"low"`        // validation refuses numbers outside Low..High
	High      float64    `json:"high"`       // for a text: the greatest number of characters
	UsualLow  float64    `json:"usual_low"`  // the trade stays inside UsualLow..UsualHigh
	UsualHigh float64    `json:"usual_high"`
	Default   float64    `json:"default"`
	Text      string     `json:"default_text"`
	On        bool       `json:"default_on"`
	Choices   []Choice   `json:"choices"`
	Integer   bool       `json:"integer"`
	Optional  bool       `json:"optional"`  // null is accepted
	Absent    bool       `json:"absent"`    // an optional number that is null by default; Default is what to offer then
	UsedWhen  *Condition `json:"used_when"` // null: always
	Source    string     `json:"source"`    // where default and ranges come from
	Effect    string     `json:"effect"`    // what happens when it is raised
	Help      string     `json:"help"`      // what it is
}

// FieldKind is the kind of a field's value.
type FieldKind string

// The kinds of field.
const (
	KindNumber FieldKind = "number"
	KindText   FieldKind = "text"
	KindChoice FieldKind = "choice"
	KindSwitch FieldKind = "switch"
)

// Display is a unit to show a number in: shown = SI * Factor + Offset, with Digits significant digits.
type Display struct {
	Dimension unit.Dimension `json:"dimension"` // whose units may be typed in its place; empty: none but Symbol
	Symbol    string         `json:"symbol"`
	Factor    float64        `json:"factor"`
	Offset    float64        `json:"offset"`
	Digits    int            `json:"digits"`
}

// Choice is one accepted word of a choice.
type Choice struct {
	Value string `json:"value"`
	Label string `json:"label"`
}

// Condition says that a field or block has an effect only while the field at Path, beside it, is one of In: a word of a
// choice, "true" or "false" of a switch, "null" of an optional number that is not given.
type Condition struct {
	Path string   `json:"path"`
	In   []string `json:"in"`
}

// Block describes one object or list of a Job.
type Block struct {
	Path     string `json:"path"`
	Label    string `json:"label"`
	Help     string `json:"help"`
	Optional bool   `json:"optional"`  // null is accepted and means: there is none
	Absent   bool   `json:"absent"`    // an optional block that is null by default
	OneOf    bool   `json:"one_of"`    // exactly one of its fields is given
	List     bool   `json:"list"`      // a list of blocks
	MinItems int    `json:"min_items"` // of a list
	MaxItems int    `json:"max_items"`
	Items    int    `json:"items"` // how many a list has by default

	UsedWhen *Condition `json:"used_when"` // null: always
}

// Fields is the one table of everything that can be set in a Job, group by group.
func Fields() []Field {
	all := entries()
	for i := range all {
		all[i] = all[i].worded()
	}
	return all
}

// entries is Fields without the words, which take most of the time and of the memory and are not needed to check a job.
func entries() []Field {
	all := slices.Concat(
		documentFields(), filmFields(), adhesiveFields(), transportFields(), sorptionFields(), coSolventFields(),
		crosslinkingFields(), vitrificationFields(), pileFields(), partFields(), spotFields(),
		workshopFields(), spaceFields(), heatingFields(), dehumidifierFields(), roomFields(), staticOvenFields(),
		chamberFields(), tunnelFields(), zoneFields(), infraredFields(), zoneAirFields(),
		targetFields(), tariffFields(), costFields(), numericsFields(), fitFields(),
	)
	for i := range all {
		all[i].complete()
	}
	return all
}

// complete fills in what follows from the rest of the entry: kind, group and the display of numbers without a unit.
func (f *Field) complete() {
	switch {
	case f.Kind != "":
	case f.Choices != nil:
		f.Kind = KindChoice
	default:
		f.Kind = KindNumber
	}
	if f.Group == "" {
		f.Group = firstWord(f.Path)
	}
	if f.Choices == nil {
		f.Choices = []Choice{}
	}
	if f.Kind == KindNumber && f.Display.Factor == 0 {
		*f = f.in(plain())
	}
}

// worded gives a field the words of its path.
func (f Field) worded() Field {
	f.Label, f.Help, f.Effect = f.label(), fieldWord(f.Path, "help"), fieldWord(f.Path, "effect")
	if f.Kind == KindText && f.Source == "" {
		f.Source = freeText
	}
	if f.Source == "" {
		f.Source = fieldWord(f.Path, "source")
	} else {
		f.Source = words.Key("sources." + f.Source)
	}
	f.Choices = slices.Clone(f.Choices) // entries are shared, also by those who ask at the same time
	for i := range f.Choices {
		f.Choices[i].Label = f.choice(f.Choices[i].Value)
	}
	return f
}

func (f *Field) label() string { return fieldWord(f.Path, "label") }

// choice is the label of a word that a choice accepts.
func (f *Field) choice(value string) string { return fieldWord(f.Path, "choices."+value) }

func fieldWord(path, word string) string { return words.Key("fields." + path + "." + word) }

// worded gives a block the words of its path.
func (b Block) worded() Block {
	b.Label, b.Help = b.word("label"), b.word("help")
	return b
}

func (b *Block) word(word string) string {
	if b.Path == "" {
		return words.Key("blocks.job." + word)
	}
	return words.Key("blocks." + b.Path + "." + word)
}

func firstWord(path string) string {
	for i, c := range path {
		if c == '.' || c == '[' {
			return path[:i]
		}
	}
	return path
}

// choices lists the words that a choice accepts.
func choices[T ~string](values ...T) []Choice {
	all := make([]Choice, len(values))
	for i, v := range values {
		all[i] = Choice{Value: string(v)}
	}
	return all
}
