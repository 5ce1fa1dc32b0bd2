package material

import (
	"encoding/json"
	"math"
	"os"
	"reflect"
	"slices"
	"testing"

	"github.com/drywright/drywright/cure/job"
)

// row is one published row of testdata/material.
type row struct {
	ID      string         `json:"id"`
	Inputs  map[string]any `json:"inputs"`
	Outputs map[string]any `json:"outputs"`
}

func published(t *testing.T) map[string]row {
	t.Helper()
	data, err := os.ReadFile("../../testdata/material/published.json")
	if err != nil {
		t.Fatal(err)
	}
	var list []row
	if err := json.Unmarshal(data, &list); err != nil {
		t.Fatal(err)
	}
	rows := map[string]row{}
	for _, r := range list {
		rows[r.ID] = r
	}
	return rows
}

// list turns a JSON list of numbers into numbers, null into NaN.
func list(v any) []float64 {
	var out []float64
	for _, x := range v.([]any) {
		if f, ok := x.(float64); ok {
			out = append(out, f)
		} else {
			out = append(out, math.NaN())
		}
	}
	return out
}

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

// Rows M01 to M16: density, conductivity, heat capacity. The rows say 10 %, the spread between tables; the records are taken
// from these very rows, so that 0.1 % is asked.
func TestPartsMatchTables(t *testing.T) {
	rows := published(t)
	for id, key := range map[string]string{"pe-hd": "M01", "pp": "M02", "pc": "M03", "pa": "M04", "pvc-u": "M05",
		"ps": "M06", "epdm": "M07",
		"glass": "M09", "aluminium": "M10", "steel": "M11", "stainless": "M12", "mdf": "M13", "plywood": "M14",
		"abs": "M16"} {
		p, out := part(t, id), rows[key].Outputs
		for name, got := range map[string]float64{"rho_kg_m3": p.Density, "k_W_mK": p.Conductivity,
			"cp_J_kgK": p.HeatCapacity} {
			if want := out[name].(float64); math.Abs(got/want-1) > 1e-3 {
				t.Errorf("%s: %s = %g, row %s has %g", id, name, got, key, want)
			}
		}
	}
	if p, r := part(t, "paperboard"),
		list(rows["M40"].Outputs["rho_kg_m3"].([]any)[3]); p.Density < r[0] || p.Density > r[1] {
		t.Errorf("paperboard: %g kg/m3, row M40 has %v", p.Density, r)
	}
}

// Row M20: heat of a plate of 3 mm and thermal diffusivity; the row says 2 %, its digits are three.
func TestArealHeatMatchesM20(t *testing.T) {
	r := published(t)["M20"]
	heat, diffusivity := list(r.Outputs["kJ_m2K"]), list(r.Outputs["diffusivity_1e-7_m2_s"])
	for i, id := range []string{"pe-hd", "pp", "pc", "pa", "pvc-u", "ps", "epdm", "aluminium", "steel", "stainless",
		"mdf", "plywood", "glass"} {
		p := part(t, id)
		if got := 3e-3 * p.Density * p.HeatCapacity / 1e3; math.Abs(got/heat[i]-1) > 0.02 {
			t.Errorf("%s: %.3g kJ/(m2 K), row M20 has %g", id, got, heat[i])
		}
		if got := p.Conductivity / (p.Density * p.HeatCapacity) * 1e7; math.Abs(got/diffusivity[i]-1) > 0.02 {
			t.Errorf("%s: %.3g e-7 m2/s, row M20 has %g", id, got, diffusivity[i])
		}
	}
}

// Row M26: no limit is above the lowest of the published continuous temperatures.
func TestLimitsAreTheLowerOfM26(t *testing.T) {
	r := published(t)["M26"]
	a, b, c := list(r.Outputs["continuous_C_source_A"]), list(r.Outputs["continuous_C_source_B"]),
		list(r.Outputs["continuous_C_source_C"])
	for i, id := range []string{"pe-hd", "pp", "abs", "pc", "pa", "ps", "pvc-u"} {
		lowest := math.Inf(1)
		for _, v := range []float64{a[i], b[i], c[i]} {
			if v < lowest { // false for the NaN of a gap
				lowest = v
			}
		}
		if got := part(t, id).LimitTemperature - 273.15; math.Abs(got-lowest) > 1e-9 {
			t.Errorf("%s: limit %g degC, the lowest of row M26 is %g", id, got, lowest)
		}
	}
}

