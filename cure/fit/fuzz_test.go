package fit

import (
	"encoding/json"
	"errors"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/testdata"
)

// FuzzFit fits cure and sorption to whatever stands in a table. It ends with numbers that can be written down and adopted, or with a
// fault. The other kinds run the film for each trial setting, too slowly for this; their tables are trial.FuzzRead's.
func FuzzFit(f *testing.F) {
	tables, err := testdata.Trials()
	if err != nil {
		f.Fatal(err)
	}
	for _, data := range tables {
		f.Add(data, false)
		f.Add(data, true)
	}
	f.Add([]byte("temp [C];time [min];conversion\n80;60;0.9\n100;20;0.9\n120;6;0.91\n"), false)
	f.Add([]byte("temp [C];time [min];result\n80;60;pass\n80;20;fail\n120;6;pass\n120;2;fail\n"), false)
	f.Add([]byte("RH [%];water [g/kg]\n10;4\n30;9\n50;15\n70;24\n90;51\n"), true)
	demo := job.Demo()
	f.Fuzz(func(t *testing.T, table []byte, sorption bool) {
		q := Question{Kind: trial.Cure, Name: "Fuzzed"}
		if sorption {
			q.Kind = trial.Sorption
		}
		o, err := Run(demo, table, q)
		if err != nil {
			var one *fault.Fault
			var list fault.List
			if !errors.As(err, &one) && !errors.As(err, &list) {
				t.Fatalf("%T: %v", err, err)
			}
			return
		}
		if _, err := json.Marshal(o); err != nil {
			t.Errorf("the outcome cannot be written down: %v", err)
		}
		adopted, err := job.Adopt(demo, o.Adoption)
		if err != nil {
			return // a number at the end of its range, told as a fault
		}
		if err := job.Validate(adopted); err != nil {
			t.Errorf("adopted, the job is refused: %v", err)
		}
	})
}
