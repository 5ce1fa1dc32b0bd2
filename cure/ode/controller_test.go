package ode

import (
	"math"
	"testing"
)

// TestController checks the rules of the step size by numbers worked out by hand for an embedded order of 3.
func TestController(t *testing.T) {
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got/want-1) > 1e-14 {
			t.Errorf("%s: got %v, want %v", what, got, want)
		}
	}
	c := newController(3)
	next, full := c.accept(2, 1e-4) // 0.9 (1e-4)^(-1/4) = 9, held at 6
	near("first step of small error", next, 12)
	if !full {
		t.Error("growth at its limit must be told")
	}
	next, full = c.accept(2, 0.0625) // elementary 0.9 * 2; predicted 0.9 (0.01/0.0625^2)^(1/4) = 0.9 * 2 * sqrt(0.4)
	near("rising error", next, 2*0.9*2*math.Pow(0.01/0.0625, 0.25))
	if full {
		t.Error("growth below its limit")
	}
	near("rejection", c.reject(2, 16), 2*0.9/2)
	near("gross rejection", c.reject(2, 1e12), 2*0.2)
	near("no usable state", c.retry(2), 0.5)
	c.reject(4, 4)
	near("second rejection, which shows order 1", c.reject(2, 2), 2*0.9/2)
	near("third, which shows none", c.reject(1, 2), 0.2)
	c.retry(0.5)
	next, _ = c.accept(0.5, 0) // after a rejection nothing grows
	near("after a rejection", next, 0.5)
	next, _ = c.accept(0.5, 0)
	near("zero error", next, 3)
	c.restart()
	next, _ = c.accept(2, 0.0625)
	near("after a restart", next, 2*0.9*2)
}

// TestPatience: an error that does not fall with the step ends in gross steps down, and the count starts anew with every success.
func TestPatience(t *testing.T) {
	c := newController(3)
	for range 2 {
		h := 1.0
		for i := 1; i <= patience+3; i++ {
			next := c.reject(h, 1.05)
			if gross := next == h*maxShrink; gross != (i > patience) {
				t.Errorf("rejection %d: from %v to %v", i, h, next)
			}
			h = next
		}
		c.accept(h, 0.5)
	}
}

// TestUnstick: a size is halved when it has been taken too often in a row, and only then.
func TestUnstick(t *testing.T) {
	c := newController(3)
	for range 2 {
		for i := 1; i < stuck; i++ {
			if got := c.unstick(2, 2); got != 2 {
				t.Fatalf("step %d of one size: got %v", i, got)
			}
		}
		if got := c.unstick(2, 2); got != 1 {
			t.Errorf("step %d of one size: got %v, want half", stuck, got)
		}
	}
	for i := range 4 * stuck {
		if next := 2 + float64(i%2); c.unstick(5-next, next) != next {
			t.Fatal("sizes that change are let be")
		}
	}
}

// TestPlace: the end is met exactly, without a sliver before it.
func TestPlace(t *testing.T) {
	for _, c := range []struct{ t, t1, h, tNew float64 }{
		{1, 3, 0.5, 1.5}, {1, 3, 2, 3}, {1, 3, 9, 3}, {1, 3, 1.99, 3}, {1, 3, 1.9, 2}, {1, 3, 1.01, 2}, {1, 3, 1, 2},
	} {
		tNew, h := place(c.t, c.t1, c.h)
		if tNew != c.tNew || h != c.tNew-c.t {
			t.Errorf("%+v: got %v and %v", c, tNew, h)
		}
	}
}
