package trial

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// convert writes a column in SI.
func (d *Data) convert(q Quantity, c *Column, i int) error {
	switch {
	case q == Coupon:
		d.Words[q] = c.Words
		if c.Words == nil {
			d.Words[q] = make([]string, len(c.Numbers))
		}
		return nil
	case q == Passed && c.Words != nil:
		v, err := d.verdicts(c)
		d.Numbers[q] = v
		return err
	case c.Numbers == nil:
		return fault.New(fault.Type, fmt.Sprintf("column %d", i+1), words.Told("{name} holds words, not {value}", "name", strconv.Quote(c.Name), "value", q.words()), words.Told("Give numbers."))
	case q == Passed:
		d.Numbers[q] = c.Numbers
		return nil
	}
	u, known := unitNamed(c.Unit)
	if known && u.of != q.dimension() {
		return fault.New(fault.Conflict, fmt.Sprintf("column %d", i+1), words.Told("{unit} is no unit of {value}", "unit", strconv.Quote(c.Unit), "value", q.words()), words.Told("Say its unit."))
	}
	if !known {
		if q.dimension() != share {
			return fault.New(fault.Missing, fmt.Sprintf("column %d", i+1), "",
				words.Told("Say the unit of {name}, in the header as in {name2} or beside the table.", "name", strconv.Quote(c.Name), "name2", strconv.Quote(c.Name+" ["+example(q)+"]")))
		}
		symbol := "1"
		if largest(c.Numbers) > 1 {
			symbol = "%"
		}
		u, _ = unitNamed(symbol)
		d.Notes = append(d.Notes, words.Told("{name} has no unit; it was taken in {value}.", "name", upper(c.Name), "value", map[string]string{"1": words.Told("parts of one"), "%": words.Told("percent")}[u.Symbol]))
	}
	out := make([]float64, len(c.Numbers))
	for r, v := range c.Numbers {
		out[r] = u.SI(v)
	}
	d.Numbers[q] = out
	return nil
}

func example(q Quantity) string {
	return map[dimension]string{duration: "min", mass: "g", temperature: "°C"}[q.dimension()]
}

func largest(v []float64) float64 {
	m := math.Inf(-1)
	for _, x := range v {
		if x > m {
			m = x
		}
	}
	return m
}

// verdicts reads pass and fail.
func (d *Data) verdicts(c *Column) ([]float64, error) {
	out := make([]float64, len(c.Words))
	for i, w := range c.Words {
		switch strings.ToLower(w) {
		case "pass", "passed", "p", "yes", "y", "ok", "true", "1", "good", "ja", "bestanden", "i.o.", "io":
			out[i] = 1
		case "fail", "failed", "f", "no", "n", "nok", "false", "0", "bad", "nein", "n.i.o.", "nio":
			out[i] = 0
		default:
			if !isGap(w) {
				return nil, at(d.Lines[i], fault.Choice, words.Told("{name}: {value} is neither pass nor fail", "name", c.Name, "value", strconv.Quote(shorten(w))), words.Told("Write pass or fail."))
			}
			out[i] = math.NaN()
		}
	}
	return out, nil
}
