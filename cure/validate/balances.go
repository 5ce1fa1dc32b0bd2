package validate

// balances are the accounts of air, water and heat in ovens and rooms.
func balances() cases { return cases{} }
