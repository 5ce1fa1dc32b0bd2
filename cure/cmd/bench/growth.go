package main

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// grown are the quantities of which growth is shown: their unit, and whether in WebAssembly.
var grown = []struct {
	name, unit string
	wasm       bool
}{
	{"native time", "ns/op", false}, {"wasm time", "ns/op", true}, {"settings", "settings", false}, {"allocated", "B/op", false}, {"held", "held-kB", false},
}

// growth says for each family of benchmarks, Family/key=number, by which power of the number time and memory grow: 1 is in
// proportion, 0 not at all. It is the slope of the straight line through the logarithms.
func growth(w io.Writer, native, wasm []entry) {
	fmt.Fprintf(w, "\n%-30s", "grows as the power")
	for _, g := range grown {
		fmt.Fprintf(w, " %12s", g.name)
	}
	fmt.Fprintln(w)
	for _, family := range families(native) {
		fmt.Fprintf(w, "%-30s", family)
		for _, g := range grown {
			all := native
			if g.wasm {
				all = wasm
			}
			text := ""
			if p, known := power(all, family, g.unit); known {
				text = fmt.Sprintf("%.2f", p)
			}
			fmt.Fprintf(w, " %12s", text)
		}
		fmt.Fprintln(w)
	}
}

// split takes Family/key=number apart.
func split(name string) (family string, number float64, ok bool) {
	family, text, found := strings.Cut(name, "=")
	number, err := strconv.ParseFloat(text, 64)
	return family, number, found && err == nil && number > 0
}

// families are those of which there are two members or more, in the order of the benchmarks.
func families(all []entry) []string {
	var names []string
	members := map[string]int{}
	for _, e := range all {
		if family, _, ok := split(e.name); ok {
			if members[family]++; members[family] == 2 {
				names = append(names, family)
			}
		}
	}
	return names
}

// power is the slope of a quantity's logarithm over that of the number, where there are two values or more.
func power(all []entry, family, unit string) (slope float64, known bool) {
	var n, sx, sy, sxx, sxy float64
	for _, e := range all {
		of, number, ok := split(e.name)
		v := e.values[unit]
		if !ok || of != family || !(v > 0) {
			continue
		}
		x, y := math.Log(number), math.Log(v)
		n, sx, sy, sxx, sxy = n+1, sx+x, sy+y, sxx+x*x, sxy+x*y
	}
	if n < 2 {
		return 0, false
	}
	return (n*sxy - sx*sy) / (n*sxx - sx*sx), true
}
