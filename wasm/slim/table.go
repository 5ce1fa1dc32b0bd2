package main

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// magic begins the header of the tables of functions since Go 1.20 (internal/abi, Go120PCLnTabMagic).
const magic = 0xfffffff1

// table is where the runtime's tables of functions lie in a program's memory, by address.
type table struct {
	memory                   []byte
	names, units, files, pcs int // text of names, compilation units, file names; tables by program counter
	functions                int // first the entries of all functions in order, then what is said of each
	count                    int
	data, finder             int // what functions refer to by number: stack maps, inline trees, ...; where the search for a function begins
	end                      int
}

// find looks the tables up and checks them against the module data, in which the runtime finds them.
func find(memory []byte) (*table, error) {
	at, err := header(memory)
	if err != nil {
		return nil, err
	}
	word := func(at int) int {
		if at < 0 || at+8 > len(memory) {
			return -1
		}
		return int(binary.LittleEndian.Uint64(memory[at:]))
	}
	// runtime.pcHeader: magic and sizes, count of functions and of files, an unused word, then the places of five tables.
	t := &table{memory: memory, count: word(at + 8), names: at + word(at+32), units: at + word(at+40), files: at + word(at+48),
		pcs: at + word(at+56), functions: at + word(at+64)}
	// runtime.moduledata begins with a pointer to the header and slices of the tables.
	modules := 0
	for m := 0; m+8*moduleWords <= len(memory); m += 8 {
		if word(m) != at || word(m+8) != t.names {
			continue
		}
		modules++
		same := word(m+8*4) == t.units && word(m+8*7) == t.files && word(m+8*10) == t.pcs && word(m+8*13) == t.functions &&
			word(m+8*16) == t.functions && word(m+8*17) == t.count+1
		t.data, t.finder, t.end = word(m+8*40), word(m+8*19), word(m+8*41)
		if !same || !(t.functions+8*t.count < t.data && t.data < t.finder && t.finder < t.end && t.end <= len(memory)) {
			return nil, fmt.Errorf("the module data are not laid out as in Go 1.26: compare runtime/symtab.go")
		}
	}
	if modules != 1 || !slices.IsSorted([]int{at, t.names, t.units, t.files, t.pcs, t.functions}) {
		return nil, fmt.Errorf("%d modules refer to the tables of functions, expected one", modules)
	}
	return t, nil
}

// moduleWords is how many words of runtime.moduledata are looked at: up to gofunc and epclntab.
const moduleWords = 42

// header finds the header of the tables: magic, two zeros, the size of an instruction and of a pointer.
func header(memory []byte) (int, error) {
	sizes := []byte{0xff, 0xff, 0xff, 0, 0, 1, 8}
	var others []string
	for from := 1; ; {
		i := bytes.Index(memory[min(from, len(memory)):], sizes)
		if i < 0 {
			return 0, fmt.Errorf("no tables of functions with the magic %#x of Go 1.20 to 1.26; there are %v", uint32(magic), others)
		}
		at := from + i - 1
		if m := binary.LittleEndian.Uint32(memory[at:]); m == magic {
			return at, nil
		} else if m >= 0xfffffff0 {
			others = append(others, fmt.Sprintf("%#x", m))
		}
		from = at + 2
	}
}

// What runtime._func says of a function, by offset.
const (
	entryAt, nameAt, argsAt, spAt, fileAt, lineAt, pcdataCountAt, unitAt, startLineAt = 0, 4, 8, 16, 20, 24, 28, 32, 36

	idAt, funcdataCountAt, pcdataAt = 40, 43, 44
)

// The kinds of tables that functions refer to (internal/abi). Those of pcdata that serve preemption by signals, which WebAssembly
// does not have, and the printing of arguments go; so do those of funcdata for printing and for execution traces.
var (
	idlePcdata   = []int{0, 3}    // unsafe points; which arguments live
	idleFuncdata = []int{5, 6, 7} // arguments; which live; what is wrapped
)

const (
	inlineTrees = 3          // the funcdata of inlined calls: recover counts frames with it, so it stays, without names and lines
	none        = ^uint32(0) // a funcdata that is not there
	inlinedSize = 16         // runtime.inlinedCall: id, name, program counter of the parent, first line
)

