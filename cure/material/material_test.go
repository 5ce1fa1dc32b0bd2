package material

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/words/languages"
	"strings"
)

func part(t *testing.T, id string) job.Part {
	t.Helper()
	for _, p := range Parts() {
		if p.ID == id {
			return p.Part
		}
	}
	t.Fatalf("no part material %s", id)
	return job.Part{}
}

func adhesive(t *testing.T, id string) job.Adhesive {
	t.Helper()
	for _, a := range Adhesives() {
		if a.ID == id {
			return a.Adhesive
		}
	}
	t.Fatalf("no adhesive %s", id)
	return job.Adhesive{}
}

// hoursTo is the time that the dry film takes to the conversion c at a temperature in degrees Celsius.
func hoursTo(t *testing.T, a job.Adhesive, celsius, c float64) float64 {
	t.Helper()
	law, misfit, err := a.Crosslinking.Law()
	if err != nil {
		t.Fatal(err)
	}
	if misfit > 1e-9 {
		t.Errorf("%s: schedule missed by %g", a.Record, misfit)
	}
	return law.IsothermalTime(celsius+273.15, c) / 3600
}

// What the chemistries of the records imply beyond the published rows, which package validate compares.
func TestCureFollowsTheChemistry(t *testing.T) {
	// Room-cured parts are handled the next morning (common practice, no source).
	if got := hoursTo(t, adhesive(t, "pu-isocyanate"), 23, 0.2); got > 24 {
		t.Errorf("pu-isocyanate: tack goes after %.1f h", got)
	}
	// The stated energies are those of the fits, printed to 1 kJ/mol.
	for _, id := range []string{"pu-aziridine", "pu-carbodiimide"} {
		a := adhesive(t, id)
		law, _, err := a.Crosslinking.Law()
		if err != nil || math.Abs(law.E1-a.Crosslinking.ActivationEnergy) > 1e3 {
			t.Errorf("%s: the schedule means %.0f J/mol, the record says %.0f (%v)", a.Record, law.E1,
				a.Crosslinking.ActivationEnergy, err)
		}
	}
	// A methylol finish wants an oven: in a room it is not tack-free within weeks (common practice, no source).
	if got := hoursTo(t, adhesive(t, "acrylic-methylol"), 20, 0.2) / 24; got < 14 {
		t.Errorf("acrylic-methylol: tack-free after %.1f days in a room", got)
	}
	for _, id := range []string{"vinyl-acetate-ethylene", "styrene-butadiene"} {
		if adhesive(t, id).Crosslinking != nil {
			t.Errorf("%s crosslinks", id)
		}
	}
}

// pick copies the members of a record that belong to the material, by their JSON names, as a form does.
func pick(into, record any, names []string) {
	to, from := reflect.ValueOf(into).Elem(), reflect.ValueOf(record).Elem()
	for i := range to.NumField() {
		if slices.Contains(names, to.Type().Field(i).Tag.Get("json")) {
			to.Field(i).Set(from.Field(i))
		}
	}
}

// Every record makes a valid job, in the default job and in every example.
func TestRecordsValidate(t *testing.T) {
	for _, d := range append(job.Demos(), job.Named{ID: "default", Job: job.Default()}) {
		name, base := d.ID, func() job.Job { return d.Job }
		for _, a := range Adhesives() {
			j := base()
			j.Film.Adhesive = a.Adhesive
			if err := job.Validate(j); err != nil {
				t.Errorf("%s in the %s job: %v", a.ID, name, err)
			}
		}
		for _, p := range Parts() {
			j := base()
			pick(&j.Part, &p.Part, p.Sets)
			if err := job.Validate(j); err != nil {
				t.Errorf("%s in the %s job: %v", p.ID, name, err)
			}
		}
		for _, f := range Fibres() {
			j := base()
			pile := *j.Pile
			pick(&pile, &f.Pile, f.Sets)
			j.Pile = &pile
			if err := job.Validate(j); err != nil {
				t.Errorf("%s in the %s job: %v", f.ID, name, err)
			}
		}
	}
}

