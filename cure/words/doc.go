// Package words turns keys and values into sentences of one language. It knows no language itself: the files in
// languages hold them, one a language, for the core ("core") and for the page ("page").
//
// A message is written in a part of ICU MessageFormat (Unicode Technical Standard 35, part 9, its classic syntax): text,
// arguments as {name}, and {n, plural, =0 {...} one {...} other {...}} in which # stands for the number.
package words
