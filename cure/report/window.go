package report

import (
	"math"
	"strings"

	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
)

// FillWindow writes the texts of a window from its numbers.
func FillWindow(win *plan.Window) {
	w := englishPlans()
	for i := range win.Limits {
		win.Limits[i].Text = w.fails(&result.Criterion{Name: win.Limits[i].Name, Place: w.line[somewhere]})
	}
	for _, s := range []*plan.Spot{&win.Present, win.Robust} {
		if s != nil {
			s.XText, s.YText = Amount(&win.X, s.X), Amount(&win.Y, s.Y)
			s.Standing.Text = s.XText
			w.margins(s.Standing.Margins)
		}
	}
	win.Text = w.window(win)
	win.Detail = fill(w.line[windowDetail], "runs", plain(float64(win.Runs)))
}

// window is the sentence: how much is good, how the present setting stands, and where there is most room.
func (w planWords) window(win *plan.Window) string {
	parts := []string{fill(w.line[windowGood], "share", fixed(100*win.Good, 0, "%"))}
	at := func(s *plan.Spot) string {
		return fill(w.line[windowAt], "x", Amount(&win.X, s.X), "y", Amount(&win.Y, s.Y), "labelX", win.X.Label, "labelY", win.Y.Label)
	}
	p := &win.Present
	switch {
	case p.Standing.Refused != "":
		parts = append(parts, fill(w.line[windowRefused], "why", p.Standing.Refused))
	case !p.Standing.Met:
		parts = append(parts, fill(w.line[windowBad], "at", at(p), "fails", w.fails(first(p.Standing.Margins))))
	case p.Margin > 0:
		parts = append(parts, fill(w.line[windowNear], "at", at(p), "margin", fixed(100*p.Margin, 1, "%")))
	default:
		parts = append(parts, fill(w.line[windowFine], "at", at(p)))
	}
	if r := win.Robust; r != nil {
		tightest := first(r.Standing.Margins)
		parts = append(parts, fill(w.line[windowRobust], "at", at(r), "margin", fixed(100*r.Margin, 1, "%"),
			"of", w.of(tightest), "share", Percent(tightest.Share)))
	}
	return strings.Join(parts, " ")
}

// Window prints a window as the command shows it: the picture in letters, its key and the sentences.
func Window(s plan.Study, win *plan.Window) string {
	w := englishPlans()
	var b strings.Builder
	b.WriteString(Goal(s) + "\n\n" + win.Text + "\n\n")
	n := win.Columns
	rows := min(n, 30)
	top, bottom := Amount(&win.Y, win.YHigh), Amount(&win.Y, win.YLow)
	b.WriteString(win.Y.Label + "\n")
	for row := range rows {
		label := ""
		switch row {
		case 0:
			label = top
		case rows - 1:
			label = bottom
		}
		b.WriteString(pad(label, 12) + " ")
		at := n - 1 - int(math.Round(float64(row)*float64(n-1)/float64(max(1, rows-1))))
		for _, v := range win.Cells[at*n : (at+1)*n] {
			b.WriteByte(letter(v))
		}
		b.WriteByte('\n')
	}
	b.WriteString(pad("", 13) + Amount(&win.X, win.XLow) + fill(w.line[windowTo], "label", win.X.Label) + Amount(&win.X, win.XHigh) + "\n\n")
	b.WriteString("  . " + w.line[windowKey] + "\n")
	for i := range win.Limits {
		b.WriteString("  " + string(letter(i)) + " " + win.Limits[i].Text + "\n")
	}
	return b.String() + "\n" + win.Detail + "\n"
}

// letter stands for one dot of the picture.
func letter(v int) byte {
	if v < 0 {
		return '.'
	}
	return 'A' + byte(v%26)
}

// pad fills a text up from the left.
func pad(text string, width int) string {
	return strings.Repeat(" ", max(0, width-len([]rune(text)))) + text
}
