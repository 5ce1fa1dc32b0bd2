package film

import (
	"math"

	"github.com/drywright/drywright/cure/transfer"
)

// BackFace is what crosses the part's back at one moment.
type BackFace struct {
	Temperature float64 // of the face [K]
	Convected   float64 // from the air into the face [W/m2]
	Radiated    float64 // from walls and lamps into the face [W/m2]
	Contact     float64 // from the carrier into the face [W/m2]
	Coefficient float64 // h of the face [W/(m2 K)]
}

// backFace solves the balance of the back face behind the last half cell: conduction from the last cell (at last [K]),
// convection, radiation and carrier contact sum to zero. The coefficient is taken at the cell's temperature, which is
// the face's within the part's own Biot number.
func backFace(part *Part, face *Face, climate Climate, last, carrier float64) BackFace {
	b := BackFace{Temperature: last}
	conduct := 2 * part.cellConductance()
	contact := 0.0
	if part.Carrier != nil {
		contact = part.Carrier.Contact
	}
	h, eps, lamps := 0.0, 0.0, 0.0
	if part.Back == Exposed {
		h = face.Factor * face.Law.Coefficient(climate.Air, last, climate.Air.Y)
		eps, lamps = face.Emissivity, face.Absorbed
	}
	T := last
	if h > 0 || eps > 0 || lamps > 0 || contact > 0 {
		for range newtonLimit {
			miss := conduct*(last-T) + h*(climate.Air.T-T) + transfer.Radiation(eps, climate.Wall, T) + lamps + contact*(carrier-T)
			step := miss / (conduct + h + 4*eps*transfer.StefanBoltzmann*T*T*T + contact)
			T += step
			if math.Abs(step) < 1e-10*T {
				break
			}
		}
	}
	b.Temperature, b.Coefficient = T, h
	b.Convected = h * (climate.Air.T - T)
	b.Radiated = transfer.Radiation(eps, climate.Wall, T) + lamps
	b.Contact = contact * (carrier - T)
	return b
}
