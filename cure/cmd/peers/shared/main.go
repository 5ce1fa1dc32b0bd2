//go:build peers

// Command shared is the coupon's right-hand side as a C library, so that other integrators solve the same equations:
//
//	go build -tags peers -buildmode=c-shared -o libcoupon.so ./cure/cmd/peers/shared
//
// One coupon at a time; call it from one thread. All arrays are in the order of coupon.Order.
package main

// #include <stdint.h>
import "C"

import (
	"unsafe"

	"github.com/drywright/drywright/cure/cmd/peers/coupon"
)

// bench is the coupon that the library holds, with its unknowns in its own order.
type bench struct {
	coupon *coupon.Coupon
	order  []int
	y, f   []float64
}

var held bench

func array(p *C.double, n int) []float64 { return unsafe.Slice((*float64)(unsafe.Pointer(p)), n) }

// coupon_new lays the coupon out and returns the number of unknowns, 0 when it cannot.
//
//export coupon_new
func coupon_new(cells C.int) C.int {
	c, err := coupon.New(int(cells))
	if err != nil {
		return 0
	}
	n := len(c.Start())
	held = bench{coupon: c, order: c.Order(), y: make([]float64, n), f: make([]float64, n)}
	return C.int(n)
}

// coupon_start writes the unknowns at time zero and their ranges.
//
//export coupon_start
func coupon_start(y, scale *C.double) {
	start, ranges := held.coupon.Start(), held.coupon.Scale()
	to, s := array(y, len(start)), array(scale, len(start))
	for i, at := range held.order {
		to[i], s[i] = start[at], ranges[at]
	}
}

// coupon_rates writes the rates of k states, each a row.
//
//export coupon_rates
func coupon_rates(t C.double, y, f *C.double, k C.int) {
	n := len(held.y)
	ys, fs := array(y, n*int(k)), array(f, n*int(k))
	for row := range int(k) {
		from, to := ys[row*n:(row+1)*n], fs[row*n:(row+1)*n]
		for i, at := range held.order {
			held.y[at] = from[i]
		}
		held.coupon.System.Derivative(float64(t), held.y, held.f)
		for i, at := range held.order {
			to[i] = held.f[at]
		}
	}
}

// coupon_margins writes how far the marks are.
//
//export coupon_margins
func coupon_margins(y, g *C.double) {
	from := array(y, len(held.y))
	for i, at := range held.order {
		held.y[at] = from[i]
	}
	held.coupon.Margins(held.y, array(g, len(coupon.Marks)))
}

func main() {}
