package main

import (
	"bytes"
	"fmt"
	"math"
	"sort"
)

// The picture: both axes logarithmic, accuracy rising to the right.
const (
	width, height            = 800.0, 480.0
	left, right, top, bottom = 64.0, 190.0, 40.0, 52.0
	coarse, accurate         = -2.0, -8.0 // log10 of the marks' error
	fast, slow               = 0.0, 4.5   // log10 of milliseconds
)

// style keeps ink and names readable on light and dark pages; a picture in a page knows no colour but its own.
const style = `<style>
svg{color:#24292f}.a{color:#0b6b62}.b{color:#a34a12}.c{color:#3949ab}.d{color:#8e2a86}
@media (prefers-color-scheme:dark){svg{color:#e6edf3}.a{color:#4ecdc0}.b{color:#f0a060}.c{color:#9fb0ff}.d{color:#e79be0}}
text{fill:currentColor}path,circle{stroke:currentColor;fill:none}circle{fill:currentColor}.rule{stroke-opacity:.18}
</style>`

// pen is the look of a solver's line: hue by where its right-hand side and its code are from, dash by its method.
type pen struct{ class, dash string }

var pens = []pen{{"a", ""}, {"a", "7 3"}, {"b", ""}, {"b", "2 3"}, {"c", ""}, {"c", "8 3 2 3"}, {"c", "2 3"}, {"d", ""}, {"d", "8 3 2 3"}, {"d", "2 3"}}

func across(e float64) float64 {
	l := math.Max(accurate, math.Min(coarse, math.Log10(math.Max(e, 1e-12))))
	return left + (coarse-l)/(coarse-accurate)*(width-left-right)
}

func up(ms float64) float64 {
	l := math.Max(fast, math.Min(slow, math.Log10(ms)))
	return height - bottom - (l-fast)/(slow-fast)*(height-top-bottom)
}

// draw is the picture of work against accuracy.
func draw(all [][]run, made string) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %g %g" font-family="sans-serif" font-size="12" role="img">`+"\n", width, height)
	fmt.Fprintln(&b, `<title>Time against accuracy of the marks, our integrator and others on the same equations</title>`)
	fmt.Fprintln(&b, style)
	fmt.Fprintf(&b, `<text x="%g" y="18">One coated coupon, the same equations. %s.</text>`+"\n", left, made)
	axes(&b)
	names := make([]float64, len(all))
	for i, runs := range all {
		names[i] = up(runs[len(runs)-1].Seconds * 1e3)
	}
	spread(names)
	for i, runs := range all {
		p := pens[i%len(pens)]
		fmt.Fprintf(&b, `<g class="%s">`, p.class)
		var path bytes.Buffer
		for k, r := range runs {
			verb := 'L'
			if k == 0 {
				verb = 'M'
			}
			fmt.Fprintf(&path, "%c%.1f %.1f", verb, across(r.markError), up(r.Seconds*1e3))
			fmt.Fprintf(&b, `<circle cx="%.1f" cy="%.1f" r="2.2"/>`, across(r.markError), up(r.Seconds*1e3))
		}
		last := runs[len(runs)-1]
		fmt.Fprintf(&b, `<path d="%s" stroke-width="1.6" stroke-dasharray="%s"/>`, path.String(), p.dash)
		// A thin line leads from the last point to the name, with a piece of the line's own dash before it.
		fmt.Fprintf(&b, `<path d="M%.1f %.1fL%.1f %.1f" class="rule"/>`, across(last.markError), up(last.Seconds*1e3), width-right+6, names[i])
		fmt.Fprintf(&b, `<path d="M%.1f %.1fh26" stroke-width="1.6" stroke-dasharray="%s"/>`, width-right+8, names[i], p.dash)
		fmt.Fprintf(&b, `<text x="%.1f" y="%.1f">%s</text></g>`+"\n", width-right+38, names[i]+4, last.Solver)
	}
	fmt.Fprintln(&b, "</svg>")
	return b.Bytes()
}

func axes(b *bytes.Buffer) {
	for e := coarse; e >= accurate; e-- {
		at := across(math.Pow(10, e))
		fmt.Fprintf(b, `<path class="rule" d="M%.1f %gV%.1f"/><text x="%.1f" y="%.1f" text-anchor="middle">1e%g</text>`+"\n", at, top, height-bottom, at, height-bottom+18, e)
	}
	for l := fast; l <= slow; l++ {
		ms := math.Pow(10, l)
		fmt.Fprintf(b, `<path class="rule" d="M%g %.1fH%.1f"/><text x="%g" y="%.1f" text-anchor="end">%g</text>`+"\n", left, up(ms), width-right, left-8, up(ms)+4, ms)
	}
	fmt.Fprintf(b, `<text x="%.1f" y="%.1f" text-anchor="middle">largest relative error of the marks</text>`+"\n", (left+width-right)/2, height-12)
	fmt.Fprintf(b, `<text transform="translate(16 %.1f) rotate(-90)" text-anchor="middle">time of a run, ms</text>`+"\n", (top+height-bottom)/2)
}

// spread moves names up, from the lowest on, until none stands on another.
func spread(at []float64) {
	const apart = 15
	order := make([]int, len(at))
	for i := range order {
		order[i] = i
	}
	sort.Slice(order, func(a, b int) bool { return at[order[a]] > at[order[b]] })
	for k := 1; k < len(order); k++ {
		at[order[k]] = math.Min(at[order[k]], at[order[k-1]]-apart)
	}
}
