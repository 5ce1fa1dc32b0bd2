// Package languages holds the files of the languages for programs that run outside a browser; a page fetches them. A
// further language is a further file of the same keys.
package languages

import "embed"

// Files are the language files, named by their language tag ("en.json").
//
//go:embed *.json
var Files embed.FS
