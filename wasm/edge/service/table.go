package service

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/api"
	"github.com/drywright/drywright/cure/job"
)

// answered are the columns of the answer, one row for each route of each job.
var answered = []string{"row", "name", "route", "verdict", "ready_s", "deadline_s", "margin_s", "evaporated_kg_per_m2", "energy_J_per_m2", "text", "error"}

// table computes many jobs, as a spreadsheet has them: the first row names numbers of the job by their path
// ("film.wet_coat_kg_per_m2"), each further row is a job that differs from the base in them, an empty cell in nothing. The base
// is the default job, or the worked example that the query names (?base=line). The column "name" names a job. A row that
// cannot be computed has its error in the last column; the others are computed all the same. The rows share the steps that a
// request may take.
func (s *service) table(w http.ResponseWriter, r *http.Request, _ *Route) {
	body, p := s.body(r, "text/csv")
	if p != nil {
		refuse(w, *p)
		return
	}
	base, p := baseJob(r.URL.Query().Get("base"))
	if p != nil {
		refuse(w, *p)
		return
	}
	rows, p := s.rows(body)
	if p != nil {
		refuse(w, *p)
		return
	}
	t := s.speak(r)
	var out bytes.Buffer
	c := csv.NewWriter(&out)
	_ = c.Write(answered) // a buffer takes everything
	share := min(s.config.Limits.Budget, s.config.Limits.Search/(len(rows)-1))
	for i, row := range rows[1:] {
		j, err := rowJob(base, rows[0], row)
		if err != nil {
			_ = c.Write(failed(i+1, "", err.Error()))
			continue
		}
		j.Numerics.StepBudget = min(j.Numerics.StepBudget, share)
		for _, line := range t.row(i+1, j) {
			_ = c.Write(line)
		}
	}
	c.Flush()
	w.Header().Set("Content-Language", t.tag)
	w.Header().Set("Cache-Control", "no-store")
	send(w, http.StatusOK, "text/csv; charset=utf-8", out.Bytes())
}

func baseJob(name string) (job.Job, *problem) {
	if name == "" || name == "default" {
		return job.Default(), nil
	}
	for _, d := range job.Demos() {
		if d.ID == name {
			return d.Job, nil
		}
	}
	return job.Job{}, &problem{Type: "base", Title: "There is no such base", Status: http.StatusBadRequest,
		Detail: "Give one of " + strings.Join(baseNames(), ", ") + "."}
}

// baseNames lists the jobs that a table can be laid over.
func baseNames() []string {
	names := []string{"default"}
	for _, d := range job.Demos() {
		names = append(names, d.ID)
	}
	return names
}

// rows reads the table. A comma, a semicolon or a tab parts the cells, whichever the first row has most of.
func (s *service) rows(body []byte) ([][]string, *problem) {
	first, _, _ := bytes.Cut(body, []byte("\n"))
	d := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(body, []byte("\ufeff"))))
	for _, mark := range []rune{';', '\t'} {
		if bytes.Count(first, []byte(string(mark))) > bytes.Count(first, []byte(string(d.Comma))) {
			d.Comma = mark
		}
	}
	var rows [][]string
	for {
		row, err := d.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, &problem{Type: "not-readable", Title: "The table cannot be read", Status: http.StatusBadRequest, Detail: err.Error()}
		}
		if rows = append(rows, row); len(rows) > s.config.Limits.Rows+1 {
			return nil, &problem{Type: "too-large", Title: "The table is too long", Status: http.StatusRequestEntityTooLarge,
				Detail: fmt.Sprintf("Send at most %d rows at once.", s.config.Limits.Rows)}
		}
	}
	if len(rows) < 2 {
		return nil, &problem{Type: "not-readable", Title: "The table has no rows", Status: http.StatusBadRequest,
			Detail: "The first row names numbers of the job by their path, each further row is a job."}
	}
	seen := map[string]bool{}
	for i, path := range rows[0] {
		if rows[0][i] = strings.TrimSpace(path); rows[0][i] != "" && seen[rows[0][i]] {
			return nil, &problem{Type: "twice", Title: "A column comes twice", Status: http.StatusBadRequest, Detail: fmt.Sprintf("%q heads two columns. Keep one of them.", rows[0][i])}
		}
		seen[rows[0][i]] = true
	}
	return rows, nil
}

// rowJob is the base with the cells of a row put in.
func rowJob(base job.Job, head, row []string) (job.Job, error) {
	j := job.Clone(base)
	rules := job.NewRules()
	for i, path := range head {
		cell := strings.TrimSpace(row[i])
		switch {
		case cell == "" || path == "":
			continue
		case path == "name":
			j.Name = cell
			continue
		}
		if _, known := rules.Field(path); !known {
			return j, fmt.Errorf("%s: the job has no such number", path)
		}
		v, err := strconv.ParseFloat(strings.Replace(cell, ",", ".", 1), 64)
		if err != nil {
			return j, fmt.Errorf("%s: %q is no number", path, cell)
		}
		if err := job.SetNumber(&j, path, v); err != nil {
			return j, err
		}
	}
	return j, nil
}

func failed(row int, name, why string) []string {
	line := make([]string, len(answered))
	line[0], line[1], line[len(line)-1] = strconv.Itoa(row), name, why
	return line
}

// row answers one job with a line for each of its routes.
func (t *tongue) row(number int, j job.Job) [][]string {
	text, err := job.Encode(j)
	if err != nil {
		return [][]string{failed(number, j.Name, err.Error())}
	}
	question := encode(api.Request{Op: api.Predict, Job: text})
	var answer api.Response
	if err := json.Unmarshal(t.answer()(question), &answer); err != nil || !answer.OK {
		why := "the computation broke down"
		if len(answer.Faults) > 0 {
			why = answer.Faults[0].Text
		}
		return [][]string{failed(number, j.Name, why)}
	}
	var lines [][]string
	for i := range answer.Result.Routes {
		r := &answer.Result.Routes[i]
		missing := ""
		if !r.Status.Complete && len(r.Warnings) > 0 {
			missing = r.Warnings[len(r.Warnings)-1].Text
		}
		lines = append(lines, []string{strconv.Itoa(number), answer.Result.JobName, string(r.Kind), string(r.Answer.Verdict), cell(r.Answer.Ready), cell(&r.Answer.Deadline),
			cell(r.Answer.Margin), cell(&r.Amounts.Evaporated), cell(r.Amounts.Energy), r.Answer.Text, missing})
	}
	return lines
}

// cell is a number with as many digits as anyone needs, or nothing.
func cell(v *float64) string {
	if v == nil {
		return ""
	}
	return strconv.FormatFloat(*v, 'g', 7, 64)
}
