package trial

import (
	"bytes"
	"errors"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
	"github.com/drywright/drywright/testdata"
)

// What the weighing in most files is: minutes and grams. Invented.
func plain() (seconds, kilograms []float64) {
	return []float64{0, 300, 600, 1200, 2400}, []float64{24.513e-3, 24.105e-3, 23.702e-3, 22.953e-3, 22.081e-3}
}

// case of a file of testdata/trials: what must come out, or the words of the refusal.
type ugly struct {
	file      string
	kind      Kind
	separator string
	decimal   string
	first     map[Quantity][]float64 // nil: the plain weighing
	words     []string
	note      string // one note holds these words
	refused   []string
}

func uglies() []ugly {
	kelvin := func(c ...float64) []float64 {
		for i := range c {
			c[i] += 273.15
		}
		return c
	}
	return []ugly{
		{file: "01-plain.csv", separator: "comma", decimal: "point"},
		{file: "02-semicolon-decimal-comma.csv", separator: "semicolon", decimal: "comma"},
		{file: "03-bom-crlf.csv", separator: "comma", decimal: "point"},
		{file: "04-blank-lines.csv", separator: "semicolon", decimal: "point", note: "blank lines"},
		{file: "05-units-row.csv", separator: "tab", decimal: "point"},
		{file: "06-clock.csv", separator: "semicolon", decimal: "point"},
		{file: "07-mm-ss.txt", separator: "tab", decimal: "point"},
		{file: "08-over-midnight.csv", separator: "semicolon", decimal: "point", note: "midnight"},
		{file: "10-newest-first.csv", separator: "comma", decimal: "point", note: "order of time"},
		{file: "11-duplicates.csv", separator: "comma", decimal: "point", note: "5 repeated rows"},
		{file: "12-coupons-and-gaps.csv", separator: "semicolon", decimal: "point", note: "1 row with gaps", words: []string{"A", "A", "A", "B", "B"},
			first: map[Quantity][]float64{Time: {0, 1800, 3600, 0, 3600}, Mass: {24.513e-3, 22.1e-3, 21.4e-3, 25.020e-3, 21.9e-3}}},
		{file: "16-thousands.csv", separator: "semicolon", decimal: "comma",
			first: map[Quantity][]float64{Time: {0, 300, 1200, 2400}, Mass: {24.5135e-3, 24.105e-3, 22.9532e-3, 22.0811e-3}}},
		{file: "18-latin-1-preamble.csv", kind: Recorder, separator: "semicolon", decimal: "point", note: "above the names",
			first: map[Quantity][]float64{Time: {0, 10, 20}, AirTemperature: kelvin(120, 119.5, 120.1), PartTemperature: kelvin(21.5, 35.2, 48.9)}},
		{file: "19-utf-16.csv", separator: "tab", decimal: "point"},
		{file: "22-dates.csv", kind: Recorder, separator: "semicolon", decimal: "comma", note: "from the first row",
			first: map[Quantity][]float64{Time: {0, 30, 60}, AirTemperature: kelvin(120, 121.5, 122)}},
		{file: "23-spaces.txt", separator: "spaces", decimal: "point"},
		{file: "25-pass-fail.csv", kind: Cure, separator: "comma", decimal: "point",
			first: map[Quantity][]float64{Time: {300, 180, 600, 1200}, Temperature: kelvin(120, 120, 100, 100), Passed: {1, 0, 0, 1}}},
		{file: "26-fahrenheit.csv", kind: Recorder, separator: "semicolon", decimal: "point", // 248 °F is 120 °C
			first: map[Quantity][]float64{Time: {0, 60, 120}, AirTemperature: kelvin(120, 121.111111, 121.666667), PartTemperature: kelvin(21.111111, 48.888889, 71.111111)}},
		{file: "27-sorption.csv", kind: Sorption, separator: "semicolon", decimal: "point",
			first: map[Quantity][]float64{Humidity: {0.113, 0.328, 0.576, 0.753}, Water: {0.0042, 0.0095, 0.0170, 0.0281}}},
		{file: "28-sep-line.csv", separator: "comma", decimal: "point"},

		{file: "09-reversed-columns.csv", refused: []string{"column 2", "unit"}},
		{file: "13-text-cell.csv", refused: []string{"line 4", `"overload" is no number`}},
		{file: "14-empty.csv", refused: []string{"line 1", "no rows"}},
		{file: "15-decimal-commas-beside-commas.csv", refused: []string{"line 1", "2 names over 4 columns", "semicolons"}},
		{file: "17-ambiguous-thousands.csv", refused: []string{"line 4", `"1.200" could be thousands`}},
		{file: "20-footer.csv", refused: []string{"line 5", "no row of the table"}},
		{file: "21-no-units.csv", refused: []string{"column 1", "unit", "time [min]"}},
		{file: "24-extra-cell.csv", refused: []string{"line 3", "3 cells where the other rows have 2"}},
		{file: "29-negative-time.csv", refused: []string{"line 2", "from spraying"}},
		{file: "30-one-column.csv", refused: []string{"line 1", "two columns"}},
	}
}

