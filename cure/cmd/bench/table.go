package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"
)

// entry is one benchmark: the least time of its runs and the counters beside it.
type entry struct {
	name   string
	values map[string]float64 // by unit
}

// parse reads what go test prints: a name, the repeats, then values each followed by its unit.
func parse(text string) []entry {
	var all []entry
	at := map[string]int{}
	for _, line := range strings.Split(text, "\n") {
		f := strings.Fields(line)
		if len(f) < 4 || !strings.HasPrefix(f[0], "Benchmark") {
			continue
		}
		name := strings.TrimPrefix(f[0], "Benchmark")
		if cut := strings.LastIndexByte(name, '-'); cut > 0 {
			if _, err := strconv.Atoi(name[cut+1:]); err == nil {
				name = name[:cut] // the number of processors
			}
		}
		values := map[string]float64{}
		for i := 2; i+1 < len(f); i += 2 {
			if v, err := strconv.ParseFloat(f[i], 64); err == nil {
				values[f[i+1]] = v
			}
		}
		i, known := at[name]
		switch {
		case !known:
			at[name] = len(all)
			all = append(all, entry{name, values})
		case values["ns/op"] < all[i].values["ns/op"]:
			all[i].values = values
		}
	}
	return all
}

// counters are the columns behind the times, each by its unit, and what to multiply it by.
var counters = []struct {
	name, unit string
	factor     float64
}{
	{"steps", "steps", 1}, {"rejected", "rejected", 1}, {"derivatives", "derivatives", 1}, {"factoris.", "factorisations", 1}, {"settings", "settings", 1},
	{"allocs/op", "allocs/op", 1}, {"kB/op", "B/op", 1e-3}, {"held kB", "held-kB", 1},
}

func table(w io.Writer, native, wasm []entry) {
	fmt.Fprintf(w, "%-26s %11s %11s %6s", "benchmark", "native, ms", "wasm, ms", "ratio")
	for _, c := range counters {
		fmt.Fprintf(w, " %11s", c.name)
	}
	fmt.Fprintln(w)
	slow := map[string]float64{}
	for _, e := range wasm {
		slow[e.name] = e.values["ns/op"]
	}
	for _, e := range native {
		fast := e.values["ns/op"]
		fmt.Fprintf(w, "%-26s %11.2f %11s %6s", e.name, fast*1e-6, cell(slow[e.name]*1e-6, "%.2f"), cell(slow[e.name]/fast, "%.1f"))
		for _, c := range counters {
			fmt.Fprintf(w, " %11s", cell(e.values[c.unit]*c.factor, "%.0f"))
		}
		fmt.Fprintln(w)
	}
}

// cell is empty where there is nothing.
func cell(v float64, format string) string {
	if v == 0 {
		return ""
	}
	return fmt.Sprintf(format, v)
}
