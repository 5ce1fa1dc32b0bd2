// Package testdata holds the published numbers that the product is compared with, as data. It has no other code, so that
// they have one home for tests, for the validation table and for anything that shows it.
package testdata

import "embed"

// Files are the entries by subject, <subject>/rows.json.
//
//go:embed */rows.json
var Files embed.FS
