package main

import "github.com/syumai/workers/cloudflare"

// variable is a variable that the platform was configured with; empty where it was not.
func variable(name string) string { return cloudflare.Getenv(name) }
