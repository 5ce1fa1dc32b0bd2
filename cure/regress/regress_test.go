package regress

import (
	"math"
	"testing"
)

// A straight line has a closed form: Draper and Smith's sums. The search must meet it, and so must the standard errors.
func TestStraightLine(t *testing.T) {
	x := []float64{0, 1, 2, 3, 4, 5, 6, 7}
	y := []float64{1.1, 2.9, 5.2, 7.1, 8.8, 11.1, 13.2, 14.8}
	var mx, my, sxx, sxy float64
	for i := range x {
		mx, my = mx+x[i]/8, my+y[i]/8
	}
	for i := range x {
		sxx += square(x[i] - mx)
		sxy += (x[i] - mx) * (y[i] - my)
	}
	slope := sxy / sxx
	var sum float64
	for i := range x {
		sum += square(y[i] - my - slope*(x[i]-mx))
	}
	r, err := Fit(line(x), Data{Y: y}, free(0, 0), Options{})
	if err != nil {
		t.Fatal(err)
	}
	s := math.Sqrt(sum / 6)
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"slope", r.Parameters[1].Value, slope}, {"intercept", r.Parameters[0].Value, my - slope*mx},
		{"error of the slope", r.Parameters[1].Error, s / math.Sqrt(sxx)}, {"sigma", r.Sigma, s},
		{"half interval", r.Parameters[1].High - r.Parameters[1].Value, 2.4469 * s / math.Sqrt(sxx)}, // t of 6 degrees, tables
		{"band at the mean", (r.Band[3] + r.Band[4]) / 2, 2.4469 * s * math.Sqrt(1.0/8+0.25/sxx)},
		{"correlation", r.Correlation.At(0, 1), -mx / math.Sqrt(sxx/8+mx*mx)},
	} {
		if math.Abs(c.got-c.want) > 1e-4*math.Abs(c.want) { // the digits of the table of t
			t.Errorf("%s %.8g, want %.8g", c.what, c.got, c.want)
		}
	}
}

func line(x []float64) Model {
	return func(p, y []float64) error {
		for i := range y {
			y[i] = p[0] + p[1]*x[i]
		}
		return nil
	}
}

func free(start ...float64) []Parameter {
	var p []Parameter
	for _, s := range start {
		p = append(p, Parameter{Start: s, Low: math.Inf(-1), High: math.Inf(1)})
	}
	return p
}

// Quantiles of t as printed in every table.
func TestQuantile(t *testing.T) {
	for _, c := range []struct{ level, freedom, want float64 }{
		{0.95, 1, 12.7062}, {0.95, 2, 4.3027}, {0.95, 10, 2.2281}, {0.95, 30, 2.0423}, {0.99, 5, 4.0321}, {0.95, math.Inf(1), 1.9600},
	} {
		if got := Quantile(c.level, c.freedom); math.Abs(got-c.want) > 5e-5 { // half of the last digit printed
			t.Errorf("t(%g, %g) = %.5f, want %.4f", c.level, c.freedom, got, c.want)
		}
	}
}

// The stream of SplitMix64 is that of its published implementations.
func TestRandom(t *testing.T) {
	r := NewRandom(1234567)
	for i, want := range []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821} {
		if got := r.Uint64(); got != want {
			t.Errorf("number %d is %d, want %d", i, got, want)
		}
	}
	var sum, squares float64
	const n = 100_000
	for range n {
		v := r.Normal()
		sum, squares = sum+v, squares+v*v
	}
	// Four standard errors of a mean and of a variance.
	if math.Abs(sum/n) > 4/math.Sqrt(n) || math.Abs(squares/n-1) > 4*math.Sqrt(2.0/n) {
		t.Errorf("mean %g, variance %g", sum/n, squares/n)
	}
}

// One wild datum moves plain least squares by much and the robust fit by little, and says so in its weight.
func TestOutlier(t *testing.T) {
	x, y := noisy(30, 0.1, 7)
	y[12] += 5
	plain, err := Fit(line(x), Data{Y: y}, free(0, 0), Options{})
	if err != nil {
		t.Fatal(err)
	}
	robust, err := Fit(line(x), Data{Y: y}, free(0, 0), Options{Robust: true})
	if err != nil {
		t.Fatal(err)
	}
	off := func(r *Result) float64 { return math.Abs(r.Parameters[0].Value - 1) }
	if off(robust) > 0.1 || off(plain) < 2*off(robust) { // 0.1: some standard errors of the intercept, 0.037
		t.Errorf("intercept off by %g plain, %g robust", off(plain), off(robust))
	}
	if robust.Weights[12] > 0.1 || robust.Sigma > 0.2 || plain.Sigma < 0.5 {
		t.Errorf("weight %g, sigma %g robust, %g plain", robust.Weights[12], robust.Sigma, plain.Sigma)
	}
}

// noisy is y = 1 + 2x with normal noise.
func noisy(n int, sigma float64, seed uint64) (x, y []float64) {
	r := NewRandom(seed)
	for i := range n {
		x = append(x, float64(i)/float64(n))
		y = append(y, 1+2*x[i]+sigma*r.Normal())
	}
	return x, y
}

