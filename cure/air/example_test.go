package air_test

import (
	"fmt"

	. "github.com/drywright/drywright/cure/air"
)

func ExampleState() {
	oven, err := FromDewPoint(423.15, 101325, 325.75, true)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.4f kg/kg, wet bulb %.1f degC, %.3f kg/m3\n", oven.HumidityRatio(), oven.WetBulb()-273.15, oven.Density())
	// Output: 0.1006 kg/kg, wet bulb 59.2 degC, 0.790 kg/m3
}
