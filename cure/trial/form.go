package trial

// form is one way to read the text.
type form struct {
	separator, decimal byte
	name               string
}

// forms are tried in this order; of two that read equally well the first counts. A decimal comma cannot stand beside a
// separating comma.
var forms = []form{
	{'\t', '.', "tab"}, {'\t', ',', "tab"}, {';', '.', "semicolon"}, {';', ',', "semicolon"}, {'|', '.', "bar"}, {'|', ',', "bar"},
	{',', '.', "comma"}, {' ', '.', "spaces"}, {' ', ',', "spaces"},
}

// sample is how many lines decide on the form.
const sample = 400

// best returns the form that reads most lines, and the number of columns of most rows.
func best(lines []line, declared byte) (f form, width int, ok bool) {
	if len(lines) > sample {
		lines = lines[:sample]
	}
	most := 0.0
	for _, c := range forms {
		if declared != 0 && c.separator != declared {
			continue
		}
		if points, w := c.judge(lines); points > most*(1+1e-9) {
			f, width, most, ok = c, w, points, true
		}
	}
	return f, width, ok
}

// judge counts the lines that hold two numbers or more, less their share of cells that are none, and those of another
// width than most.
func (f form) judge(lines []line) (points float64, width int) {
	widths := map[int]int{}
	value := make([]float64, len(lines))
	wide := make([]int, len(lines))
	for i, l := range lines {
		cells := split(l.text, f.separator)
		good, bad := 0, 0
		for _, c := range cells {
			switch _, kind := parse(c, f.decimal); kind {
			case number, clock:
				good++
			case word, ambiguous:
				bad++
			}
		}
		if good < 2 {
			continue
		}
		value[i], wide[i] = 1-float64(bad)/float64(len(cells)), len(cells)
		widths[len(cells)]++
		if n := widths[len(cells)]; n > widths[width] || n == widths[width] && len(cells) > width {
			width = len(cells)
		}
	}
	for i := range value {
		if wide[i] == width {
			points += value[i]
		}
	}
	return points, width
}
