package main

import (
	"bytes"
	"encoding/binary"
	"errors"
	"slices"
)

// The parts of a module's binary form that matter here (WebAssembly Core Specification 2.0, chapter 5).
const (
	preamble    = "\x00asm\x01\x00\x00\x00"
	dataSection = 11
	constI32    = 0x41 // the instruction i32.const, with which a segment gives its address
	end         = 0x0b
)

var errModule = errors.New("not a WebAssembly module as the Go linker writes it")

type section struct {
	id   byte
	body []byte
}

// split cuts a module into its sections.
func split(module []byte) ([]section, error) {
	r := reader{rest: module}
	if string(r.take(len(preamble))) != preamble {
		return nil, errModule
	}
	var all []section
	for len(r.rest) > 0 && !r.failed {
		id := r.byte()
		all = append(all, section{id, r.take(int(r.unsigned()))})
	}
	if r.failed {
		return nil, errModule
	}
	return all, nil
}

// memory is what a program finds in its memory at the start.
type memory struct {
	low   int    // the first address that a segment fills
	bytes []byte // by address, from 0
}

// load lays the segments of a data section out.
func load(body []byte) (*memory, error) {
	r := reader{rest: body}
	m := &memory{low: 1 << 31}
	for n := r.unsigned(); n > 0 && !r.failed; n-- {
		if r.byte() != 0 || r.byte() != constI32 {
			return nil, errModule
		}
		at := int(uint32(r.signed()))
		if r.byte() != end {
			return nil, errModule
		}
		content := r.take(int(r.unsigned()))
		if more := at + len(content) - len(m.bytes); more > 0 {
			if at > 1<<30 {
				return nil, errModule
			}
			m.bytes = append(m.bytes, make([]byte, more)...)
		}
		copy(m.bytes[at:], content)
		m.low = min(m.low, at)
	}
	if r.failed || len(r.rest) > 0 {
		return nil, errModule
	}
	return m, nil
}

// longGap is how many zeros end a segment. The linker ends one at each short run of zeros, and the addresses of sixty
// thousand segments compress badly; zeros compress to nothing.
const longGap = 4096

// store writes the memory as a data section. Memory is zero where nothing is written.
func (m *memory) store() []byte {
	type segment struct{ from, to int }
	var all []segment
	for at := m.low; at < len(m.bytes); at++ {
		if m.bytes[at] == 0 {
			continue
		}
		if n := len(all); n > 0 && at-all[n-1].to < longGap {
			all[n-1].to = at + 1
		} else {
			all = append(all, segment{at, at + 1})
		}
	}
	out := appendUnsigned(nil, uint64(len(all)))
	for _, s := range all {
		out = append(out, 0, constI32)
		out = appendSigned(out, int64(int32(s.from)))
		out = append(out, end)
		out = appendUnsigned(out, uint64(s.to-s.from))
		out = append(out, m.bytes[s.from:s.to]...)
	}
	return out
}

// reader takes a module apart; where it ends too early, failed stays true and what is read is zero.
type reader struct {
	rest   []byte
	failed bool
}

func (r *reader) take(n int) []byte {
	if n < 0 || n > len(r.rest) {
		r.failed, r.rest = true, nil
		return nil
	}
	taken := r.rest[:n]
	r.rest = r.rest[n:]
	return taken
}

func (r *reader) byte() byte {
	if b := r.take(1); b != nil {
		return b[0]
	}
	return 0
}

// unsigned reads a LEB128 number, which is what encoding/binary calls a varint.
func (r *reader) unsigned() uint64 {
	v, n := binary.Uvarint(r.rest)
	if n <= 0 {
		r.take(len(r.rest) + 1)
		return 0
	}
	r.take(n)
	return v
}

// signed reads a LEB128 number in two's complement, which encoding/binary does not know.
func (r *reader) signed() int64 {
	n := slices.IndexFunc(r.rest, func(b byte) bool { return b < 0x80 }) + 1
	var v int64
	digits := bytes.Clone(r.take(n))
	for i, b := range digits {
		v |= int64(b&0x7f) << (7 * i)
	}
	if n == 0 {
		r.failed = true
	} else if shift := 7 * n; digits[n-1]&0x40 != 0 && shift < 64 {
		v |= -1 << shift
	}
	return v
}

func appendUnsigned(out []byte, v uint64) []byte { return binary.AppendUvarint(out, v) }

func appendSigned(out []byte, v int64) []byte {
	for {
		b := byte(v & 0x7f)
		v >>= 7
		if v == 0 && b&0x40 == 0 || v == -1 && b&0x40 != 0 {
			return append(out, b)
		}
		out = append(out, b|0x80)
	}
}
