// Package languages holds the files of the languages for programs that run outside a browser; a page fetches them. A
// further language is a further file of the same keys.
package languages

import (
	"embed"
	"fmt"
	"strings"

	"github.com/drywright/drywright/cure/words"
)

// Files are the language files, named by their language tag ("en.json").
//
//go:embed *.json
var Files embed.FS

// Tags lists the languages, in alphabetical order.
func Tags() []string {
	entries, _ := Files.ReadDir(".") // an embedded folder always reads
	var tags []string
	for _, e := range entries {
		tags = append(tags, strings.TrimSuffix(e.Name(), ".json"))
	}
	return tags
}

// Open reads the words of a language. Errors: there is no such language.
func Open(tag string) (*words.Words, error) {
	text, err := Files.ReadFile(tag + ".json")
	if err != nil {
		return nil, fmt.Errorf("there is no language %q; give one of %s", tag, strings.Join(Tags(), ", "))
	}
	return words.Parse(text)
}

// English is the language that all others are made from.
func English() *words.Words {
	w, err := Open("en")
	if err != nil {
		panic(err) // the file is part of the program
	}
	return w
}
