package main

import (
	"bytes"
	"fmt"
	"math"
)

// draw is the picture of work against accuracy: both axes logarithmic, a line for each solver, told apart by dashes and by
// its name at the end of the line.
func draw(all [][]run) []byte {
	const (
		width, height            = 720.0, 440.0
		left, right, top, bottom = 70.0, 170.0, 30.0, 50.0
		accurate, coarse         = -8.0, -2.0 // log10 of the marks' error
		fast, slow               = 0.0, 3.5   // log10 of milliseconds
	)
	x := func(e float64) float64 {
		l := math.Max(accurate, math.Min(coarse, math.Log10(math.Max(e, 1e-12))))
		return left + (coarse-l)/(coarse-accurate)*(width-left-right)
	}
	y := func(ms float64) float64 {
		l := math.Max(fast, math.Min(slow, math.Log10(ms)))
		return height - bottom - (l-fast)/(slow-fast)*(height-top-bottom)
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %g %g" font-family="sans-serif" font-size="12" role="img">`+"\n", width, height)
	fmt.Fprintln(&b, `<title>Time against accuracy of the marks, our integrator and others on the same equations</title>`)
	fmt.Fprintf(&b, `<rect width="%g" height="%g" fill="white"/>`+"\n", width, height)
	for e := coarse; e >= accurate; e-- {
		at := x(math.Pow(10, e))
		fmt.Fprintf(&b, `<path d="M%.1f %.1fV%.1f" stroke="#ddd"/><text x="%.1f" y="%.1f" text-anchor="middle">1e%g</text>`+"\n", at, top, height-bottom, at, height-bottom+18, e)
	}
	for _, ms := range []float64{1, 10, 100, 1000} {
		fmt.Fprintf(&b, `<path d="M%g %.1fH%.1f" stroke="#ddd"/><text x="%g" y="%.1f" text-anchor="end">%g</text>`+"\n", left, y(ms), width-right, left-8, y(ms)+4, ms)
	}
	fmt.Fprintf(&b, `<text x="%.1f" y="%.1f" text-anchor="middle">largest relative error of the marks</text>`+"\n", (left+width-right)/2, height-12)
	fmt.Fprintf(&b, `<text transform="translate(18 %.1f) rotate(-90)" text-anchor="middle">time of a run, ms</text>`+"\n", (top+height-bottom)/2)
	dashes := []string{"", "6 3", "", "2 3", "8 3 2 3", "1 4", "12 4"}
	inks := []string{"#0b5d57", "#0b5d57", "#8a3b12", "#8a3b12", "#3b4a8a", "#3b4a8a", "#3b4a8a"}
	var names []float64
	for i, runs := range all {
		ink, dash := inks[i%len(inks)], dashes[i%len(dashes)]
		var path bytes.Buffer
		for k, r := range runs {
			verb := 'L'
			if k == 0 {
				verb = 'M'
			}
			fmt.Fprintf(&path, "%c%.1f %.1f", verb, x(r.markError), y(r.Seconds*1e3))
			fmt.Fprintf(&b, `<circle cx="%.1f" cy="%.1f" r="2.5" fill="%s"/>`+"\n", x(r.markError), y(r.Seconds*1e3), ink)
		}
		last := runs[len(runs)-1]
		at := free(names, y(last.Seconds*1e3))
		names = append(names, at)
		fmt.Fprintf(&b, `<path d="%s" fill="none" stroke="%s" stroke-width="1.6" stroke-dasharray="%s"/>`+"\n", path.String(), ink, dash)
		fmt.Fprintf(&b, `<text x="%.1f" y="%.1f" fill="%s">%s</text>`+"\n", width-right+12, at+4, ink, last.Solver)
	}
	fmt.Fprintln(&b, "</svg>")
	return b.Bytes()
}

// free moves a name up until it is clear of those that stand already.
func free(taken []float64, at float64) float64 {
	const apart = 15
	for moved := true; moved; {
		moved = false
		for _, t := range taken {
			if math.Abs(t-at) < apart {
				at, moved = t-apart, true
			}
		}
	}
	return at
}