// Bounds stop the search, and the parameter that stands there has no interval; the other one is fitted as if it were given.
func TestBound(t *testing.T) {
	x, y := noisy(20, 0.01, 3)
	p := free(0, 0)
	p[1].High = 1.5
	r, err := Fit(line(x), Data{Y: y}, p, Options{})
	if err != nil {
		t.Fatal(err)
	}
	mean := 0.0
	for i := range y {
		mean += (y[i] - 1.5*x[i]) / 20
	}
	if !r.Parameters[1].AtBound || r.Parameters[1].Value != 1.5 || math.Abs(r.Parameters[0].Value-mean) > 1e-9 {
		t.Errorf("%+v", r.Parameters)
	}
}

// A parameter that the data do not touch stays at its prior, and is said to have learnt nothing; one that they tell forgets it.
func TestPrior(t *testing.T) {
	x, y := noisy(40, 0.05, 11)
	p := append(free(0, 0), Parameter{Start: 3, Low: 0.01, High: 100, Log: true, Prior: &Prior{Mean: 4, SD: 0.7}})
	p[1].Prior = &Prior{Mean: 0, SD: 100}
	r, err := Fit(line(x), Data{Y: y}, p, Options{})
	if err != nil {
		t.Fatal(err)
	}
	idle := r.Parameters[2]
	if math.Abs(idle.Value-4) > 1e-6 || idle.Learnt > 1e-6 || math.Abs(idle.Error-0.7) > 1e-6 {
		t.Errorf("untouched: %+v", idle)
	}
	if told := r.Parameters[1]; told.Learnt < 0.99 || math.Abs(told.Value-2) > 0.1 {
		t.Errorf("told: %+v", told)
	}
	if math.Abs(r.Freedom-38) > 1e-3 { // two parameters are told by 40 data
		t.Errorf("freedom %g", r.Freedom)
	}
}

// decay is a bent model, y = a exp(-b x), with b searched in its logarithm.
func decay(x []float64) (Model, []Parameter) {
	m := func(p, y []float64) error {
		for i := range y {
			y[i] = p[0] * math.Exp(-p[1]*x[i])
		}
		return nil
	}
	return m, []Parameter{{Name: "a", Start: 1, Low: 0, High: 100}, {Name: "b", Start: 1, Low: 1e-3, High: 1e3, Log: true}}
}

// True parameters lie in the 95 % intervals about as often as stated: of 400 seeds within three standard errors of a share,
// 3 sqrt(0.95 0.05/400) = 3.3 %; plain and robust.
func TestCoverage(t *testing.T) {
	x := make([]float64, 24)
	for i := range x {
		x[i] = float64(i) / 8
	}
	m, p := decay(x)
	for _, robust := range []bool{false, true} {
		covered := [2]int{}
		const seeds = 400
		for seed := range uint64(seeds) {
			noise := NewRandom(seed)
			y := make([]float64, len(x))
			if err := m([]float64{2, 1.3}, y); err != nil {
				t.Fatal(err)
			}
			for i := range y {
				y[i] += 0.03 * noise.Normal()
			}
			r, err := Fit(m, Data{Y: y}, p, Options{Robust: robust})
			if err != nil {
				t.Fatal(err)
			}
			for j, truth := range []float64{2, 1.3} {
				if r.Parameters[j].Low <= truth && truth <= r.Parameters[j].High {
					covered[j]++
				}
			}
		}
		for j, n := range covered {
			if share := float64(n) / seeds; math.Abs(share-0.95) > 0.033 {
				t.Errorf("robust %t, parameter %d: covered in %.1f %%", robust, j, 100*share)
			}
		}
	}
}

// The bootstrap of a nearly straight model agrees with the Jacobian's intervals: of 400 refits within a fifth of their width,
// about three times the noise of a percentile.
func TestBootstrap(t *testing.T) {
	x := make([]float64, 40)
	for i := range x {
		x[i] = float64(i) / 13
	}
	m, p := decay(x)
	y := make([]float64, len(x))
	if err := m([]float64{2, 1.3}, y); err != nil {
		t.Fatal(err)
	}
	noise := NewRandom(5)
	for i := range y {
		y[i] += 0.03 * noise.Normal()
	}
	r, err := Fit(m, Data{Y: y}, p, Options{})
	if err != nil {
		t.Fatal(err)
	}
	low, high, err := Bootstrap(m, Data{Y: y}, p, Options{}, r, 400, NewRandom(1))
	if err != nil {
		t.Fatal(err)
	}
	for j, q := range r.Parameters {
		width := q.High - q.Low
		if math.Abs(low[j]-q.Low) > width/5 || math.Abs(high[j]-q.High) > width/5 {
			t.Errorf("%s: %g to %g, bootstrap %g to %g", q.Name, q.Low, q.High, low[j], high[j])
		}
	}
	again, _, err := Bootstrap(m, Data{Y: y}, p, Options{}, r, 400, NewRandom(1))
	if err != nil || again[0] != low[0] || again[1] != low[1] {
		t.Error("the same seed gives another bootstrap")
	}
}

// Weights: a datum of ten times the spread counts a hundredth.
func TestWeights(t *testing.T) {
	y, w := []float64{1, 2}, []float64{10, 1}
	r, err := Fit(func(p, out []float64) error { out[0], out[1] = p[0], p[0]; return nil }, Data{Y: y, Weight: w}, free(0), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if want := (100*1 + 1*2) / 101.0; math.Abs(r.Parameters[0].Value-want) > 1e-9 {
		t.Errorf("%g, want %g", r.Parameters[0].Value, want)
	}
	if _, err := Fit(line(y), Data{Y: y[:1]}, free(0, 0), Options{}); err == nil {
		t.Error("one datum fits two parameters")
	}
}
