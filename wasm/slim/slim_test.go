package main

import (
	"bytes"
	"encoding/binary"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// hardy compiles testdata/hardy for the browser.
func hardy(t *testing.T) []byte {
	t.Helper()
	path := filepath.Join(t.TempDir(), "hardy.wasm")
	build := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-ldflags", "-s -w", "-o", path, "./testdata/hardy")
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	program, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return program
}

// run runs a program on Node and gives what it prints.
func run(t *testing.T, program []byte) string {
	t.Helper()
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("Node is needed to run WebAssembly")
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "program.wasm")
	if err := os.WriteFile(path, program, 0o644); err != nil {
		t.Fatal(err)
	}
	// The environment is cut down because the runtime's start-up area for arguments and environment is small.
	c := exec.Command(node, "--stack-size=8192", filepath.Join(strings.TrimSpace(string(root)), "lib/wasm/wasm_exec_node.js"), path)
	c.Env = []string{"PATH=" + filepath.Dir(node)}
	out, _ := c.CombinedOutput()
	return string(out)
}

func TestASlimProgramRunsAsBefore(t *testing.T) {
	program := hardy(t)
	slim, err := Slim(program)
	if err != nil {
		t.Fatal(err)
	}
	if before := run(t, program); before != "ok\n" {
		t.Fatalf("before: %s", before)
	}
	if after := run(t, slim); after != "ok\n" {
		t.Errorf("after: %s", after)
	}
}

// Names go, and so does half of the tables by program counter; what is slim already stays as it is.
func TestSlimClearsAndComesToRest(t *testing.T) {
	program := hardy(t)
	slim, err := Slim(program)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"main.caught", "main.(*tree).weight", "runtime.mallocgc", "main.go"} {
		if !bytes.Contains(program, []byte(name+"\x00")) {
			t.Errorf("%s is not in the program", name)
		}
		if bytes.Contains(slim, []byte(name+"\x00")) {
			t.Errorf("%s is still there", name)
		}
	}
	if n, m := nonZero(t, program), nonZero(t, slim); float64(m) > 0.8*float64(n) {
		t.Errorf("%d bytes of data are left of %d", m, n)
	}
	m, err := load(data(t, slim).body)
	if err != nil {
		t.Fatal(err)
	}
	layout, err := find(m.bytes)
	if err != nil {
		t.Fatal(err)
	}
	if finder := m.bytes[layout.finder:layout.end]; bytes.Count(finder, []byte{0}) != len(finder) {
		t.Error("the table in which searches for functions begin is still there")
	}
	again, err := Slim(slim)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(again, slim) {
		t.Error("what is slim changes when it is slimmed again")
	}
	other, err := Slim(program)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(other, slim) {
		t.Error("the same bytes give other bytes")
	}
}

func nonZero(t *testing.T, program []byte) int {
	t.Helper()
	m, err := load(data(t, program).body)
	if err != nil {
		t.Fatal(err)
	}
	return len(m.bytes) - bytes.Count(m.bytes, []byte{0})
}

func data(t *testing.T, program []byte) section {
	t.Helper()
	sections, err := split(program)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range sections {
		if s.id == dataSection {
			return s
		}
	}
	t.Fatal("no data")
	return section{}
}

// A layout that is not known is refused in words that say where to look.
func TestSlimRefusesWhatItDoesNotKnow(t *testing.T) {
	program := hardy(t)
	m, err := load(data(t, program).body)
	if err != nil {
		t.Fatal(err)
	}
	at, err := header(m.bytes)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, want string
		spoil      func(memory []byte)
	}{
		{"another magic", "0xfffffff2", func(b []byte) { b[at] = 0xf2 }},
		{"another order of tables", "refer to the tables", func(b []byte) { b[at+32]++ }},
		{"another count", "module data", func(b []byte) { b[at+8]++ }},
		{"another function", "function 0", func(b []byte) {
			entries := at + int(binary.LittleEndian.Uint64(b[at+64:]))
			b[entries]++
		}},
	} {
		spoiled := bytes.Clone(m.bytes)
		c.spoil(spoiled)
		found, err := find(spoiled)
		if err == nil {
			err = found.clear()
		}
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	for _, bad := range [][]byte{nil, []byte("\x00asm"), program[:len(program)/2], []byte("<html>, as a server that knows no such file sends it")} {
		if _, err := Slim(bad); err == nil {
			t.Errorf("%d bytes of something else are taken", len(bad))
		}
	}
}

// Numbers of all lengths come back as they were written, and a memory is the same after it was stored.
func TestNumbersAndMemoryComeBack(t *testing.T) {
	for shift := range 63 {
		for _, v := range []int64{1<<shift - 1, 1 << shift, -1 << shift, -1<<shift - 1} {
			r := reader{rest: appendSigned(nil, v)}
			if got := r.signed(); got != v || r.failed || len(r.rest) > 0 {
				t.Errorf("%d came back as %d", v, got)
			}
		}
	}
	// Worked numbers of the specification of DWARF (version 5, table 7.7), in which LEB128 is defined.
	for v, want := range map[int64][]byte{2: {2}, -2: {0x7e}, 127: {0xff, 0}, -127: {0x81, 0x7f}, 128: {0x80, 1}, -129: {0xff, 0x7e}} {
		if got := appendSigned(nil, v); !bytes.Equal(got, want) {
			t.Errorf("%d is written as % x, expected % x", v, got, want)
		}
	}
	m := &memory{low: 100, bytes: make([]byte, 100_000)}
	for i := 100; i < len(m.bytes); i = int(math.Ceil(float64(i) * 1.3)) {
		m.bytes[i] = byte(i) | 1
	}
	back, err := load(m.store())
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(back.bytes, bytes.TrimRight(m.bytes, "\x00")) {
		t.Error("another memory comes back")
	}
}
