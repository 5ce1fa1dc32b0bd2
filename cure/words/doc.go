// Package words turns keys and values into sentences of one language. It knows no language itself: the files in
// languages hold them, one a language, for the core ("core") and for the page ("page").
//
// # Messages
//
// A message is written in a part of ICU MessageFormat (the classic syntax that the Unicode Consortium's ICU documents, and that
// Unicode Technical Standard 35, part 9, succeeds):
//
//   - Text stands for itself.
//   - {name} is an argument: a letter or underscore, then letters, digits and underscores. A text goes in as it is, a number with the
//     language's decimal mark, a typographic minus and no grouping.
//   - {n, plural, =0 {none} one {# day} other {# days}} chooses by a number: first the branch =N that equals it, else the one of its
//     plural category, else "other", which must stand. # is the number; in a plural within a plural, the inner one's. Branches are
//     messages. "offset:" is not understood.
//   - An apostrophe stands for itself, except before { or }, or before # inside a plural: there it begins a quoted text, which
//     ends at the next single apostrophe or with the message. Two apostrophes stand for one, inside and outside of quotes.
//
// A lone } outside of a branch, which ICU lets pass, is an error here, so that a slip is seen.
//
// # Files
//
// A language file is {"tag", "name", "decimal_mark", "plural", "core", "page"}: "core" and "page" hold messages under nested keys,
// "plural" the language's cardinal rules of the Unicode CLDR by category, as written there ("i = 1 and v = 0"); "other" needs none.
//
// A key of the core whose place differs while its words do not stands once, with a star for the place (see Words.Has).
//
// A key or argument that is missing, and a message that is malformed, show as ⟦name⟧ in the text: never a crash, never
// silence. Tests look for these brackets, and compare keys and arguments between languages.
//
// The same messages, arguments and results, for every implementation of this format, stand in testdata/words/messages.json.
package words
