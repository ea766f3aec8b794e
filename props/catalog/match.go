package catalog

import (
	"slices"
	"strings"

	"alongside/props/spelling"
)

// A score is a tier times scoreExact plus points within the tier. The tier is
// that of the best designation named, where every word of the query is a whole
// word: 4 the id, 3 the alloy's own name, 2 an alias, 1 a near alias.
const (
	scoreExact = 100_000

	scoreFull  = 100 // a token is a whole word
	scoreID    = 60  // a token starts the id
	scoreStart = 40  // a token starts a word
	scorePart  = 10  // a token stands inside a word

	// A380 is near what is meant by 380: after 380 itself, before the alloys
	// that another system calls 380. It never counts as exact.
	scoreVariant = scoreExact - 2

	maxTokens = 64
)

// wanted is a query made ready for matching.
type wanted struct {
	tokens []string
	runs   []run
	rare   string // the token to look for first
}

// run is several neighbouring tokens as one word: "class 30" is class30.
type run struct {
	word   string
	covers uint64 // a bit for each token
}

func newWanted(tokens []string) *wanted {
	w := &wanted{tokens: tokens}
	for from := range tokens {
		joined, covers := tokens[from], uint64(1)<<from
		for n, t := range tokens[from+1:] {
			joined += t
			covers |= 1 << (from + 1 + n)
			w.runs = append(w.runs, run{joined, covers})
		}
		if len(tokens[from]) > len(w.rare) {
			w.rare = tokens[from]
		}
	}
	return w
}

// scored is a match before it is ranked.
type scored struct{ material, score int }

func (c *Catalog) match(tokens []string) (hits []Hit, exact int) {
	if len(tokens) > maxTokens {
		return nil, 0
	}
	w := newWanted(tokens)
	var found []scored
	c.each(w.rare, func(i int, words string) {
		if score := w.score(words); score > 0 {
			found = append(found, scored{i, score})
		}
	})
	if len(found) == 0 {
		found = c.runTogether(strings.Join(tokens, ""))
	}
	return c.ranked(found)
}

// each calls f with every material whose words hold the token somewhere.
func (x *searchIndex) each(token string, f func(i int, words string)) {
	for i, from := 0, 0; ; i++ {
		at := strings.Index(x.text[from:], token)
		if at < 0 {
			return
		}
		at += from
		for x.start[i+1] <= at {
			i++
		}
		f(i, x.wordsOf(i))
		from = x.start[i+1]
	}
}

// ranked orders matches by score, keeping the order of the catalog among
// equals. There are few different scores, so they are dealt into piles.
func (c *Catalog) ranked(found []scored) (hits []Hit, exact int) {
	var scores, next []int // in falling order; where the next of each goes
	for _, f := range found {
		at, known := slices.BinarySearchFunc(scores, f.score, func(s, score int) int { return score - s })
		if !known {
			scores, next = slices.Insert(scores, at, f.score), slices.Insert(next, at, 0)
		}
		next[at]++
	}
	sum := 0
	for i, n := range next {
		next[i] = sum
		sum += n
		if scores[i] >= scoreExact && scores[i]%scoreExact != scoreVariant && scores[i]/scoreExact == scores[0]/scoreExact {
			exact = sum
		}
	}
	hits = make([]Hit, len(found))
	for _, f := range found {
		at, _ := slices.BinarySearchFunc(scores, f.score, func(s, score int) int { return score - s })
		hits[next[at]] = Hit{c.Materials[f.material], f.score}
		next[at]++
	}
	return hits, exact
}

// score is 0 when a token does not occur among the words.
func (w *wanted) score(words string) int {
	total, best, whole, variant := 0, 0, uint64(0), false
	for n, t := range w.tokens {
		points, tier := look(words, t)
		if tier < 3 && variantOf(words, t) {
			variant = true
			whole |= 1 << n
		}
		if points == 0 {
			return 0
		}
		total += points
		if points == scoreFull {
			whole |= 1 << n
			best = max(best, tier)
		}
	}
	for _, r := range w.runs {
		if points, tier := look(words, r.word); points == scoreFull && tier > 0 {
			whole |= r.covers
			best = max(best, tier)
		}
	}
	total = min(total+best*scoreFull, scoreExact-1)
	switch all := whole == 1<<len(w.tokens)-1; {
	case all && variant && best < 3:
		return 2*scoreExact + scoreVariant
	case all:
		total += best * scoreExact
	}
	return total
}

// variantOf reports whether the alloy's own name is the token behind a single
// letter, as A380.0 and B380.0 are variants of 380.0.
func variantOf(words, token string) bool {
	for from := 2; ; {
		at := strings.Index(words[from:], token)
		if at < 0 {
			return false
		}
		if at += from; words[at-2] == markName && words[at-1] >= 'a' && words[at+len(token)] <= markWord {
			return true
		}
		from = at + 1
	}
}

// look is how well a token fits the words, 0 when it does not, and of a whole
// word the tier.
func look(words, token string) (points, tier int) {
	for from := 1; ; {
		at := strings.Index(words[from:], token)
		if at < 0 {
			return points, 0
		}
		at += from
		mark, end := words[at-1], words[at+len(token)]
		switch {
		case mark <= markWord && end <= markWord:
			return scoreFull, markWord - int(mark)
		case mark == markID:
			points = scoreID
		case mark <= markWord:
			points = max(points, scoreStart)
		default:
			points = max(points, scorePart)
		}
		from = at + 1
	}
}

// runTogether matches a query typed without spaces, like 380die: a whole
// designation and the start of another word.
func (c *Catalog) runTogether(whole string) (found []scored) {
	for n := 3; n < len(whole); n++ {
		designation, rest := whole[:n], whole[n:]
		if !c.words[designation] {
			continue
		}
		c.each(designation, func(i int, words string) {
			_, tier := look(words, designation)
			points, _ := look(words, rest)
			if tier > 0 && points == scoreFull {
				found = append(found, scored{i, tier*scoreExact - 1})
			} else if tier > 0 && points > scorePart {
				found = append(found, scored{i, scoreFull})
			}
		})
	}
	return found
}

// mend replaces tokens that occur nowhere by the nearest word that does.
func (c *Catalog) mend(tokens []string) ([]string, bool) {
	out := append([]string{}, tokens...)
	changed := false
	for i, t := range out {
		if c.whole(t) {
			continue
		}
		n := spelling.Nearest(t, c.vocab)
		if n == "" {
			return nil, false
		}
		out[i], changed = n, true
	}
	return out, changed
}
