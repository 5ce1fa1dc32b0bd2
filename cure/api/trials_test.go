package api

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/fit"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/words/languages"
)

// send asks and reads the answer.
func send(t *testing.T, q any) Response {
	t.Helper()
	text, err := json.Marshal(q)
	if err != nil {
		t.Fatal(err)
	}
	var r Response
	if err := json.Unmarshal(Handle(languages.English(), text), &r); err != nil {
		t.Fatal(err)
	}
	return r
}

// A table is shown as it was recognised and as the trial takes it, or with the reason why it cannot be taken.
func TestReadTable(t *testing.T) {
	text := "Zeit [min];Gewicht [g]\n0;24,513\n5;\n10;23,702\n"
	r := send(t, Request{Op: ReadTable, Table: text, Trial: &fit.Question{Kind: trial.Weight}})
	if !r.OK || r.Table.Separator != "semicolon" || r.Table.Decimal != "comma" || r.Table.Rows != 3 || len(r.Table.Preview) != 3 {
		t.Fatalf("%+v", r)
	}
	if c := r.Table.Columns[1]; c.Name != "Gewicht" || c.Unit != "g" || c.Kind != trial.Mass {
		t.Errorf("%+v", c)
	}
	u := r.Table.Use
	if u.Fault != nil || u.Rows != 2 || len(u.Columns) != 2 || *u.Columns[0].Values[1] != 600 {
		t.Errorf("%+v", u)
	}
	if r := send(t, Request{Op: ReadTable, Table: text, Trial: &fit.Question{Kind: trial.Cure}}); !r.OK || r.Table.Use.Fault == nil {
		t.Errorf("a weighing as a cure test: %+v", r.Table)
	}
	if r := send(t, Request{Op: ReadTable, Table: text}); !r.OK || r.Table.Use != nil {
		t.Errorf("no kind: %+v", r)
	}
	if r := send(t, Request{Op: ReadTable, Table: "a;b\n1;x\n"}); r.OK || len(r.Faults) != 1 || !strings.HasPrefix(r.Faults[0].Path, "line ") {
		t.Errorf("no table: %+v", r)
	}
}

// A fit is offered, adopted and dropped through the api alone, and the job ends as it began.
func TestFitAdoptDrop(t *testing.T) {
	demo, err := job.Encode(told(job.Demo()))
	if err != nil {
		t.Fatal(err)
	}
	table := "time [min];temperature [°C];conversion [%]\n5;120;95\n20;100;95\n60;85;94\n2;120;70\n"
	r := send(t, Request{Op: FitTrial, Job: demo, Table: table, Trial: &fit.Question{Kind: trial.Cure, Name: "Sheet"}})
	if !r.OK || r.Outcome == nil || r.Outcome.Fit.Text == "" || len(r.Outcome.Adoption.Values) < 2 {
		t.Fatalf("%+v", r.Faults)
	}
	again := send(t, Request{Op: FitTrial, Job: demo, Table: table, Trial: &fit.Question{Kind: trial.Cure, Name: "Sheet"}})
	if a, b := r.Outcome.Fit.Parameters[0].Value, again.Outcome.Fit.Parameters[0].Value; a != b {
		t.Errorf("the same question, %g and %g", a, b)
	}
	adopted := send(t, Request{Op: Adopt, Job: demo, Adoption: &r.Outcome.Adoption})
	if !adopted.OK || len(adopted.Job.Fits) != 1 {
		t.Fatalf("%+v", adopted.Faults)
	}
	with, err := job.Encode(*adopted.Job)
	if err != nil {
		t.Fatal(err)
	}
	twice := send(t, Request{Op: FitTrial, Job: with, Table: table, Trial: &fit.Question{Kind: trial.Cure}})
	if !twice.OK || !strings.Contains(strings.Join(twice.Outcome.Fit.Notes, " "), "“Sheet”") || len(r.Outcome.Fit.Notes) > 0 {
		t.Errorf("the same data twice: %+v", twice.Outcome)
	}
	dropped := send(t, Request{Op: Drop, Job: with, Name: "Sheet"})
	if !dropped.OK {
		t.Fatalf("%+v", dropped.Faults)
	}
	if last, _ := job.Encode(*dropped.Job); string(last) != string(demo) {
		t.Error("the job does not end as it began")
	}
	for _, q := range []Request{{Op: FitTrial, Job: demo, Table: table}, {Op: FitTrial, Table: table, Trial: &fit.Question{Kind: trial.Cure}},
		{Op: Adopt, Job: demo}, {Op: Drop, Job: demo, Name: "none"}, {Op: FitTrial, Job: demo, Table: "x", Trial: &fit.Question{Kind: trial.Cure}}} {
		if r := send(t, q); r.OK || len(r.Faults) == 0 {
			t.Errorf("%s: %+v", q.Op, r)
		}
	}
}

// Every kind of trial comes with its words, the places that the job has, and numbers within their ranges.
func TestTrialForms(t *testing.T) {
	demo, err := job.Encode(told(job.Demo()))
	if err != nil {
		t.Fatal(err)
	}
	r := send(t, Request{Op: TrialForms, Job: demo})
	if !r.OK || len(r.Forms.Kinds) != 4 || r.Forms.MostBytes != trial.MaxBytes {
		t.Fatalf("%+v", r)
	}
	for _, q := range r.Forms.Quantities {
		if q.Label == "" {
			t.Errorf("quantity %q has no words", q.Name)
		}
		for _, u := range q.Units {
			text := "a;b\n1;2\n3;4\n"
			choice := []trial.Choice{{Column: 1, Kind: trial.Quantity(q.Name), Unit: u}}
			if got := send(t, Request{Op: ReadTable, Table: text, Trial: &fit.Question{Kind: trial.Weight, Columns: choice}}); !got.OK ||
				got.Table.Use.Fault != nil && strings.Contains(got.Table.Use.Fault.Text, "is no unit") {
				t.Errorf("%s in %q: %+v", q.Name, u, got.Table)
			}
		}
	}
	for _, k := range r.Forms.Kinds {
		if k.Title == "" || k.Tells == "" || k.Needs == "" || len(k.Quantities) < 2 {
			t.Errorf("%+v", k)
		}
		if places := k.Kind == "weight" || k.Kind == "recorder"; places != (len(k.Routes) == 3) || places != (len(k.Parameters) >= 3) {
			t.Errorf("%s: routes %v, parameters %v", k.Kind, k.Routes, k.Parameters)
		}
		for _, n := range k.Numbers {
			if n.Label == "" || n.Help == "" || n.Empty == "" || n.Default != nil && !(*n.Default >= n.Low && *n.Default <= n.High) {
				t.Errorf("%s: %+v", k.Kind, n)
			}
		}
		for _, p := range k.Parameters {
			if p.Label == "" || p.Text == "" {
				t.Errorf("%s: %+v", k.Kind, p)
			}
		}
	}
}
