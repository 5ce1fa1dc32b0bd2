package main

import (
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
