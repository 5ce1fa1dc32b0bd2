// Package report puts a result into words and digits, once, for everyone who shows it: the command, the page and every
// later reader print the strings made here, so that they agree to the printed digit.
//
// All words stand in one table (words.go); another language is another such table. All numbers pass through the
// functions of digits.go, each of which states its one rule of rounding. The package computes nothing: it reads a
// result.Result and fills its text fields (Fill), or lays it out as a table (Table) or as separated values (CSV).
package report
