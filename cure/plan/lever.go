package plan

import (
	"fmt"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// lever is a change of the plant or the coat that a limit is asked about: how far would it move?
type lever struct {
	name     string // of the change, stable: "longer", "hotter", ...
	place    string // of a zone
	variable string
	change   float64 // a difference, or the share by which it changes where relative
	relative bool
}

// levers lists what is worth asking about on a route.
func levers(j *job.Job, kind result.Kind) []lever {
	thinner := lever{name: "thinner", variable: Coat, change: -0.010}
	more := lever{name: "exhaust", variable: Exhaust, change: 0.1, relative: true}
	switch kind {
	case result.Room:
		return []lever{{name: "warmer", variable: RoomTemperature, change: 2}, {name: "drier", variable: RoomHumidity, change: -0.05},
			{name: "airing", variable: AirChanges, change: 0.5, relative: true}, {name: "lighter", variable: RackLoad, change: -0.1, relative: true}, thinner}
	case result.StaticOven:
		return []lever{{name: "hotter", variable: SetPoint, change: 10}, {name: "dwell", variable: Dwell, change: 300}, more, thinner}
	}
	var all []lever
	for i := range j.Tunnel.Zones {
		all = append(all, lever{name: "longer", place: j.Tunnel.Zones[i].Name, variable: fmt.Sprintf("tunnel.zones[%d].length_m", i), change: 1})
	}
	return append(all, lever{name: "hotter", variable: ZonesInStep, change: 10}, more, thinner)
}

// moved is the value of the lever's variable after the change.
func (l *lever) moved(present float64) float64 {
	if l.relative {
		return present * (1 + l.change)
	}
	return present + l.change
}
