package report

import (
	"math"
	"strings"

	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
)

// FillWindow writes the texts of a window from its numbers.
func (w Speaker) FillWindow(win *plan.Window) {
	w.Tell(win)
	for i := range win.Limits {
		win.Limits[i].Text = w.fails(&result.Criterion{Name: win.Limits[i].Name, Place: w.Say("plan.somewhere")})
	}
	for _, s := range []*plan.Spot{&win.Present, win.Robust} {
		if s != nil {
			s.XText, s.YText = w.Amount(&win.X, s.X), w.Amount(&win.Y, s.Y)
			s.Standing.Text = s.XText
			w.margins(s.Standing.Margins)
		}
	}
	win.Text = w.window(win)
	win.Detail = w.Say("plan.window_detail", "runs", win.Runs)
}

// window is the sentence: how much is good, how the present setting stands, and where there is most room.
func (w Speaker) window(win *plan.Window) string {
	parts := []string{w.Say("plan.window_good", "share", w.fixed(100*win.Good, 0, "%"))}
	at := func(s *plan.Spot) string {
		return w.Say("plan.window_at", "x", w.Amount(&win.X, s.X), "y", w.Amount(&win.Y, s.Y), "labelX", win.X.Label, "labelY", win.Y.Label)
	}
	p := &win.Present
	switch {
	case p.Standing.Refused != "":
		parts = append(parts, w.Say("plan.window_refused", "why", p.Standing.Refused))
	case !p.Standing.Met:
		parts = append(parts, w.Say("plan.window_bad", "at", at(p), "fails", w.fails(first(p.Standing.Margins))))
	case p.Margin > 0:
		parts = append(parts, w.Say("plan.window_near", "at", at(p), "margin", w.fixed(100*p.Margin, 1, "%")))
	default:
		parts = append(parts, w.Say("plan.window_fine", "at", at(p)))
	}
	if r := win.Robust; r != nil {
		tightest := first(r.Standing.Margins)
		parts = append(parts, w.Say("plan.window_robust", "at", at(r), "margin", w.fixed(100*r.Margin, 1, "%"),
			"of", w.of(tightest), "share", w.Percent(tightest.Share)))
	}
	return strings.Join(parts, " ")
}

// Window prints a window as the command shows it: the picture in letters, its key and the sentences.
func (w Speaker) Window(s plan.Study, win *plan.Window) string {
	var b strings.Builder
	b.WriteString(w.Goal(s) + "\n\n" + win.Text + "\n\n")
	n := win.Columns
	rows := min(n, 30)
	top, bottom := w.Amount(&win.Y, win.YHigh), w.Amount(&win.Y, win.YLow)
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
	b.WriteString(pad("", 13) + w.Amount(&win.X, win.XLow) + w.Say("plan.window_to", "label", win.X.Label) + w.Amount(&win.X, win.XHigh) + "\n\n")
	b.WriteString("  . " + w.Say("plan.window_key") + "\n")
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