// clear takes out what only tracebacks read.
func (t *table) clear() error {
	names := newNames(t.memory[t.names:t.units])
	live := make([]bool, t.functions-t.pcs)
	live[0] = true // 0 is "no table"
	uses := map[int]map[int]bool{}
	for i := range t.count {
		f, err := t.function(i)
		if err != nil {
			return err
		}
		put(f[nameAt:], names.kept(int(get(f[nameAt:])), f[idAt] == wrapper))
		for _, at := range []int{fileAt, lineAt, unitAt, startLineAt} {
			put(f[at:], 0)
		}
		pcdata := int(get(f[pcdataCountAt:]))
		for _, k := range idlePcdata {
			if k < pcdata {
				put(f[pcdataAt+4*k:], 0)
			}
		}
		t.mark(live, get(f[spAt:]))
		for k := range pcdata {
			t.mark(live, get(f[pcdataAt+4*k:]))
		}
		for k := range int(f[funcdataCountAt]) {
			place := f[pcdataAt+4*pcdata+4*k:]
			off := get(place)
			if off == none {
				continue
			}
			if int(off) >= t.finder-t.data {
				return fmt.Errorf("function %d refers to %d beyond the data of functions", i, off)
			}
			if uses[int(off)] == nil {
				uses[int(off)] = map[int]bool{}
			}
			uses[int(off)][k] = true
			if slices.Contains(idleFuncdata, k) {
				put(place, none)
			}
		}
	}
	for i, l := range live {
		if !l {
			t.memory[t.pcs+i] = 0
		}
	}
	clear(t.memory[t.names:t.pcs])
	copy(t.memory[t.names:t.units], names.text)
	t.clearData(uses)
	// Zeros there let each search begin at the first function. The runtime looks for functions when it scans stacks or lets them
	// grow, which is seldom enough that nothing is slower.
	clear(t.memory[t.finder:t.end])
	return nil
}

// function is what is said of the i-th function.
func (t *table) function(i int) ([]byte, error) {
	entry := t.memory[t.functions+8*i:]
	at := t.functions + int(get(entry[4:]))
	if at+pcdataAt > t.data || get(t.memory[at:]) != get(entry) {
		return nil, fmt.Errorf("function %d is not laid out as in Go 1.26: compare runtime/runtime2.go", i)
	}
	f := t.memory[at:t.data]
	if pcdataAt+4*int(get(f[pcdataCountAt:]))+4*int(f[funcdataCountAt]) > len(f) {
		return nil, fmt.Errorf("function %d reaches beyond the tables", i)
	}
	return f, nil
}

// mark notes that a table by program counter is in use. It is a row of pairs of varints and ends with a zero where a value
// would begin, the first excepted (runtime.step).
func (t *table) mark(live []bool, off uint32) {
	at := int(off)
	if at >= len(live) || live[at] {
		return
	}
	for first := true; at < len(live); first = false {
		last := t.memory[t.pcs+at] == 0 && !first
		for numbers := 2; numbers > 0 && at < len(live); at++ {
			live[at] = true
			if last {
				return
			}
			if t.memory[t.pcs+at] < 0x80 {
				numbers--
			}
		}
	}
}

// clearData clears what functions referred to and do no longer, and names and lines in the trees of inlined calls. The linker
// keeps equal data once, so that a place counts as used when one of its uses does; it reaches to the next.
func (t *table) clearData(uses map[int]map[int]bool) {
	places := slices.Sorted(maps.Keys(uses))
	for i, off := range places {
		till := t.finder - t.data
		if i+1 < len(places) {
			till = places[i+1]
		}
		content := t.memory[t.data+off : t.data+till]
		busy := maps.Clone(uses[off])
		for _, k := range idleFuncdata {
			delete(busy, k)
		}
		switch {
		case len(busy) == 0:
			clear(content)
		case len(busy) == 1 && busy[inlineTrees]:
			for ; len(content) >= inlinedSize; content = content[inlinedSize:] {
				put(content[4:], 0)
				put(content[12:], 0)
			}
		}
	}
}

// wrapper is the id of methods that the compiler wraps around others (internal/abi, FuncIDWrapper).
const wrapper = 23

// names collects the names that the runtime reads for more than a traceback.
type names struct {
	old, text []byte
	system    uint32 // where "runtime." stands
}

func newNames(old []byte) *names {
	n := &names{old: old, text: []byte{0}} // 0 is the empty name
	n.system = n.add("runtime.")
	return n
}

func (n *names) add(name string) uint32 {
	at := len(n.text)
	n.text = append(append(n.text, name...), 0)
	return uint32(at)
}

// kept is where the name of a function stands from now on, as much of it as the runtime needs:
//   - "runtime." tells goroutines of the runtime from others (isSystemGoroutine);
//   - the stubs of reflect are told by name when their arguments are scanned (argMapInternal);
//   - a wrapped method called on a nil pointer panics with its name, and dies where there is none (panicwrap).
func (n *names) kept(off int, wraps bool) uint32 {
	if off <= 0 || off >= len(n.old) {
		return 0
	}
	text, _, _ := bytes.Cut(n.old[off:], []byte{0})
	name := string(text)
	switch {
	case strings.HasPrefix(name, "runtime."):
		return n.system
	case name == "reflect.makeFuncStub", name == "reflect.methodValueCall", wraps && strings.Contains(name, ".(*"):
		return n.add(name)
	}
	return 0
}

func get(b []byte) uint32    { return binary.LittleEndian.Uint32(b) }
func put(b []byte, v uint32) { binary.LittleEndian.PutUint32(b, v) }
