package service

import (
	"slices"

	"github.com/drywright/drywright/cure/words"
	"github.com/drywright/drywright/cure/words/languages"
)

// Languages are all that the program holds, English first.
func Languages() []Language {
	tags := languages.Tags()
	slices.SortStableFunc(tags, func(a, b string) int {
		switch {
		case a == b:
			return 0
		case a == "en":
			return -1
		case b == "en":
			return 1
		}
		return 0
	})
	var all []Language
	for _, tag := range tags {
		all = append(all, Language{tag, func() (*words.Words, error) { return languages.Open(tag) }})
	}
	return all
}
