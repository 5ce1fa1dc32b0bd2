package main

import (
	"math"
	"strings"
	"testing"
)

func TestTable(t *testing.T) {
	native := parse("goos: linux\nBenchmarkTunnel-2 3 12000000 ns/op 322.0 steps 3004 allocs/op\nBenchmarkTunnel-2 3 10000000 ns/op 321.0 steps 3004 allocs/op\n" +
		"BenchmarkCells/cells=16-2 1 5000000 ns/op\nPASS\n")
	wasm := parse("BenchmarkTunnel 3 30000000 ns/op 322.0 steps\n")
	if len(native) != 2 || native[0].values["steps"] != 321 || native[1].name != "Cells/cells=16" {
		t.Fatalf("read %+v", native)
	}
	var b strings.Builder
	table(&b, native, wasm)
	lines := strings.Split(b.String(), "\n")
	if got := strings.Fields(lines[1]); strings.Join(got, " ") != "Tunnel 10.00 30.00 3.0 321 3004" {
		t.Errorf("row %q", lines[1])
	}
	if got := strings.Fields(lines[2]); strings.Join(got, " ") != "Cells/cells=16 5.00" {
		t.Errorf("row %q", lines[2])
	}
}

// Time that grows as the square, and memory that does not grow.
func TestGrowth(t *testing.T) {
	all := parse("BenchmarkCells/cells=10 1 100 ns/op 50 B/op\nBenchmarkCells/cells=20 1 400 ns/op 50 B/op\nBenchmarkCells/cells=40 1 1600 ns/op 50 B/op\n" +
		"BenchmarkPredict/demo=line 1 7 ns/op\nBenchmarkTunnel 1 9 ns/op\n")
	if got := families(all); len(got) != 1 || got[0] != "Cells/cells" {
		t.Fatalf("families %q", got)
	}
	if got, _ := power(all, "Cells/cells", "ns/op"); math.Abs(got-2) > 1e-12 { // rounding of the logarithms
		t.Errorf("time grows as the power %g", got)
	}
	if got, known := power(all, "Cells/cells", "B/op"); !known || math.Abs(got) > 1e-12 {
		t.Errorf("memory grows as the power %g", got)
	}
	if got, known := power(all, "Cells/cells", "settings"); known {
		t.Errorf("a growth of %g of what was not measured", got)
	}
}
