package transfer_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
"strconv"
"sort"
	"testing"

	"github.com/drywright/drywright/cure/air"
	. "github.com/drywright/drywright/cure/transfer"
)

func TestZZ(t *testing.T) {
	B, _ = strconv.ParseFloat(os.Getenv("B"), 64)
Q2, _ = strconv.ParseFloat(os.Getenv("Q2"), 64)
C0, _ = strconv.ParseFloat(os.Getenv("C0"), 64)
	r := rand.New(rand.NewPCG(11, 2))
	type bad struct {
		fall float64
		s    string
	}
	by := map[string][]bad{}
	n := map[string]int{}
	for range 400000 {
		Ta := 273 + 227*r.Float64()
		T := math.Max(273,math.Min(500, Ta + math.Pow(10, -1+3*r.Float64())*float64(1-2*r.IntN(2))))
		full := air.SaturatedFraction(Ta, 101325, true)
		y := math.Min(1, full) * r.Float64()
		switch r.IntN(5) {
		case 0:
			y = math.Min(full, 1-math.Pow(10, -10*r.Float64()))
		case 1: y = math.Min(1, full)
		}
		if y<=0 {continue}
		a := air.State{T: Ta, P: 101325, Y: y, Real: true}
		if r.IntN(2)==0 { a.P = 6e4+5e4*r.Float64(); a.Y=min(a.Y, air.SaturatedFraction(Ta,a.P,true)) }
L := 4* math.Pow(200, -r.Float64()*r.Float64()*r.Float64())
		o := Orientation(r.IntN(3))
		var law Law
		kind := ""
		switch r.IntN(8) {
		case 0:
			law, kind = Given{25}, "given"
		case 1:
			law, kind = Parallel{Velocity: 3, Length: L}, "parallel"
		case 2,4,5,6:
			law, kind = Buoyant{L, o}, fmt.Sprint("buoyant", o)
		default:
			law, kind = Combined{Parallel{Velocity: r.Float64(), Length: L}, Buoyant{L, o}}, fmt.Sprint("combined", o)
		}
		s := &Surface{Air: a, Wall: a.T, Law: law, Emissivity: 0.9, Factor: 1}
		if r.IntN(2) == 0 {
			pp := flock; pp.Length = 3e-3*r.Float64(); pp.Conductivity=.03+.1*r.Float64(); s.Pile=&pp; s.Factor=.3+2*r.Float64()
			kind += " pile"
		}
		if y > 0.9 { kind += " steam" }
		if T > 373.2 { kind += " hot" }
		p := s.Prepare(T)
		top, bot, run, fall, where := math.Inf(-1), math.Inf(1), math.Inf(-1), 0.0, 0.0
		// uniform in a and in w
		var as []float64
		f := p.SaturatedFraction()
		for i := 0; i <= 100; i++ {
			as = append(as, y/f*float64(i)/100)
			as = append(as, float64(i)/100)
			if x := -math.Expm1(-float64(i)/100*20.7) / f; x < 1 {
				as = append(as, x)
			}
		}
		sort.Float64s(as)
		last := math.Inf(-1)
		_ = last
		for _, x := range as {
			if x > 1 { break }
			j, _ := p.Flux(x)
			run = math.Max(run, j)
			if x*f < 1 { top, bot = math.Max(top, j), math.Min(bot, j) }
			if d := run - j; d > fall {
				fall, where = d, x
			}
		}
		n[kind]++
		if fall > 0 {
			by[kind] = append(by[kind], bad{fall / (top - bot), fmt.Sprintf("T %.1f Ta %.1f y %.3f L %.2f full %.3f a %.3f fall %.2g of %.2g..%.2g %+v", T, Ta, y, L, f, where, fall, bot, top, law)})
		}
	}
	var ks []string
	for k := range n {
		ks = append(ks, k)
	}
	sort.Strings(ks)
	for _, k := range ks {
		b := by[k]
		sort.Slice(b, func(i, j int) bool { return b[i].fall > b[j].fall })
		fmt.Println(k, len(b), "of", n[k])
		for i := 0; i < len(b) && i < 1; i++ {
			fmt.Printf("   %.2g %s\n", b[i].fall, b[i].s)
		}
	}
}