func TestRecordsAreWhole(t *testing.T) {
	known := map[Caution]bool{}
	for _, c := range Cautions() {
		if strings.Contains(english(c.Text+c.Source), "⟦") || known[c.Key] {
			t.Errorf("caution %q", c.Key)
		}
		known[c.Key] = true
	}
	seen := map[string]bool{}
	check := func(id, record, label, source string, cautions []Caution, sets []string, block any) {
		if id == "" || id != record || seen[id] || label == "" || source == "" || cautions == nil {
			t.Errorf("record %q: %q %q %q %v", id, record, label, source, cautions)
		}
		seen[id] = true
		for _, c := range cautions {
			if !known[c] {
				t.Errorf("%s: caution %q has no words", id, c)
			}
		}
		for _, name := range sets {
			fields := reflect.VisibleFields(reflect.TypeOf(block))
			if !slices.ContainsFunc(fields, func(f reflect.StructField) bool { return f.Tag.Get("json") == name }) {
				t.Errorf("%s sets %s, which is not there", id, name)
			}
		}
	}
	for _, a := range Adhesives() {
		check(a.ID, a.Adhesive.Record, a.Label, a.Source, a.Cautions, nil, a.Adhesive)
		if a.Note == "" {
			t.Errorf("%s does not say how it works", a.ID)
		}
	}
	for _, p := range Parts() {
		check(p.ID, p.Part.Record, p.Label, p.Source, p.Cautions, p.Sets, p.Part)
	}
	seen = map[string]bool{}
	for _, f := range Fibres() {
		check(f.ID, f.Pile.Record, f.Label, f.Source, f.Cautions, f.Sets, f.Pile)
		if !slices.Contains(f.Cautions, FibreDust) {
			t.Errorf("%s without the caution about fibre dust", f.ID)
		}
	}
	// The records that the default job and the demo name are there.
	adhesive(t, job.Demo().Film.Adhesive.Record)
	part(t, job.Demo().Part.Record)
	part(t, job.Default().Part.Record)
	if !seen[job.Demo().Pile.Record] {
		t.Error("the demo's fibre has no record")
	}
}

// The numbers of the examples and of the default job are those of the records that they name. The line's plastic stands more
// than the record's, by its maker's word; the first example and the default leave the fibre's water out.
func TestDemosHoldTheirRecords(t *testing.T) {
	jobs := append(job.Demos(), job.Named{ID: "default", Job: job.Default()})
	for _, d := range jobs {
		a, r0 := d.Job.Film.Adhesive, adhesive(t, d.Job.Film.Adhesive.Record)
		a.Transport.Reason, r0.Transport.Reason = english(a.Transport.Reason), english(r0.Transport.Reason)
		if !reflect.DeepEqual(a, r0) {
			t.Errorf("%s: the adhesive differs from its record", d.ID)
		}
		p, r := d.Job.Part, part(t, d.Job.Part.Record)
		bins := d.ID == "line" || d.ID == "faster"
		if p.Density != r.Density || p.HeatCapacity != r.HeatCapacity || p.Conductivity != r.Conductivity ||
			p.BackEmissivity != r.BackEmissivity || p.LimitTemperature != r.LimitTemperature && !bins {
			t.Errorf("%s: %s differs from its record", d.ID, p.Record)
		}
		for _, f := range Fibres() {
			if pile := d.Job.Pile; f.ID == pile.Record && (pile.FibreDensity != f.Pile.FibreDensity ||
				pile.FibreHeatCapacity != f.Pile.FibreHeatCapacity ||
				pile.Regain != f.Pile.Regain && d.ID != "sleeves" && d.ID != "default") {
				t.Errorf("%s: %s differs from its record", d.ID, pile.Record)
			}
		}
	}
}

// Every record says by which mechanism it dries, and why; picking a fibre fills in its regain.
func TestMechanisms(t *testing.T) {
	skins := 0
	for _, a := range Adhesives() {
		x := a.Adhesive.Transport
		x.Reason = english(x.Reason)
		if len(x.Reason) < 40 || x.Reason[len(x.Reason)-1] != '.' && x.Reason[len(x.Reason)-1] != ')' {
			t.Errorf("%s does not say why it dries as it does: %q", a.ID, x.Reason)
		}
		if x.Mechanism == job.PorousSkin {
			skins++
		}
	}
	if skins == 0 || skins == len(Adhesives()) {
		t.Errorf("%d of %d records dry through a porous skin", skins, len(Adhesives()))
	}
	if len(Fibres()) < 4 {
		t.Error("fewer than four fibres")
	}
	for _, f := range Fibres() {
		if !slices.Contains(f.Sets, "regain_at_65_percent_kg_per_kg") {
			t.Errorf("picking %s does not fill in its regain", f.ID)
		}
	}
}

func english(text string) string { return spoken.Render(text, nil) }

var spoken = languages.English()
