// Command slim takes out of a Go program for WebAssembly what only tracebacks read: names of functions and files, tables of
// lines, names in inline trees. A third of the tables that the linker writes about functions is left, and the program
// computes the same.
//
//	go run ./wasm/slim program.wasm
//
// The file is replaced. A program that dies prints a traceback without names afterwards; panics keep their messages. There is
// no switch of the toolchain for this: -ldflags=-s leaves out symbol tables, but the runtime's own tables stay whole.
//
// It knows the tables as Go 1.26 writes them (runtime/symtab.go, cmd/link/internal/ld/pcln.go) and checks what it relies on, so
// that another layout is refused instead of broken.
package main

import (
	"fmt"
	"os"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: slim program.wasm")
		os.Exit(2)
	}
	if err := replace(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "slim:", err)
		os.Exit(1)
	}
}

func replace(path string) error {
	program, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	slimmed, err := Slim(program)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	return os.WriteFile(path, slimmed, 0o644)
}

// Slim is a compiled Go program without what only tracebacks read. The same bytes give the same bytes.
//
// Errors: not a WebAssembly module, or tables of functions that are not those of a Go version that is known here.
func Slim(program []byte) ([]byte, error) {
	sections, err := split(program)
	if err != nil {
		return nil, err
	}
	out := append([]byte{}, program[:len(preamble)]...)
	for _, s := range sections {
		if s.id == dataSection {
			m, err := load(s.body)
			if err != nil {
				return nil, err
			}
			t, err := find(m.bytes)
			if err != nil {
				return nil, err
			}
			if err := t.clear(); err != nil {
				return nil, err
			}
			s.body = m.store()
		}
		out = append(out, s.id)
		out = appendUnsigned(out, uint64(len(s.body)))
		out = append(out, s.body...)
	}
	return out, nil
}
