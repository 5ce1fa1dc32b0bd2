package kinetics

import (
	"encoding/binary"
	"errors"
	"math"
	"testing"

	"github.com/drywright/drywright/cure/fault"
)

// Whatever a schedule says, the fit ends with a law of numbers or with a fault that names the place.
func FuzzFitSchedule(f *testing.F) {
	seed := func(values ...float64) []byte {
		var b []byte
		for _, v := range values {
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(v))
		}
		return b
	}
	f.Add(seed(353.15, 3600, 393.15, 300), 0.95, 1.0)
	f.Add(seed(353.15, 300, 393.15, 3600), 0.95, 1.0)
	f.Add(seed(353.15, 300, 353.15, 300), 0.95, 1.0)
	f.Add(seed(353.15, 300), 0.95, 2.0)
	f.Add(seed(1e-300, 1e300, 1e300, 1e-300), 1e-300, 1e-300)
	f.Add(seed(math.NaN(), math.Inf(1), -1, 0), math.NaN(), -1.0)
	f.Fuzz(func(t *testing.T, data []byte, conversion, order float64) {
		var pairs []Pair
		for len(data) >= 16 && len(pairs) < 32 {
			pairs = append(pairs, Pair{math.Float64frombits(binary.LittleEndian.Uint64(data)), math.Float64frombits(binary.LittleEndian.Uint64(data[8:]))})
			data = data[16:]
		}
		a, e, misfit, err := FitSchedule(pairs, conversion, order)
		var told *fault.Fault
		switch {
		case err != nil && !errors.As(err, &told):
			t.Fatalf("%T: %v", err, err)
		case err == nil && (math.IsNaN(a) || math.IsNaN(e) || math.IsNaN(misfit) || e < 0 || a < 0):
			t.Fatalf("%v at %g, order %g: A %g, E %g, misfit %g", pairs, conversion, order, a, e, misfit)
		}
	})
}
