//go:build page

package site

import (
	"embed"
	"io/fs"
)

//go:embed all:dist
var dist embed.FS

// Page returns the files of the built page, and whether there are any.
func Page() (fs.FS, bool) {
	page, err := fs.Sub(dist, "dist")
	return page, err == nil
}
