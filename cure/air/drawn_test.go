package air_test

import "flag"

// Properties draw the same cases every time, so that what fails is what was changed; -rapid.seed=0 draws others.
func init() {
	if err := flag.Set("rapid.seed", "1"); err != nil {
		panic(err)
	}
}
