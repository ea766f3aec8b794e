package props

import (
	"math/bits"
	"sort"
	"strings"
)

// nearestMaterials lists up to five materials that a designation may have been
// meant for: those whose id differs by few letters, fewest first, then what
// the search finds.
func (c *Catalog) nearestMaterials(typed string, hits []Hit) []*Material {
	c.once.Do(c.buildIndex)
	type candidate struct {
		m    *Material
		cost int
	}
	var near []candidate
	want := fold(typed)
	limit := 1 + len(want)/6
	for i := range c.Materials {
		have := c.idWord(i)
		if cost := edits(want, have, limit); cost <= limit {
			near = append(near, candidate{c.Materials[i], cost})
		}
	}
	sort.SliceStable(near, func(i, j int) bool { return near[i].cost < near[j].cost })
	var out []*Material
	add := func(m *Material) {
		for _, have := range out {
			if have == m {
				return
			}
		}
		if len(out) < 5 {
			out = append(out, m)
		}
	}
	for _, n := range near {
		add(n.m)
	}
	for _, h := range hits {
		add(h.Material)
	}
	return out
}

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
		if cost := edits(typed, strings.ToLower(k), bestCost); cost < bestCost || (cost == bestCost && (best == "" || k < best)) {
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

// edits is the number of insertions, deletions, replacements and swaps of
// neighbours that turn a into b (optimal string alignment distance). Beyond the
// limit it is only known to be more.
func edits(a, b string, limit int) int {
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
