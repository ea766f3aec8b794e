package catalog

import (
	"slices"
	"strings"
)

// A score is a kind times scoreExact plus points within the kind. The kind is
// that of the best designation named where every word of the query is a whole
// word of the material, else plainWord.
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

// query is what was typed, made ready for matching.
type query struct {
	tokens []token
	runs   []run
}

// token is a word of the query with its points for each word of the index.
type token struct {
	text   string
	points []uint8
	found  bool // some word has points
}

// run is neighboring tokens, from the first to before the last, that are one
// word of the index: "class 30" is class30.
type run struct {
	token
	first, last int
}

func (x *index) query(tokens []string) query {
	var q query
	for first, t := range tokens {
		q.tokens = append(q.tokens, x.token(t))
		if !q.tokens[first].found {
			break // nothing fits all
		}
		for last := first + 2; last <= len(tokens); last++ {
			if joined := strings.Join(tokens[first:last], ""); x.known(joined) {
				q.runs = append(q.runs, run{x.token(joined), first, last})
			}
		}
	}
	return q
}

func (x *index) token(text string) token {
	t := token{text: text, points: make([]uint8, len(x.starts)-1)}
	for from := 0; ; {
		at := strings.Index(x.All[from:], text)
		if at < 0 {
			return t
		}
		at += from
		number, starts := slices.BinarySearch(x.starts, at)
		if !starts {
			number--
		}
		w := x.text(number)
		from = x.starts[number+1]
		switch {
		case len(w) == len(text):
			t.points[number] = scoreFull
		case starts:
			t.points[number] = scoreStart
		case x.joined(w, at-x.starts[number]):
			continue
		default:
			t.points[number] = scorePart
		}
		t.found = true
	}
}

// joined reports whether a place is the middle of a number in a word that has two
// numbers run together: 535 is no part of a276535, which is A27 65-35.
func (x *index) joined(w string, at int) bool {
	if !isDigit(w[at]) || !isDigit(w[at-1]) {
		return false
	}
	_, joined := slices.BinarySearch(x.Joined, w)
	return joined
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// score is 0 when a token does not occur among the words of the material.
func (x *index) score(q query, e entry) int {
	var whole [maxTokens]bool
	total, best, variant := 0, plainWord, false
	for i, t := range q.tokens {
		f := x.fit(t, e)
		if f.points == 0 {
			return 0
		}
		total += f.points
		if f.points == scoreFull {
			whole[i], best = true, max(best, f.kind)
		}
		if f.variant && f.kind < ownName {
			whole[i], variant = true, true
		}
	}
	for _, r := range q.runs {
		if f := x.fit(r.token, e); f.kind > plainWord {
			best = max(best, f.kind)
			for i := r.first; i < r.last; i++ {
				whole[i] = true
			}
		}
	}
	total = min(total+int(best)*scoreFull, scoreExact-1)
	for i := range q.tokens {
		if !whole[i] {
			return total
		}
	}
	if variant && best < ownName {
		return int(alias)*scoreExact + scoreVariant
	}
	return int(best)*scoreExact + total
}

// fit is how well a token fits the words of a material.
type fit struct {
	points  int  // 0 where it does not
	kind    kind // the best of the words that it is as a whole
	variant bool // the alloy's own name is the token behind a single letter
}

func (x *index) fit(t token, e entry) fit {
	f := fit{points: int(t.points[e.id])}
	switch f.points {
	case scoreFull:
		f.kind = ownID
	case scoreStart:
		f.points = scoreID
	}
	for _, list := range e.words {
		for _, w := range list {
			number, k := parts(w)
			points := int(t.points[number])
			if points == scoreFull {
				f.kind = max(f.kind, k)
			}
			f.points = max(f.points, points)
			// A380.0 and B380.0 are variants of 380.0. A material whose id is its
			// alloy's name is a grade of its own: CF20 is no variant of an F20.
			if points > 0 && k == ownName && number != e.id {
				name := x.text(number)
				f.variant = f.variant || name[0] >= 'a' && name[1:] == t.text
			}
		}
	}
	return f
}

// runTogether matches a query typed without blanks, like 380die: a whole
// designation and the start of another word.
func (x *index) runTogether(typed string) []Hit {
	var hits []Hit
	for n := 3; n < len(typed); n++ {
		if !x.known(typed[:n]) {
			continue
		}
		designation, rest := x.token(typed[:n]), x.token(typed[n:])
		if !rest.found {
			continue
		}
		for _, e := range x.entries {
			k := x.fit(designation, e).kind
			if k == plainWord {
				continue
			}
			if points := x.fit(rest, e).points; points == scoreFull {
				hits = append(hits, Hit{e.material, int(k)*scoreExact - 1, e.common})
			} else if points > scorePart {
				hits = append(hits, Hit{e.material, scoreFull, e.common})
			}
		}
	}
	return hits
}

// countExact is how many of the hits, best first, fit the query exactly by a
// designation of the best kind named.
func countExact(hits []Hit) int {
	exact := 0
	for i, h := range hits {
		if h.Score/scoreExact == hits[0].Score/scoreExact && h.Score >= scoreExact && h.Score%scoreExact != scoreVariant {
			exact = i + 1
		}
	}
	return exact
}
