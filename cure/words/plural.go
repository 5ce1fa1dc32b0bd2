package words

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// rule is one plural category with its condition: alternatives of relations that hold together.
type rule struct {
	category string
	any      [][]relation
}

// relation compares an operand of a number, or its remainder, with ranges.
type relation struct {
	operand byte // n, i, v, w, f, t, e or c of Unicode Technical Standard 35, part 3
	modulo  float64
	not     bool
	ranges  [][2]float64
}

// pluralRules reads the cardinal rules of CLDR (Unicode Technical Standard 35, part 3, "Plural rules syntax"); their samples, after
// @, are left out. Without rules, "one" is i = 1 and v = 0, as in most languages of Europe.
func pluralRules(texts map[string]string) ([]rule, error) {
	if len(texts) == 0 {
		texts = map[string]string{"one": "i = 1 and v = 0"}
	}
	var rules []rule
	for _, category := range []string{"zero", "one", "two", "few", "many"} {
		text, given := texts[category]
		if !given {
			continue
		}
		r := rule{category: category}
		condition, _, _ := strings.Cut(text, "@")
		for _, alternative := range strings.Split(condition, " or ") {
			var all []relation
			for _, one := range strings.Split(alternative, " and ") {
				c, err := readRelation(one)
				if err != nil {
					return nil, fmt.Errorf("words: plural rule %q: %w", text, err)
				}
				all = append(all, c)
			}
			r.any = append(r.any, all)
		}
		rules = append(rules, r)
	}
	return rules, nil
}

// readRelation reads "n % 10 = 2..4,7" and its kind.
func readRelation(text string) (relation, error) {
	left, right, equal := strings.Cut(text, "=")
	left = strings.TrimSpace(left)
	r := relation{not: strings.HasSuffix(left, "!")}
	operand, modulo, divided := strings.Cut(strings.TrimSuffix(left, "!"), "%")
	operand = strings.TrimSpace(operand)
	if !equal || len(operand) != 1 || !strings.Contains("nivwftec", operand) {
		return r, fmt.Errorf("%q compares nothing", strings.TrimSpace(text))
	}
	r.operand = operand[0]
	var err error
	if divided {
		if r.modulo, err = strconv.ParseFloat(strings.TrimSpace(modulo), 64); err != nil {
			return r, err
		}
	}
	for _, span := range strings.Split(right, ",") {
		low, high, two := strings.Cut(strings.TrimSpace(span), "..")
		if !two {
			high = low
		}
		var ends [2]float64
		if ends[0], err = strconv.ParseFloat(low, 64); err == nil {
			ends[1], err = strconv.ParseFloat(high, 64)
		}
		if err != nil {
			return r, err
		}
		r.ranges = append(r.ranges, ends)
	}
	return r, nil
}

// category is a number as it is printed and its plural category; of what is no number, nothing.
func (w *Words) category(number any) (exact, category string) {
	switch number.(type) {
	case int, float64:
	default:
		return "", ""
	}
	exact = digits(number)
	for _, r := range w.plural {
		for _, all := range r.any {
			if !slices.ContainsFunc(all, func(c relation) bool { return !c.holds(exact) }) {
				return exact, r.category
			}
		}
	}
	return exact, "other"
}

func (r relation) holds(number string) bool {
	x := operand(number, r.operand)
	if r.modulo > 0 {
		x = math.Mod(x, r.modulo)
	}
	whole := x == math.Trunc(x)
	within := slices.ContainsFunc(r.ranges, func(s [2]float64) bool { return whole && x >= s[0] && x <= s[1] })
	return within != r.not
}

// operand is a property of a number as it is printed: its size, its whole part, the count or value of its decimals. No number
// here is printed with trailing zeros or as a power of ten.
func operand(number string, name byte) float64 {
	number = strings.TrimPrefix(number, "-")
	whole, decimals, _ := strings.Cut(number, ".")
	text := "0"
	switch name {
	case 'n':
		text = number
	case 'i':
		text = whole
	case 'v', 'w':
		return float64(len(decimals))
	case 'f', 't':
		text += decimals
	}
	x, _ := strconv.ParseFloat(text, 64) // digits that this package printed
	return x
}

// digits prints a number in full, without trailing zeros.
func digits(number any) string {
	switch v := number.(type) {
	case int:
		return strconv.Itoa(v)
	case float64:
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	return ""
}
