package catalog

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"alongside/props"
	"alongside/props/spelling"
)

// Hit is a material found by a search; a higher score is a better match.
type Hit struct {
	Material *props.Material
	Score    int
	common   int // of its entry
}

// Search finds materials for what a person types: parts of designations in
// any order and spelling ("a356t6pm", "AC-42100 T6", "A48 class 30", "380
// die"), best first, and of equally good ones those asked for most first and those
// known from memory alone last. An empty query finds everything. When nothing
// matches, words are taken as mistyped and the nearest ones are tried.
func (c *Catalog) Search(query string) []Hit {
	hits, _, _ := c.find(query)
	return hits
}

// SearchNear is Search that also says, where words were taken as mistyped, what
// the query was read as; "" where the materials are found under its own words.
func (c *Catalog) SearchNear(query string) (hits []Hit, readAs string) {
	hits, _, readAs = c.find(query)
	return hits, readAs
}

// find also returns how many of the hits, from the first, fit the query exactly:
// every word is a whole designation, temper or process, none a mere part. An
// alloy's own name goes before an alias, an alias before one of the nearest
// equivalent. readAs is that of SearchNear.
func (c *Catalog) find(query string) (hits []Hit, exact int, readAs string) {
	if strings.TrimSpace(query) == "" {
		return c.all(), 0, ""
	}
	tokens, hits := c.asTyped(query)
	if len(hits) > 0 {
		return hits, countExact(hits), ""
	}
	x := c.indexed()
	if tokens = x.correct(tokens); tokens == nil {
		return nil, 0, ""
	}
	return x.match(tokens), 0, strings.Join(tokens, " ")
}

// asTyped finds without taking a word as mistyped. The words are nil where there
// are none, or too many.
func (c *Catalog) asTyped(query string) (words []string, hits []Hit) {
	x := c.indexed()
	words = x.split(query)
	if len(words) == 0 || len(words) > maxTokens {
		return nil, nil
	}
	return words, x.match(words)
}

// AskedFor is all materials, those that are asked for most first and those known
// from memory alone last.
func (c *Catalog) AskedFor() []*props.Material {
	out := make([]*props.Material, 0, len(c.Materials))
	for _, h := range c.all() {
		out = append(out, h.Material)
	}
	return out
}

// all is every material, in the order of equally good hits.
func (c *Catalog) all() []Hit {
	x := c.indexed()
	hits := make([]Hit, len(x.entries))
	for i, e := range x.entries {
		hits[i] = Hit{e.material, 0, e.common}
	}
	sortHits(hits)
	return hits
}

// sortHits puts the best hits first, and those of one score by what is asked for most,
// what is known from memory alone last; else in the order of the catalog.
func sortHits(hits []Hit) {
	slices.SortStableFunc(hits, func(a, b Hit) int { return cmp.Or(b.Score-a.Score, b.common-a.common) })
}

// split takes a query apart into folded words. A word with hyphens or points
// stays whole where a designation has it so (AC-42100), else it is split
// (A356.0-T6).
func (x *index) split(query string) []string {
	var out []string
	for w := range strings.FieldsFuncSeq(query, func(r rune) bool { return unicode.IsSpace(r) || r == ',' || r == ';' || r == '/' }) {
		parts := []string{w}
		if !x.known(fold(w)) {
			parts = strings.FieldsFunc(w, separator)
		}
		for _, p := range parts {
			if f := fold(p); f != "" {
				out = append(out, cmp.Or(american[f], f))
			}
		}
	}
	return out
}

// american gives the spelling of the catalog for that of other countries.
var american = map[string]string{"aluminium": "aluminum", "grey": "gray", "mould": "mold"}

// known reports whether a folded word is a whole word of some material.
func (x *index) known(text string) bool { return strings.Contains(x.All, "\n"+text+"\n") }

// match returns the materials that all tokens fit, best first.
func (x *index) match(tokens []string) []Hit {
	var hits []Hit
	q := x.query(tokens)
	if !slices.ContainsFunc(q.tokens, func(t token) bool { return !t.found }) {
		for _, e := range x.entries {
			if score := x.score(q, e); score > 0 {
				hits = append(hits, Hit{e.material, score, e.common})
			}
		}
	}
	if len(hits) == 0 {
		hits = x.runTogether(strings.Join(tokens, ""))
	}
	hits = dieCastings(tokens, x.ofFamily(tokens, hits))
	sortHits(hits)
	return hits
}

// ofFamily leaves out alloys of a kind that has a word for a family before it, where
// that family is meant: aluminum finds no aluminum bronze.
func (x *index) ofFamily(tokens []string, hits []Hit) []Hit {
	meant := func(word string) bool { return x.families[word] && slices.Contains(tokens, word) }
	other := func(h Hit) bool {
		words := strings.Fields(h.Material.Alloy.Kind)
		return len(words) > 1 && !slices.Contains(tokens, words[len(words)-1]) && slices.ContainsFunc(words[:len(words)-1], meant)
	}
	if !slices.ContainsFunc(hits, func(h Hit) bool { return !other(h) }) {
		return hits
	}
	return slices.DeleteFunc(hits, other)
}

// dieCastings leaves out gravity die castings, which are permanent mold castings,
// where die castings are found and gravity is not said.
func dieCastings(tokens []string, hits []Hit) []Hit {
	isDie := func(h Hit) bool { return h.Material.Process == props.Die }
	if !slices.Contains(tokens, "die") || slices.Contains(tokens, "gravity") || !slices.ContainsFunc(hits, isDie) {
		return hits
	}
	return slices.DeleteFunc(hits, func(h Hit) bool { return h.Material.Process == props.PermanentMold })
}

// correct replaces each token that is no word of any material by the nearest
// one that is; nil where there is nothing to correct, or nothing near.
func (x *index) correct(tokens []string) []string {
	out := slices.Clone(tokens)
	for i, t := range out {
		if x.known(t) {
			continue
		}
		if out[i] = spelling.Nearest(t, strings.Fields(x.All)[:x.Named]); out[i] == "" {
			return nil
		}
	}
	if slices.Equal(out, tokens) {
		return nil
	}
	return out
}