// Row M35 (common practice, no source): density and film-forming temperature of each kind of polymer; the firm acrylic is
// outside of "flock binder" on purpose. Row T10: solids 45 to 60 %.
func TestAdhesivesLieInTheTrade(t *testing.T) {
	rows := published(t)
	ranges := rows["M35"].Outputs
	solids := list(rows["T10"].Outputs["solids_wt_pct"])
	for id, i := range map[string]int{"acrylic-soft": 0, "acrylic-methylol": 0, "vinyl-acetate-ethylene": 1,
		"styrene-butadiene": 2,
		"pu-isocyanate":     3, "pu-aziridine": 3, "pu-carbodiimide": 3} {
		a := adhesive(t, id)
		density := list(ranges["polymer_density_g_cm3"].([]any)[i])
		if got := a.PolymerDensity / 1e3; got < density[0] || got > density[1] {
			t.Errorf("%s: density %g, row M35 has %v", id, got, density)
		}
		forming := list(ranges["MFFT_C"].([]any)[i])
		if got := a.FilmForming - 273.15; got < forming[0] || got > forming[1] {
			t.Errorf("%s: MFFT %g degC, row M35 has %v", id, got, forming)
		}
	}
	for _, a := range Adhesives() {
		if s := 100 * a.Adhesive.Solids; s < solids[0] || s > solids[1] {
			t.Errorf("%s: %g %% solids, row T10 has %v", a.ID, s, solids)
		}
	}
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

// What the trade and the literature say of each chemistry.
func TestCureFollowsTheChemistry(t *testing.T) {
	rows := published(t)

	// Row K20: activation energy of an uncatalysed urethane reaction, 3 kJ/mol. Row T17 (common practice, no source): handled
	// after 8 to 24 h, fully cured after 3 to 7 days in a room.
	pu := adhesive(t, "pu-isocyanate")
	if want := list(rows["K20"].Outputs["Ea_kJ_mol"])[0]; math.Abs(pu.Crosslinking.ActivationEnergy/1e3-want) > 3 {
		t.Errorf("pu-isocyanate: %g J/mol, row K20 has %g kJ/mol", pu.Crosslinking.ActivationEnergy, want)
	}
	days := list(rows["T17"].Outputs["full_days"])
	if got := hoursTo(t, pu, 23, 0.95) / 24; got < days[0] || got > days[1]*1.001 {
		t.Errorf("pu-isocyanate: cured after %.1f days, row T17 has %v", got, days)
	}
	if got := hoursTo(t, pu, 23, 0.2); got > 24 {
		t.Errorf("pu-isocyanate: tack goes after %.1f h", got)
	}

	// Row K43 (from memory): aziridine 1 to 3 days ambient, 5 to 15 min at 60 to 100 degC, factor 2.
	az := adhesive(t, "pu-aziridine")
	days, minutes := list(rows["K43"].Outputs["ambient_full_days"]), list(rows["K43"].Outputs["oven_min"])
	if got := hoursTo(t, az, 23, 0.95) / 24; got < days[0] || got > days[1] {
		t.Errorf("pu-aziridine: cured after %.1f days, row K43 has %v", got, days)
	}
	if got := hoursTo(t, az, 80, 0.95) * 60; got < minutes[0] || got > minutes[1] {
		t.Errorf("pu-aziridine: cured after %.1f min at 80 degC, row K43 has %v", got, minutes)
	}

	// Row K44 (from memory): carbodiimide a few minutes at 80 to 120 degC, several days ambient.
	cd := adhesive(t, "pu-carbodiimide")
	if got := hoursTo(t, cd, 23, 0.95) / 24; got < 3 || got > 14 {
		t.Errorf("pu-carbodiimide: cured after %.1f days", got)
	}
	if got := hoursTo(t, cd, 100, 0.95) * 60; got < 2 || got > 10 {
		t.Errorf("pu-carbodiimide: cured after %.1f min at 100 degC", got)
	}
	// The stated energies are those of the fits, printed to 1 kJ/mol.
	for _, a := range []job.Adhesive{az, cd} {
		law, _, err := a.Crosslinking.Law()
		if err != nil || math.Abs(law.E1-a.Crosslinking.ActivationEnergy) > 1e3 {
			t.Errorf("%s: the schedule means %.0f J/mol, the record says %.0f (%v)", a.Record, law.E1,
				a.Crosslinking.ActivationEnergy, err)
		}
	}

	// Row K39: N-methylol finish cured at 150 degC in 3 min; in a room it is not tack-free within weeks.
	nma := adhesive(t, "acrylic-methylol")
	if got := hoursTo(t, nma, 150, 0.95) * 60; math.Abs(got-3) > 1e-6 {
		t.Errorf("acrylic-methylol: cured after %.2f min at 150 degC", got)
	}
	if got := hoursTo(t, nma, 20, 0.2) / 24; got < 14 {
		t.Errorf("acrylic-methylol: tack-free after %.1f days in a room", got)
	}
	for _, id := range []string{"vinyl-acetate-ethylene", "styrene-butadiene"} {
		if adhesive(t, id).Crosslinking != nil {
			t.Errorf("%s crosslinks", id)
		}
	}
}

// Row T06: fibre diameters from dtex and density, and fibres per square millimetre, 2 %. Rows T04, T08: the default pile.
func TestFibresMatchT06(t *testing.T) {
	rows := published(t)
	r := rows["T06"]
	dtex, diameters, counts := list(r.Inputs["dtex"]), list(r.Outputs["diameter_um"]), list(r.Outputs["n_at_10pct"])
	for _, f := range Fibres() {
		if f.ID != "polyamide" {
			continue
		}
		for i, d := range dtex {
			area := d * 1e-7 / f.Pile.FibreDensity // dtex is grams per 10 km
			if got := math.Sqrt(4*area/math.Pi) * 1e6; math.Abs(got/diameters[i]-1) > 0.02 {
				t.Errorf("%g dtex: %.1f um, row T06 has %g", d, got, diameters[i])
			}
			if got := 0.1 / (area * 1e6); math.Abs(got/counts[i]-1) > 0.02 {
				t.Errorf("%g dtex: %.0f per mm2, row T06 has %g", d, got, counts[i])
			}
		}
		if cover := 1 - f.Pile.Porosity; cover > rows["T04"].Outputs["area_fraction_max"].(float64) {
			t.Errorf("the default pile covers %g", cover)
		}
	}
	if len(Fibres()) < 4 {
		t.Error("fewer than four fibres")
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
		if c.Text == "" || c.Source == "" || known[c.Key] {
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
		if a := d.Job.Film.Adhesive; !reflect.DeepEqual(a, adhesive(t, a.Record)) {
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

// Row T26 (from memory): regain of polyamide at 65 %, 0.5 % as the row says; trade facts (textile handbooks, from memory) for
// the others.
func TestFibresHoldTheirStandardRegain(t *testing.T) {
	r := published(t)["T26"]
	humidities, regains := list(r.Inputs["RH_pct"]), list(r.Outputs["regain_pct"])
	at65 := regains[slices.Index(humidities, 65)]
	for id, within := range map[string][2]float64{"polyamide": {at65 - 0.5, at65 + 0.5}, "polyester": {0.4, 0.4}, "viscose": {11, 13},
		"acrylic": {1.5, 1.5}} {
		i := slices.IndexFunc(Fibres(), func(f Fibre) bool { return f.ID == id })
		f := Fibres()[i]
		if got := 100 * f.Pile.Regain; got < within[0]-1e-9 || got > within[1]+1e-9 {
			t.Errorf("%s: %g %%, not within %v", id, got, within)
		}
		if !slices.Contains(f.Sets, "regain_at_65_percent_kg_per_kg") {
			t.Errorf("picking %s does not fill in its regain", id)
		}
	}
}

// Row LTX-01 (Kiil 2006): vapour diffusivity of the skin, a factor of 1.4 either way, and the closing fraction, 0.03. Every
// record says by which mechanism it dries, and why.
func TestMechanisms(t *testing.T) {
	out := published(t)["LTX-01"].Outputs
	skins := 0
	for _, a := range Adhesives() {
		x := a.Adhesive.Transport
		if len(x.Reason) < 40 || x.Reason[len(x.Reason)-1] != '.' && x.Reason[len(x.Reason)-1] != ')' {
			t.Errorf("%s does not say why it dries as it does: %q", a.ID, x.Reason)
		}
		if x.Mechanism != job.PorousSkin {
			continue
		}
		skins++
		if r := x.SkinDiffusion / out["D_eff_vapour_m2_s"].(float64); r < 1/1.4 || r > 1.4 {
			t.Errorf("%s: %g m2/s", a.ID, x.SkinDiffusion)
		}
		if d := a.Adhesive.Closing - out["critical_polymer_vol_frac"].(float64); math.Abs(d) > 0.03 {
			t.Errorf("%s: closes at %g", a.ID, a.Adhesive.Closing)
		}
	}
	if skins == 0 || skins == len(Adhesives()) {
		t.Errorf("%d of %d records dry through a porous skin", skins, len(Adhesives()))
	}
}
