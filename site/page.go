// Package site hands the built page to the command that serves it. The page is embedded when the program is compiled
// with the build tag "page", which needs the folder dist to be there; without the tag the program compiles in a fresh
// clone and says that the page is missing.
package site
