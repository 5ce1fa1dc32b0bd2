package job

import (
	"reflect"
	"strings"
	"testing"
)

const (
	dryPath = "film.adhesive.dry_diffusivity_at_25C_m2_per_s"
	ovenX   = "static_oven.transfer.multiplier"
	factorA = "film.adhesive.crosslinking.frequency_factor_per_s"
	energyE = "film.adhesive.crosslinking.activation_energy_J_per_mol"
)

func fitOf(name string, values ...FittedValue) Fit {
	return Fit{Name: name, Kind: WeightFit, Values: values, Correlations: []FitCorrelation{}, Before: []FitBefore{}}
}

// Adopting leaves the job that was given alone, puts every number in place, keeps through a document, and dropping gives the
// first job back to the last byte.
func TestAdoptAndDrop(t *testing.T) {
	before := Demo()
	kept := Clone(before)
	f := fitOf("Coupons of May", FittedValue{Path: dryPath, Value: 3e-12, Logarithmic: true}, FittedValue{Path: ovenX, Value: 0.7, Logarithmic: true})
	j, err := Adopt(before, f)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(before, kept) {
		t.Error("adopting changed the job that was given")
	}
	if j.Film.Adhesive.DryDiffusion != 3e-12 || *j.StaticOven.Transfer.Multiplier != 0.7 {
		t.Error("the numbers are not in place")
	}
	text, err := Encode(j)
	if err != nil {
		t.Fatal(err)
	}
	back, err := Decode(text)
	if err != nil || !reflect.DeepEqual(back, j) {
		t.Fatalf("the document came back changed: %v", err)
	}
	if r := Resting(&back); len(r) != 2 || r[0].Path != dryPath || r[0].Fit.Name != "Coupons of May" || !strings.HasPrefix(english(r[0].Field.Label), "Diffusivity") {
		t.Errorf("resting: %+v", r)
	}
	dropped, err := Drop(back, "Coupons of May")
	if err != nil {
		t.Fatal(err)
	}
	first, _ := Encode(before)
	if last, _ := Encode(dropped); string(first) != string(last) {
		t.Error("dropping does not bring back what was there")
	}
	for _, err := range []error{second(Adopt(j, f)), second(Drop(j, "another")), second(Adopt(before, fitOf("x", FittedValue{Path: "part.colour"}))),
		second(Adopt(before, fitOf("x", FittedValue{Path: "tunnel.zones[9].transfer.multiplier", Value: 1}))),
		second(Adopt(before, fitOf("x", FittedValue{Path: dryPath, Value: 1})))} {
		if err == nil {
			t.Error("not refused")
		}
	}
}

func second(_ Job, err error) error { return err }

// A cure fit takes the schedule out of the way, and gives a job without a crosslinker one; a sorption fit turns the isotherm to the
// one that was fitted. All of it comes back.
func TestAdoptEnables(t *testing.T) {
	cure := fitOf("Rub tests", FittedValue{Path: factorA, Value: 2e9, Logarithmic: true}, FittedValue{Path: energyE, Value: 85e3})
	plain := Demo()
	plain.Film.Adhesive.Crosslinking = nil
	for _, before := range []Job{Demo(), plain} {
		j, err := Adopt(before, cure)
		if err != nil {
			t.Fatal(err)
		}
		if c := j.Film.Adhesive.Crosslinking; len(c.Schedule.Pairs) != 0 || c.FrequencyFactor != 2e9 || c.ActivationEnergy != 85e3 {
			t.Errorf("%+v", c)
		}
		if back, err := Drop(j, "Rub tests"); err != nil || !reflect.DeepEqual(back.Film, before.Film) {
			t.Errorf("%v: the crosslinking does not come back", err)
		}
	}
	before := Demo()
	j, err := Adopt(before, fitOf("Salts", FittedValue{Path: "film.adhesive.sorption.chi", Value: 2.4}))
	if err != nil {
		t.Fatal(err)
	}
	if s := j.Film.Adhesive.Sorption; s.Isotherm != IsothermFloryHuggins || s.Chi != 2.4 {
		t.Errorf("%+v", s)
	}
	if back, err := Drop(j, "Salts"); err != nil || !reflect.DeepEqual(back.Film, before.Film) {
		t.Errorf("%v: the isotherm does not come back", err)
	}
}

// Two fits of one number, dropped in either order, end where it began; a number changed by hand stays and rests on nothing.
func TestDropInAnyOrder(t *testing.T) {
	start := Demo()
	one, err := Adopt(start, fitOf("one", FittedValue{Path: dryPath, Value: 3e-12}))
	if err != nil {
		t.Fatal(err)
	}
	two, err := Adopt(one, fitOf("two", FittedValue{Path: dryPath, Value: 2e-12}))
	if err != nil {
		t.Fatal(err)
	}
	for _, order := range [][2]string{{"one", "two"}, {"two", "one"}} {
		j, err := Drop(two, order[0])
		if err != nil {
			t.Fatal(err)
		}
		if want := map[string]float64{"one": 2e-12, "two": 3e-12}[order[0]]; j.Film.Adhesive.DryDiffusion != want {
			t.Errorf("without %s: %g", order[0], j.Film.Adhesive.DryDiffusion)
		}
		if j, err = Drop(j, order[1]); err != nil || j.Film.Adhesive.DryDiffusion != start.Film.Adhesive.DryDiffusion {
			t.Errorf("%v: %v ends at %g", order, err, j.Film.Adhesive.DryDiffusion)
		}
	}
	two.Film.Adhesive.DryDiffusion = 7e-12
	if r := Resting(&two); len(r) != 0 {
		t.Errorf("a number changed by hand rests on %q", r[0].Fit.Name)
	}
	if j, err := Drop(two, "two"); err != nil || j.Film.Adhesive.DryDiffusion != 7e-12 {
		t.Errorf("%v: the number changed by hand is lost", err)
	}
}

// Documents in which a fit contradicts itself are refused with its place.
func TestFitsAreChecked(t *testing.T) {
	low := 2.0
	j := Demo()
	j.Fits = []Fit{fitOf("a", FittedValue{Path: "film.colour", Value: 1}), fitOf("a", FittedValue{Path: dryPath, Value: 1, Low: &low})}
	err := Validate(j)
	if err == nil {
		t.Fatal("not refused")
	}
	for _, want := range []string{"fits[0].values[0].path", "fits[1].name", "fits[1].values[0]"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("no word of %s in %v", want, err)
		}
	}
	j.Fits = []Fit{fitOf("b", FittedValue{Path: dryPath, Value: j.Film.Adhesive.DryDiffusion})}
	j.Fits[0].Before = []FitBefore{{Path: dryPath, JSON: "{"}}
	if _, err := Drop(j, "b"); err == nil {
		t.Error("a broken note is put back")
	}
}
