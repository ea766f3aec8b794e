package catalog

import (
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
}

// Search finds materials for what a person types: parts of designations in
// any order and spelling ("a356t6pm", "AC-42100 T6", "A48 class 30", "380
// die"), best first. An empty query finds everything in catalog order. When
// nothing matches, words are taken as mistyped and the nearest ones are tried.
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

// search also returns how many of the hits, from the first, fit the query
// exactly: every word is a whole designation, temper or process, none a mere
// part. An alloy's own name goes before an alias, an alias before one of the
// nearest equivalent.
func (c *Catalog) search(query string) (hits []Hit, exact int) {
	hits, exact, _ = c.find(query)
	return hits, exact
}

func (c *Catalog) find(query string) (hits []Hit, exact int, readAs string) {
	if strings.TrimSpace(query) == "" {
		hits = make([]Hit, len(c.Materials))
		for i, m := range c.Materials {
			hits[i] = Hit{Material: m}
		}
		return hits, 0, ""
	}
	x := c.indexed()
	tokens := x.split(query)
	if len(tokens) == 0 || len(tokens) > maxTokens {
		return nil, 0, ""
	}
	if hits = x.match(tokens); len(hits) > 0 {
		return hits, countExact(hits), ""
	}
	if tokens = x.correct(tokens); tokens == nil {
		return nil, 0, ""
	}
	return x.match(tokens), 0, strings.Join(tokens, " ")
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
				out = append(out, f)
			}
		}
	}
	return out
}

// known reports whether a folded word is a whole word of some material.
func (x *index) known(text string) bool { return slices.Contains(x.All, text) }

// match returns the materials that all tokens fit, best first, and those of
// one score in the order of the catalog.
func (x *index) match(tokens []string) []Hit {
	var hits []Hit
	q := x.query(tokens)
	if !slices.ContainsFunc(q.tokens, func(t token) bool { return !t.found }) {
		for _, e := range x.entries {
			if score := x.score(q, e); score > 0 {
				hits = append(hits, Hit{e.material, score})
			}
		}
	}
	if len(hits) == 0 {
		hits = x.runTogether(strings.Join(tokens, ""))
	}
	slices.SortStableFunc(hits, func(a, b Hit) int { return b.Score - a.Score })
	return hits
}

// correct replaces each token that is no word of any material by the nearest
// one that is; nil where there is nothing to correct, or nothing near.
func (x *index) correct(tokens []string) []string {
	out := slices.Clone(tokens)
	for i, t := range out {
		if x.known(t) {
			continue
		}
		if out[i] = spelling.Nearest(t, x.All[:x.Named]); out[i] == "" {
			return nil
		}
	}
	if slices.Equal(out, tokens) {
		return nil
	}
	return out
}
