//go:build !js

package main

import "os"

// variable is a variable of the environment; empty where it is not set.
func variable(name string) string { return os.Getenv(name) }
