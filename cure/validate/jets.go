package validate

// jets is air blown at the part from slots and round nozzles.
func jets() cases { return cases{} }