func load(t *testing.T, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "trials", name))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// Every file is read right or refused with the line and the reason, and no file of the folder is left out.
func TestUglyFiles(t *testing.T) {
	files, err := os.ReadDir(filepath.Join("..", "..", "testdata", "trials"))
	if err != nil {
		t.Fatal(err)
	}
	cases := uglies()
	for _, f := range files {
		if !slices.ContainsFunc(cases, func(u ugly) bool { return u.file == f.Name() }) {
			t.Errorf("%s has no case", f.Name())
		}
	}
	for _, u := range cases {
		t.Run(u.file, func(t *testing.T) { u.check(t, load(t, u.file)) })
	}
}

func (u ugly) check(t *testing.T, data []byte) {
	if u.kind == "" {
		u.kind = Weight
	}
	table, err := Read(data)
	var d *Data
	if err == nil {
		d, err = table.Use(u.kind, nil)
	}
	if u.refused != nil {
		var f *fault.Fault
		if !errors.As(err, &f) {
			t.Fatalf("not refused: %v", err)
		}
		for _, w := range u.refused {
			if !strings.Contains(f.Error(), w) {
				t.Errorf("the refusal %q does not say %q", f.Error(), w)
			}
		}
		return
	}
	if err != nil {
		t.Fatal(err)
	}
	if table.Separator != u.separator || table.Decimal != u.decimal {
		t.Errorf("separator %s, decimal %s", table.Separator, table.Decimal)
	}
	want := u.first
	if want == nil {
		seconds, kilograms := plain()
		want = map[Quantity][]float64{Time: seconds, Mass: kilograms}
	}
	for q, w := range want {
		got := d.Numbers[q]
		if len(got) != len(w) {
			t.Fatalf("%s: %v, want %v", q, got, w)
		}
		for i := range w {
			if math.Abs(got[i]-w[i]) > 1e-6*math.Max(1e-3, math.Abs(w[i])) { // the digits in the files
				t.Errorf("%s[%d] = %v, want %v", q, i, got[i], w[i])
			}
		}
	}
	if u.words != nil && !slices.Equal(d.Words[Coupon], u.words) {
		t.Errorf("coupons %q", d.Words[Coupon])
	}
	if !strings.Contains(words.English(strings.Join(d.Notes, " ")), u.note) {
		t.Errorf("notes %q lack %q", d.Notes, u.note)
	}
}

