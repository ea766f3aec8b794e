package ui

import (
	"strings"
	"unicode"
)

// Marked draws a text in an ink, with the letters that the words of a query
// stand for in another: signs between letters do not count, and a word may be
// found in pieces (a356t6 in A356.0-T6).
func Marked(s, query string, ink, found Ink) string {
	var letters []rune // of the text, small, without signs
	var at []int       // which rune of the text each is
	text := []rune(s)
	for i, r := range text {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			letters, at = append(letters, unicode.ToLower(r)), append(at, i)
		}
	}
	hit := make([]bool, len(text))
	for _, word := range strings.FieldsFunc(strings.ToLower(query), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		for w := []rune(word); len(w) > 0; {
			n, where := longest(letters, w)
			if n < 2 && len([]rune(word)) > 1 {
				break
			}
			for k := range n {
				hit[at[where+k]] = true
			}
			w = w[max(n, 1):]
		}
	}
	var b strings.Builder
	for i := 0; i < len(text); {
		end := i + 1
		for end < len(text) && hit[end] == hit[i] {
			end++
		}
		if hit[i] {
			b.WriteString(found.Of(string(text[i:end])))
		} else {
			b.WriteString(ink.Of(string(text[i:end])))
		}
		i = end
	}
	return b.String()
}

// longest is how many runes from the beginning of a word stand in a text, and
// where.
func longest(text, word []rune) (n, where int) {
	for i := range text {
		k := 0
		for k < len(word) && i+k < len(text) && text[i+k] == word[k] {
			k++
		}
		if k > n {
			n, where = k, i
		}
	}
	return n, where
}
