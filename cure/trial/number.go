package trial

import (
	"math"
	"strconv"
	"strings"
)

// kindOf says what one cell is, under a decimal mark.
type kindOf int

const (
	word kindOf = iota
	number
	clock     // hh:mm, hh:mm:ss or a date with a time
	gap       // a mark of absence
	ambiguous // "1.234" where the point may group thousands
)

// gaps are what instruments and spreadsheets write where there is no value.
func isGap(s string) bool {
	switch strings.ToLower(s) {
	case "", "-", "–", "—", "n/a", "na", "nan", "#n/a", "#nv", "null", "none", "---":
		return true
	}
	return false
}

// parse reads one cell. decimal is '.' or ','; the value of a clock is in seconds.
func parse(cell string, decimal byte) (float64, kindOf) {
	s := strings.TrimSpace(cell)
	if len(s) >= 2 && s[0] == '"' && s[len(s)-1] == '"' {
		s = strings.TrimSpace(s[1 : len(s)-1])
	}
	if isGap(s) {
		return math.NaN(), gap
	}
	if v, ok := parseClock(s, decimal); ok {
		return v, clock
	}
	s = strings.ReplaceAll(strings.ReplaceAll(s, "\u2212", "-"), "\u00a0", " ") // typographic minus, no-break space
	group := byte(',')
	if decimal == ',' {
		group = '.'
	}
	whole, fraction, hasFraction := strings.Cut(s, string(decimal))
	if strings.ContainsRune(fraction, rune(group)) || strings.ContainsAny(fraction, " '") {
		return 0, word
	}
	digits, grouped := ungroup(whole, group)
	if grouped == 0 {
		return 0, word
	}
	if grouped == 2 && !hasFraction && strings.Count(whole, string(group)) == 1 {
		return 0, ambiguous
	}
	text := digits
	if hasFraction {
		text += "." + fraction
	}
	if !numeric(text) {
		return 0, word
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsInf(v, 0) || math.IsNaN(v) {
		return 0, word
	}
	return v, number
}

// numeric keeps out what ParseFloat takes and nobody writes in a table: "inf", "0x1p-2", "1_000".
func numeric(s string) bool {
	digit := false
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c >= '0' && c <= '9':
			digit = true
		case c == '.' || c == '+' || c == '-' || (c == 'e' || c == 'E') && digit:
		default:
			return false
		}
	}
	return digit
}

// ungroup removes the marks between thousands. It returns 0 where the text is no grouped number, 1 where there were no
// groups or only spaces and apostrophes, 2 where the other decimal mark grouped.
func ungroup(s string, group byte) (string, int) {
	for _, g := range []string{string(group), " ", "'", "’", "\u202f"} {
		if !strings.Contains(s, g) {
			continue
		}
		parts := strings.Split(s, g)
		if head := strings.TrimLeft(parts[0], "+-"); len(head) < 1 || len(head) > 3 {
			return s, 0
		}
		for _, p := range parts[1:] {
			if len(p) != 3 || !numeric(p) || strings.ContainsAny(p, ".eE+-") {
				return s, 0
			}
		}
		if g == string(group) {
			return strings.Join(parts, ""), 2
		}
		return strings.Join(parts, ""), 1
	}
	return s, 1
}

// parseClock reads h:mm, h:mm:ss, h:mm:ss.f and dates before them (2026-03-01 14:05, 01.03.2026 14:05:00, ISO with a T) as
// seconds; dates count from 1970. Dates with slashes are not read: day and month could be either.
func parseClock(s string, decimal byte) (float64, bool) {
	days := 0.0
	if i := strings.IndexAny(s, " T"); i >= 8 {
		d, ok := parseDate(s[:i])
		if !ok {
			return 0, false
		}
		days, s = d, strings.TrimSuffix(strings.TrimSpace(s[i+1:]), "Z")
	}
	parts := strings.Split(s, ":")
	if len(parts) < 2 || len(parts) > 3 {
		return 0, false
	}
	total := 0.0
	for i, p := range parts {
		last := i == len(parts)-1
		if last && len(parts) == 3 {
			p = strings.Replace(p, string(decimal), ".", 1)
		} else if strings.ContainsAny(p, ".,") {
			return 0, false
		}
		if p == "" || p[0] == '+' || p[0] == '-' || !numeric(p) || strings.ContainsAny(p, "eE") {
			return 0, false
		}
		v, err := strconv.ParseFloat(p, 64)
		if err != nil || i > 0 && v >= 60 || v > 1e5 {
			return 0, false
		}
		total = total*60 + v
	}
	if len(parts) == 2 {
		total *= 60
	}
	return days*86400 + total, true
}

// parseDate returns days since 1970-01-01 of YYYY-MM-DD or DD.MM.YYYY, by the algorithm of the civil calendar (Fliegel and Van
// Flandern 1968, Communications of the ACM 11, 657, in the shifted-year form; from memory).
func parseDate(s string) (float64, bool) {
	var y, m, d int
	var err [3]error
	if p := strings.Split(s, "-"); len(p) == 3 && len(p[0]) == 4 {
		y, err[0] = strconv.Atoi(p[0])
		m, err[1] = strconv.Atoi(p[1])
		d, err[2] = strconv.Atoi(p[2])
	} else if p := strings.Split(s, "."); len(p) == 3 && len(p[2]) == 4 {
		d, err[0] = strconv.Atoi(p[0])
		m, err[1] = strconv.Atoi(p[1])
		y, err[2] = strconv.Atoi(p[2])
	} else {
		return 0, false
	}
	if err[0] != nil || err[1] != nil || err[2] != nil || m < 1 || m > 12 || d < 1 || d > 31 || y < 1900 {
		return 0, false
	}
	if m <= 2 {
		y--
		m += 12
	}
	days := 365*y + y/4 - y/100 + y/400 + (153*(m-3)+2)/5 + d - 1
	return float64(days - 719468), true
}
