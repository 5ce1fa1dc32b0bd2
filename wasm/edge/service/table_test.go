package service

import (
	"encoding/csv"
	"strings"
	"testing"
)

// A row that cannot be computed has its error; the others are computed all the same. Semicolons and decimal commas are what
// a spreadsheet writes in much of Europe.
func TestTable(t *testing.T) {
	for _, body := range []string{
		"name,film.wet_coat_kg_per_m2,tunnel.line_speed_m_per_s\nthin,0.12,\nthick,0.2,0.02\nwrong,12,\nno number,abc,\n",
		"\ufeffname;film.wet_coat_kg_per_m2;tunnel.line_speed_m_per_s\r\nthin;0,12;\r\nthick;0,2;0,02\r\nwrong;12;\r\nno number;abc;\r\n",
	} {
		r := asked(t, Config{}, "POST", "/v1/table?base=sleeves", []byte(body), "Content-Type", "text/csv")
		said := text(t, r)
		if r.StatusCode != 200 {
			t.Fatalf("status %d: %s", r.StatusCode, said)
		}
		rows, err := csv.NewReader(strings.NewReader(said)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if len(rows) != 1+3+3+1+1 { // three routes each, and two errors
			t.Fatalf("%d rows:\n%s", len(rows), said)
		}
		ready := map[string]string{}
		for _, row := range rows[1:] {
			ready[row[1]+" "+row[2]] = row[4]
		}
		if thin, thick := ready["thin room"], ready["thick room"]; thin == "" || thick == "" || thin == thick {
			t.Errorf("ready after %q and %q", thin, thick)
		}
		for i, why := range map[int]string{7: "Film, Wet coat: 12000 g/m²", 8: `"abc" is no number`} {
			if last := rows[i][len(rows[i])-1]; !strings.Contains(last, why) {
				t.Errorf("row %d: error %q, want one about %s", i, last, why)
			}
		}
	}
}
