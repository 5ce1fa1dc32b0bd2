package api

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/fit"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/words"
	"github.com/drywright/drywright/cure/words/languages"
)

// germanDemo is the German of the core, and the demo with its words as a document.
func germanDemo(t *testing.T) (*words.Words, []byte) {
	t.Helper()
	german, err := languages.Open("de")
	if err != nil {
		t.Fatal(err)
	}
	demo, err := job.Encode(told(job.Demo()))
	if err != nil {
		t.Fatal(err)
	}
	return german, demo
}

// Answers of every group in German hold no text still on its way, no key without words, and no English sentence; refusals neither.
func TestAnswersSpeakGerman(t *testing.T) {
	german, demo := germanDemo(t)
	english := regexp.MustCompile(`"(?:label|help|effect|text|detail|tells|needs|empty|note|advice|got)":"[^"]*\b(the|with|from|than|which|its)\b[^"]*"`)
	study := plan.Study{Route: result.StaticOven}
	for _, q := range []Request{
		{Op: Describe},
		{Op: Variables, Job: demo, Study: &study},
		{Op: Limits, Job: demo, Limits: &plan.LimitsQuestion{Study: study, Limits: []plan.LimitQuestion{{Variable: plan.Dwell}}}},
		{Op: TrialForms, Job: demo},
		{Op: FitTrial, Job: demo, Table: "time [min];temperature [°C];conversion [%]\n5;120;95\n20;100;95\n60;85;94\n2;120;70\n",
			Trial: &fit.Question{Kind: trial.Cure}},
		{Op: ReadTable, Table: "a;b\n1;x\n"},
		{Op: Check, Job: json.RawMessage(`{"version": 1, "film": {"wet_coat_kg_per_m2": 5}, "part": {"back": "no"}, "room": null, "colour": 1}`)},
		{Op: Check, Job: json.RawMessage(`7`)},
		{Op: "dry"},
	} {
		for _, units := range []report.Units{report.SI, report.US} {
			q.Units = units
			request, err := json.Marshal(q)
			if err != nil {
				t.Fatal(err)
			}
			answer := string(Handle(german, request))
			if strings.Contains(answer, `\u0002`) || strings.Contains(answer, "⟦") {
				i := max(strings.Index(answer, `\u0002`), strings.Index(answer, "⟦"))
				t.Errorf("%s: a text without words: %.200s", q.Op, answer[max(0, i-80):])
			}
			// The names of methods and records are published ones; what a job holds is its writer's.
			for _, found := range english.FindAllString(answer, -1) {
				t.Errorf("%s: %.200s", q.Op, found)
			}
		}
	}
}

// A setting that is refused in the middle of a search is told as the form tells it: by the label of its field, in the reader's units.
func TestRefusedSettingsAreWorded(t *testing.T) {
	german, demo := germanDemo(t)
	request, err := json.Marshal(Request{Op: Trials, Job: demo, Units: report.US, Trials: &TrialSet{Study: plan.Study{Route: result.Tunnel},
		Trials: []plan.Trial{{{Variable: plan.LineSpeed, Value: 1}}}}})
	if err != nil {
		t.Fatal(err)
	}
	const want = "Durchlaufofen, Bandgeschwindigkeit: 196,85 ft/min ist mehr als 98,4252 ft/min."
	if answer := string(Handle(german, request)); !strings.Contains(answer, want) {
		t.Errorf("no %q in %s", want, answer)
	}
}
