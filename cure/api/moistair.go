package api

import (
	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/result"
)

// MoistAirQuestion asks for one route of the job on a moist-air chart.
type MoistAirQuestion struct {
	Route result.Kind `json:"route"`
}

// moistAir answers moist_air.
func (q Request) moistAir() (Response, error) {
	if q.MoistAir == nil {
		return Response{}, missing("moist_air")
	}
	j, err := q.decode()
	if err != nil {
		return Response{}, err
	}
	m, err := cure.MoistAir(j, q.MoistAir.Route)
	return Response{MoistAir: &m}, err
}
