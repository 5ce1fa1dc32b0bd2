// Command hardy does what leans on the tables that slim clears: it panics and recovers through inlined and wrapped calls, lets
// the collector scan deep and odd stacks, and grows them. It prints "ok" when all went as it should.
package main

import (
	"errors"
	"fmt"
	"reflect"
	"runtime"
	"strings"
)

type size struct{ n [8]int }

func (s size) Sum() int { return s.n[0] + s.n[7] }

// summers are called through the wrapper that the compiler makes for pointers.
var summers = []interface{ Sum() int }{(*size)(nil)}

// caught gives what a function panics with.
func caught(f func()) (words string) {
	defer func() { words = fmt.Sprint(recover()) }()
	f()
	return "nothing"
}

// helper recovers in the name of whoever defers a call to it; called by a deferred function it must not.
func helper() any { return recover() }

type tree struct {
	left, right *tree
	load        []byte
}

func grow(depth int) *tree {
	if depth == 0 {
		return &tree{load: make([]byte, 100)}
	}
	return &tree{left: grow(depth - 1), right: grow(depth - 1), load: make([]byte, depth)}
}

func (t *tree) weight() int {
	if t == nil {
		return 0
	}
	return len(t.load) + t.left.weight() + t.right.weight()
}

// deep keeps pointers on every frame of a tall stack while the collector runs.
func deep(n int, kept *tree) int {
	own := grow(2)
	if n == 0 {
		runtime.GC()
		return kept.weight()
	}
	return deep(n-1, kept) + own.weight() - own.weight()
}

func check(what string, got, want any) {
	if got != want {
		panic(fmt.Sprintf("%s: %v, expected %v", what, got, want))
	}
}

func main() {
	check("nil receiver", caught(func() { summers[0].Sum() }), "value method main.size.Sum called using nil *size pointer")
	list := []int{1, 2, 3}
	check("index", strings.Contains(caught(func() { _ = list[len(list)+runtime.NumGoroutine()] }), "index out of range [4] with length 3"), true)
	check("own words", caught(func() { panic(errors.New("own words")) }), "own words")
	check("nothing", caught(func() {}), "<nil>")
	check("a level too deep", caught(func() {
		defer func() { _ = helper() }()
		panic("goes on")
	}), "goes on")
	check("in a method value", caught(func() {
		defer reflect.ValueOf(helper).Call(nil)
		panic("through reflect")
	}), "through reflect")

	kept := grow(12)
	before := kept.weight()
	check("deep stack", deep(20000, kept), before)
	made := reflect.MakeFunc(reflect.TypeFor[func(*tree, []byte) int](), func(args []reflect.Value) []reflect.Value {
		runtime.GC()
		grow(10)
		return []reflect.Value{reflect.ValueOf(args[0].Interface().(*tree).weight() + args[1].Len())}
	}).Interface().(func(*tree, []byte) int)
	check("made function", made(grow(3), make([]byte, 5)), grow(3).weight()+5)
	method := reflect.ValueOf(kept).MethodByName("Weight").Interface().(func(int) int)
	check("method by name", method(20000), before)

	answers := make(chan int)
	for range 50 {
		go func() {
			defer func() { recover(); answers <- deep(200, grow(4)) }()
			panic("in a goroutine")
		}()
	}
	for range 50 {
		check("goroutine", <-answers, grow(4).weight())
	}
	check("kept", kept.weight(), before)
	for range 1000 {
		runtime.Gosched() // until all are through their last line
	}
	check("goroutines of the user", runtime.NumGoroutine(), 1)
	fmt.Println("ok")
}

// Weight is called through reflect, with the collector at work underneath.
func (t *tree) Weight(depth int) int { return deep(depth, t) }
