package props

import (
	"sort"
	"strings"
	"sync"
	"unicode"
)

// Hit is a material found by a search; a higher score is a better match.
type Hit struct {
	Material *Material
	Score    int
}

// searchIndex holds, for each material, the words under which it is found.
type searchIndex struct {
	once     sync.Once
	keys     []searchKeys
	vocab    []string // distinct words of all materials
	vocabSet map[string]struct{}
}

// searchKeys: designations are the alloy's names with spelling folded away;
// words hold these and the temper, process and family words, each with a
// space before and behind; joined is the id without separators.
type searchKeys struct {
	designations []string
	words        string
	joined       string
}

// fold reduces a designation to lower-case letters and digits: "A356.0" and
// "a 356" both become a356; the ".0" of a casting designation is dropped.
func fold(s string) string {
	s = strings.ToLower(s)
	var b strings.Builder
	for i, r := range s {
		if r == '0' && i > 0 && s[i-1] == '.' && !startsWithDigit(s[i+1:]) {
			continue
		}
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			b.WriteRune(r)
		}
	}
	return b.String()
}

func startsWithDigit(s string) bool { return s != "" && s[0] >= '0' && s[0] <= '9' }

func (c *Catalog) buildIndex() {
	c.keys = make([]searchKeys, len(c.Materials))
	c.vocabSet = map[string]struct{}{}
	for i, m := range c.Materials {
		a := m.Alloy
		k := &c.keys[i]
		k.joined = fold(m.ID)
		k.designations = append(k.designations, fold(a.ID), fold(a.Name))
		if a.UNS != "" {
			k.designations = append(k.designations, fold(a.UNS))
		}
		for _, list := range [][]Alias{a.Aliases, m.Aliases} {
			for _, alias := range list {
				k.designations = append(k.designations, fold(alias.Name))
				if bare, ok := strings.CutPrefix(alias.Name, "EN "); ok {
					k.designations = append(k.designations, fold(bare))
				}
			}
		}
		words := append([]string{}, k.designations...)
		for _, s := range []string{a.ID, a.Name, m.Temper, m.Process.ID(), processes[m.Process].words, a.Family.Name, strings.Join(a.Family.Words, " ")} {
			for _, w := range strings.FieldsFunc(s, separator) {
				words = append(words, fold(w))
			}
		}
		k.words = " " + strings.Join(words, " ") + " "
		for _, w := range words {
			if _, seen := c.vocabSet[w]; !seen {
				c.vocabSet[w] = struct{}{}
				c.vocab = append(c.vocab, w)
			}
		}
	}
}

func separator(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune(",;/()-–", r) }

// Search finds materials for what a person types: parts of designations in
// any order and spelling ("a356t6pm", "AC-42100 T6", "class 30", "380 die"),
// best first. An empty query finds everything in catalog order. When nothing
// matches, words are taken as mistyped and the nearest ones are tried.
func (c *Catalog) Search(query string) []Hit {
	hits, _ := c.search(query)
	return hits
}

// search also returns how many of the hits, from the first, fit the query
// exactly: every word is a whole designation, temper or process, none a mere
// part. An alloy's own name goes before an alias.
func (c *Catalog) search(query string) (hits []Hit, exact int) {
	c.once.Do(c.buildIndex)
	folded := c.tokens(query)
	if len(folded) == 0 {
		if strings.TrimSpace(query) != "" {
			return nil, 0
		}
		hits = make([]Hit, len(c.Materials))
		for i, m := range c.Materials {
			hits[i] = Hit{Material: m}
		}
		return hits, 0
	}
	hits, exact = c.match(folded)
	if len(hits) == 0 {
		if mended, ok := c.mend(folded); ok {
			hits, _ = c.match(mended)
			exact = 0
		}
	}
	return hits, exact
}

// tokens splits a query into folded words. A word with hyphens or points
// stays whole where a designation has it so (AC-42100), else it is split
// (A356.0-T6).
func (c *Catalog) tokens(query string) []string {
	var out []string
	for _, w := range strings.FieldsFunc(query, func(r rune) bool { return unicode.IsSpace(r) || r == ',' || r == ';' || r == '/' }) {
		f := fold(w)
		parts := strings.FieldsFunc(w, separator)
		if len(parts) > 1 && !c.whole(f) {
			for _, p := range parts {
				if f := fold(p); f != "" {
					out = append(out, f)
				}
			}
		} else if f != "" {
			out = append(out, f)
		}
	}
	return out
}

// whole reports whether a folded word is a whole word of some material.
func (c *Catalog) whole(word string) bool {
	_, ok := c.vocabSet[word]
	return ok
}

