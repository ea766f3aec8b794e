// Package spelling finds the known word that was meant by a mistyped one, and keeps
// patterns of words.
package spelling

import "strings"

// Nearest returns the known word with the fewest edits from the typed one,
// without regard to case; the first in alphabetical order among equals. It is
// "" when no word is within one edit and another for every four letters typed.
func Nearest(typed string, known []string) string {
	typed = strings.ToLower(typed)
	best, fewest := "", 1+len(typed)/4
	for _, k := range known {
		edits := Edits(typed, strings.ToLower(k), fewest)
		if edits < fewest || edits == fewest && (best == "" || k < best) {
			best, fewest = k, edits
		}
	}
	return best
}

// Edits is the number of letters to insert, delete or replace, and of
// neighbors to swap, that turn a into b. It counts bytes. A result above the
// limit only says that there are more than the limit.
//
// This is the optimal string alignment distance: the edit distance with the
// four errors of "A technique for computer detection and correction of
// spelling errors", Communications of the ACM 7 (1964) 171–176, where no part
// of the word is edited twice.
func Edits(a, b string, limit int) int {
	if len(a)-len(b) > limit || len(b)-len(a) > limit {
		return limit + 1
	}
	// A row holds the edits that turn the first i letters of a into the first j
	// of b, for each j; the two rows above it are kept.
	row, above, above2 := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row, above, above2 = above2, row, above
		row[0] = i
		for j := 1; j <= len(b); j++ {
			replaced := above[j-1]
			if a[i-1] != b[j-1] {
				replaced++
			}
			row[j] = min(above[j]+1, row[j-1]+1, replaced)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], above2[j-2]+1)
			}
		}
	}
	return row[len(b)]
}
