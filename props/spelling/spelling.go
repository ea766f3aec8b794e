// Package spelling finds the word that was meant by a mistyped one.
package spelling

import (
	"math/bits"
	"strings"
)

// Nearest returns the known word with the fewest edits from the typed one, ""
// when none is near enough to be meant.
func Nearest(typed string, known []string) string {
	typed = strings.ToLower(typed)
	best, bestCost, letters := "", 1+len(typed)/3, lettersOf(typed)
	for _, k := range known {
		// One edit changes at most two letters of the set.
		if bits.OnesCount64(letters^lettersOf(k)) > 2*bestCost {
			continue
		}
		if cost := Edits(typed, strings.ToLower(k), bestCost); cost < bestCost || (cost == bestCost && (best == "" || k < best)) {
			best, bestCost = k, cost
		}
	}
	return best
}

// lettersOf is the set of letters and digits of a word, without regard to case.
func lettersOf(s string) (set uint64) {
	for i := range len(s) {
		set |= 1 << (s[i] | 0x20) % 64
	}
	return set
}

// Edits is the number of insertions, deletions, replacements and swaps of
// neighbours that turn a into b (optimal string alignment distance). Beyond the
// limit it is only known to be more.
func Edits(a, b string, limit int) int {
	if d := len(a) - len(b); d > limit || -d > limit {
		return limit + 1
	}
	var fixed [3][24]int // words are short; this stays off the heap
	before, prev, cur := fixed[0][:], fixed[1][:], fixed[2][:]
	if len(b) >= len(cur) {
		before, prev, cur = make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	}
	for j := range len(b) + 1 {
		prev[j] = j
	}
	for i := 1; i <= len(a); i++ {
		// Cells further than the limit from the diagonal cost more than it.
		from, to := max(1, i-limit), min(len(b), i+limit)
		cur[from-1] = limit + 1
		if from == 1 {
			cur[0] = i
		}
		least := cur[from-1]
		for j := from; j <= to; j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			cur[j] = min(prev[j]+1, cur[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				cur[j] = min(cur[j], before[j-2]+1)
			}
			least = min(least, cur[j])
		}
		if to < len(b) {
			cur[to+1] = limit + 1
		}
		if least > limit {
			return limit + 1
		}
		before, prev, cur = prev, cur, before
	}
	return prev[len(b)]
}
