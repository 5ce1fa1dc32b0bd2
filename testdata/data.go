// Package testdata holds the published numbers that the product is compared with, as data, so that they have one home for tests,
// for the validation table and for anything that shows it; and the tables of trials that tests read.
package testdata

import "embed"

// Files are the entries by subject, <subject>/rows.json.
//
//go:embed */rows.json
var Files embed.FS

//go:embed trials
var trials embed.FS

// Trials are the tables of trials as people write them, well and badly, in the order of their names.
func Trials() ([][]byte, error) {
	files, err := trials.ReadDir("trials")
	if err != nil {
		return nil, err
	}
	all := make([][]byte, len(files))
	for i, file := range files {
		if all[i], err = trials.ReadFile("trials/" + file.Name()); err != nil {
			return nil, err
		}
	}
	return all, nil
}
