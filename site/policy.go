package site

import (
	_ "embed"
	"strings"
)

//go:embed policy.txt
var policy string

// Policy returns the content security policy that the page is built for, as the value of a header. The page holds the
// same as an element; that no other page may frame it can be said by the header alone.
func Policy() string {
	return strings.Join(append(strings.Split(strings.TrimSpace(policy), "\n"), "frame-ancestors 'none'"), "; ")
}
