package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
)

// peer is one solver with the tolerances that bring it to accuracies between 1e-3 and 1e-6 of the marks.
type peer struct {
	name       string
	command    []string
	share      int // of the repeats
	tolerances []string
}

// scipyShare is the share of the repeats that SciPy takes.
const scipyShare = 5

func peers(out string) []peer {
	at := func(name string) string { return filepath.Join(out, name) }
	usual := []string{"1e-3", "1e-4", "1e-5", "1e-6", "1e-7", "1e-8", "1e-9"}
	coarse := usual[:4] // SciPy's Radau takes minutes beyond
	all := []peer{
		{ours, []string{at("ours")}, 1, usual},
		{oursWasm, []string{"bash", goroot() + "/lib/wasm/go_js_wasm_exec", at("ours.wasm")}, 1, usual},
		{cvode, []string{at("cvode"), "band"}, 1, usual},
		{"CVODE, dense", []string{at("cvode"), "dense"}, 1, usual},
	}
	for _, side := range []struct{ name, argument string }{{compiled, "library"}, {withNumpy, "numpy"}} {
		for _, method := range []string{"BDF", "Radau", "LSODA"} {
			command := []string{"/usr/bin/python3", "-B", source + "/others/scipy_peer.py", at("libcoupon.so"), side.argument, method}
			all = append(all, peer{"SciPy " + method + ", " + side.name, command, scipyShare, coarse})
		}
	}
	return all
}

// Names that the verdict looks for.
const (
	ours      = "ours, native"
	oursWasm  = "ours, WebAssembly"
	cvode     = "CVODE, banded"
	compiled  = "compiled"
	withNumpy = "numpy"
)

func goroot() string {
	text, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return ""
	}
	return strings.TrimSpace(string(text))
}

// ask runs a peer at its tolerances.
func ask(out string, p peer, cells, repeats int, tolerances []string) ([]run, error) {
	args := append(append([]string{}, p.command[1:]...), strconv.Itoa(cells), strconv.Itoa(repeats))
	c := exec.Command(p.command[0], append(args, tolerances...)...)
	var text, complaints bytes.Buffer
	c.Stdout, c.Stderr = &text, &complaints
	if p.name == oursWasm {
		// The start-up area for arguments and environment in WebAssembly is small.
		c.Env = []string{"PATH=" + os.Getenv("PATH"), "HOME=" + os.Getenv("HOME")}
	}
	if err := c.Run(); err != nil {
		return nil, fmt.Errorf("%s: %w\n%s", p.name, err, complaints.String())
	}
	var runs []run
	for d := json.NewDecoder(&text); d.More(); {
		var r run
		if err := d.Decode(&r); err != nil {
			return nil, fmt.Errorf("%s: %w", p.name, err)
		}
		runs = append(runs, r)
	}
	return runs, nil
}
