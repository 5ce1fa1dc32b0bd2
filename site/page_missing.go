//go:build !page

package site

import "io/fs"

// Page returns the files of the built page, and whether there are any.
func Page() (fs.FS, bool) { return nil, false }