// Columns in the wrong order and without names: the time is the one that rises. Units are then said beside the table.
func TestReversedColumnsWithChoices(t *testing.T) {
	table, err := Read(load(t, "09-reversed-columns.csv"))
	if err != nil {
		t.Fatal(err)
	}
	d, err := table.Use(Weight, []Choice{{Column: 1, Unit: "g"}, {Column: 2, Unit: "s"}})
	if err != nil {
		t.Fatal(err)
	}
	seconds, kilograms := plain()
	for i := range seconds {
		if d.Numbers[Time][i] != seconds[i] || math.Abs(d.Numbers[Mass][i]-kilograms[i]) > 1e-12 {
			t.Errorf("row %d: %g s, %g kg", i, d.Numbers[Time][i], d.Numbers[Mass][i])
		}
	}
	for _, c := range []Choice{{Column: 3}, {Column: 1, Unit: "furlong"}} {
		if _, err := table.Use(Weight, []Choice{c}); err == nil {
			t.Errorf("%v is accepted", c)
		}
	}
}

// Ten megabytes are refused with the line at which there is too much; so are too many rows.
func TestTooMuch(t *testing.T) {
	row := []byte("1.5,24.513\n")
	big := bytes.Repeat(row, 10<<20/len(row))
	_, err := Read(big)
	var f *fault.Fault
	if !errors.As(err, &f) || f.Code != fault.Limit || f.Path != "line 95326" { // 1 MiB of 11-byte rows
		t.Errorf("10 MB: %v", err)
	}
	_, err = Read(bytes.Repeat([]byte("1,2\n"), MaxRows+1))
	if !errors.As(err, &f) || f.Code != fault.Limit || f.Path != "line 50001" {
		t.Errorf("too many rows: %v", err)
	}
	if _, err := Read([]byte("a,b\n1,\x00\n")); err == nil {
		t.Error("a zero byte is read")
	}
}

// Whatever the bytes, the reader answers or refuses, and what it answers is whole: columns as long as the rows, no infinity.
func FuzzRead(f *testing.F) {
	tables, err := testdata.Trials()
	if err != nil {
		f.Fatal(err)
	}
	for _, data := range tables {
		f.Add(data)
	}
	f.Add([]byte("[];[]\n1;2\n"))
	f.Add([]byte("\"a\",\"b\n1,2\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		table, err := Read(data)
		if err != nil {
			return
		}
		for _, c := range table.Columns {
			if (c.Words == nil || len(c.Words) != table.Rows()) && len(c.Numbers) != table.Rows() {
				t.Fatalf("column %q has %d numbers, %d words, %d rows", c.Name, len(c.Numbers), len(c.Words), table.Rows())
			}
			for _, v := range c.Numbers {
				if math.IsInf(v, 0) {
					t.Fatal("an infinite number")
				}
			}
		}
		for _, k := range []Kind{Weight, Recorder, Cure, Sorption} {
			d, err := table.Use(k, nil)
			if err != nil {
				continue
			}
			for q, v := range d.Numbers {
				if len(v) != len(d.Lines) {
					t.Fatalf("%s has %d numbers for %d rows", q, len(v), len(d.Lines))
				}
			}
		}
	})
}

// A column that is not to count is taken for nothing, neither for what its header says nor for what is missing.
func TestIgnoredColumn(t *testing.T) {
	table, err := Read([]byte("time [min];mass [g];mass dry [g]\n0;24.5;12\n5;24.1;12\n"))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := table.Use(Weight, nil); err == nil {
		t.Error("two columns of mass were taken")
	}
	d, err := table.Use(Weight, []Choice{{Column: 3, Kind: Ignored}})
	if err != nil {
		t.Fatal(err)
	}
	if m := d.Numbers[Mass]; len(m) != 2 || math.Abs(m[0]-24.5e-3) > 1e-12 { // a gram in kilograms, to rounding
		t.Errorf("masses %v", m)
	}
	if _, err := table.Use(Weight, []Choice{{Column: 2, Kind: Ignored}, {Column: 3, Kind: Ignored}}); err == nil {
		t.Error("an ignored column was taken as the mass")
	}
}
