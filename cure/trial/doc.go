// Package trial reads the tables that people bring: a list pasted from a spreadsheet, the export of a balance or of an oven
// recorder. Bytes go in; out comes a Table in SI units together with what was recognised in it (separator, decimal mark,
// header, units), so that the reader can be shown it before it is used.
//
// Nothing is guessed in silence. What can be read in one way only is read and said (Table.Notes); what could mean two things
// is refused with the line, the column and what to do. A cell that is no number among numbers is a fault of that line, never
// a gap: only the marks of absence that instruments write ("", "-", "n/a", "#N/A", "NaN") are gaps.
//
// The package knows no film and no fit. It is pure: no file is opened, no clock is read.
package trial