func (c *Catalog) match(tokens []string) (hits []Hit, exact int) {
	whole := strings.Join(tokens, "")
	for i := range c.keys {
		if score := c.keys[i].score(tokens, whole); score > 0 {
			hits = append(hits, Hit{c.Materials[i], score})
		}
	}
	sort.SliceStable(hits, func(i, j int) bool { return hits[i].Score > hits[j].Score })
	if len(hits) > 0 && hits[0].Score >= scoreExact {
		tier := hits[0].Score / scoreExact
		for exact < len(hits) && hits[exact].Score/scoreExact == tier {
			exact++
		}
	}
	return hits, exact
}

// A score is a tier times scoreExact plus points within the tier.
const (
	scoreExact = 10000
	tierID     = 3 // the query is the id
	tierName   = 2 // names the alloy by its own name, and all else is whole words
	tierAlias  = 1 // the same by an alias

	scoreFull  = 100 // a token is a whole word
	scoreStart = 40  // a token starts a word
	scorePart  = 10  // a token stands inside a word
)

func (k *searchKeys) score(tokens []string, whole string) int {
	if k.joined == whole {
		return tierID * scoreExact
	}
	for i, d := range k.designations {
		if d == whole {
			return k.tier(i) * scoreExact
		}
	}
	total, full, named := 0, true, 0
	for _, t := range tokens {
		points := k.points(t)
		if points == 0 {
			return k.runTogether(whole)
		}
		total += points
		full = full && points == scoreFull
	}
	for from := range tokens {
		joined := ""
		for _, t := range tokens[from:] {
			joined += t
			for i, d := range k.designations {
				if d == joined {
					named = max(named, k.tier(i))
				}
			}
		}
	}
	total += named * scoreFull
	if full && named > 0 {
		total += named * scoreExact
	}
	return total
}

// tier ranks the i-th designation: the first two are the alloy's id and name.
func (k *searchKeys) tier(i int) int {
	if i < 2 {
		return tierName
	}
	return tierAlias
}

// points is how well a token fits the words, 0 when it does not.
func (k *searchKeys) points(t string) int {
	best, from := 0, 0
	for {
		at := strings.Index(k.words[from:], t)
		if at < 0 {
			return best
		}
		at += from
		starts, ends := k.words[at-1] == ' ', k.words[at+len(t)] == ' '
		switch {
		case starts && ends:
			return scoreFull
		case starts:
			best = max(best, scoreStart)
		default:
			best = max(best, scorePart)
		}
		from = at + 1
	}
}

// runTogether scores a query typed without spaces, like a356t6 or 380die.
func (k *searchKeys) runTogether(whole string) int {
	if strings.HasPrefix(k.joined, whole) {
		return scoreFull + scoreStart
	}
	for i, d := range k.designations {
		rest, ok := strings.CutPrefix(whole, d)
		if !ok || len(d) < 3 {
			continue
		}
		if strings.Contains(k.words, " "+rest+" ") {
			return k.tier(i)*scoreExact - 1
		}
		if strings.Contains(k.words, " "+rest) {
			return scoreFull
		}
	}
	return 0
}

// mend replaces tokens that occur nowhere by the nearest word that does.
func (c *Catalog) mend(tokens []string) ([]string, bool) {
	out := append([]string{}, tokens...)
	changed := false
	for i, t := range out {
		if c.whole(t) {
			continue
		}
		n := Nearest(t, c.vocab)
		if n == "" {
			return nil, false
		}
		out[i], changed = n, true
	}
	return out, changed
}

// Nearest returns the known word with the fewest edits from the typed one, ""
// when none is near enough to be meant.
func Nearest(typed string, known []string) string {
	typed = strings.ToLower(typed)
	best, bestCost := "", 1+len(typed)/3
	for _, k := range known {
		if d := len(k) - len(typed); d > bestCost || -d > bestCost {
			continue
		}
		if cost := edits(typed, strings.ToLower(k)); cost < bestCost || (cost == bestCost && (best == "" || k < best)) {
			best, bestCost = k, cost
		}
	}
	return best
}

// edits is the number of insertions, deletions, replacements and swaps of
// neighbours that turn a into b (optimal string alignment distance).
func edits(a, b string) int {
	before, prev, cur := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := 1; i <= len(a); i++ {
		cur[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			cur[j] = min(prev[j]+1, cur[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				cur[j] = min(cur[j], before[j-2]+1)
			}
		}
		before, prev, cur = prev, cur, before
	}
	return prev[len(b)]
}
