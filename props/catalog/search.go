package catalog

import (
	"strings"
	"sync"
	"unicode"

	"alongside/props"
)

// Hit is a material found by a search; a higher score is a better match.
type Hit struct {
	Material *props.Material
	Score    int
}

// searchIndex holds the words under which materials are found. They lie one
// after the other in a single text, so that a search is a scan of memory; the
// mark before each word says what it is and ends the word before it.
type searchIndex struct {
	once  sync.Once
	text  string
	start []int           // where each material's words start in text, and the end
	words map[string]bool // every distinct word; true for a designation
	vocab []string        // the same without mere ids, in order of the catalog
}

// The marks, in the order in which a material's words stand. They sort before
// letters and digits.
const (
	markID   = 1 + iota // the id without separators
	markName            // the alloy's own id and name
	markAlias
	markNear // an alias of the nearest equivalent
	markWord // of an alias, its system, temper, process or family
)

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

func separator(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune(",;/()-–", r) }

// indexer gathers the text of a searchIndex.
type indexer struct {
	*searchIndex
	text    strings.Builder
	seen    map[string]bool // words of the material at hand
	listed  map[string]bool // words in vocab
	phrases map[string][]string
}

func (x *indexer) add(mark byte, s string) { x.addFolded(mark, fold(s)) }

func (x *indexer) addFolded(mark byte, w string) {
	if w == "" {
		return
	}
	if mark != markID && !x.listed[w] {
		x.listed[w] = true
		x.vocab = append(x.vocab, w)
	}
	if x.seen[w] {
		return
	}
	x.seen[w] = true
	x.text.WriteByte(mark)
	x.text.WriteString(w)
	x.words[w] = x.words[w] || mark < markWord
}

// addWords adds the single words of a phrase. The same phrases come back with
// every alloy and family, and are taken apart once.
func (x *indexer) addWords(phrase string) {
	words, known := x.phrases[phrase]
	if !known {
		for _, w := range strings.FieldsFunc(phrase, separator) {
			words = append(words, fold(w))
		}
		x.phrases[phrase] = words
	}
	for _, w := range words {
		x.addFolded(markWord, w)
	}
}

func (c *Catalog) buildIndex() {
	c.words = map[string]bool{}
	x := indexer{searchIndex: &c.searchIndex, seen: map[string]bool{}, listed: map[string]bool{}, phrases: map[string][]string{}}
	for _, m := range c.Materials {
		clear(x.seen)
		c.start = append(c.start, x.text.Len())
		x.material(m)
	}
	c.start = append(c.start, x.text.Len())
	x.text.WriteByte(markWord) // ends the last word
	c.text = x.text.String()
}

func (x *indexer) material(m *props.Material) {
	a := m.Alloy
	x.add(markID, m.ID)
	x.add(markName, a.ID)
	x.add(markName, a.Name)
	x.add(markName, withoutEN(a.Name))
	if x.add(markAlias, a.UNS); a.UNS != "" {
		x.addWords("UNS")
	}
	aliases := append(append([]props.Alias{}, a.Aliases...), m.Aliases...)
	for _, near := range []bool{false, true} {
		mark := byte(markAlias)
		if near {
			mark = markNear
		}
		for _, alias := range aliases {
			if alias.Near == near {
				x.add(mark, alias.Name)
				x.add(mark, withoutEN(alias.Name))
			}
		}
	}
	for _, alias := range aliases {
		x.addWords(alias.Name)
		x.add(markWord, alias.System)
		x.addWords(alias.System)
	}
	for _, s := range append([]string{a.ID, a.Name, m.Temper, m.Process.ID(), m.Process.Words(), a.Family.Name}, a.Family.Words...) {
		x.addWords(s)
	}
	x.add(markWord, m.Temper)
}

// withoutEN drops the letters that people leave out: EN AC-42100, EN-GJL-250.
func withoutEN(name string) string {
	return strings.TrimPrefix(strings.TrimPrefix(name, "EN "), "EN-")
}

// wordsOf is the i-th material's words with the mark that ends them.
func (x *searchIndex) wordsOf(i int) string { return x.text[x.start[i] : x.start[i+1]+1] }

// idWord is the i-th material's id without separators.
func (x *searchIndex) idWord(i int) string {
	w := x.wordsOf(i)[1:]
	return w[:strings.IndexFunc(w, func(r rune) bool { return r <= markWord })]
}

// Search finds materials for what a person types: parts of designations in
// any order and spelling ("a356t6pm", "AC-42100 T6", "A48 class 30", "380
// die"), best first. An empty query finds everything in catalog order. When
// nothing matches, words are taken as mistyped and the nearest ones are tried.
func (c *Catalog) Search(query string) []Hit {
	hits, _ := c.search(query)
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
		// Everything, without an index: the finder opens with it.
		hits = make([]Hit, len(c.Materials))
		for i, m := range c.Materials {
			hits[i] = Hit{Material: m}
		}
		return hits, 0, ""
	}
	c.once.Do(c.buildIndex)
	folded := c.tokens(query)
	if len(folded) == 0 {
		return nil, 0, ""
	}
	hits, exact = c.match(folded)
	if len(hits) == 0 {
		if mended, ok := c.mend(folded); ok {
			hits, _ = c.match(mended)
			exact, readAs = 0, strings.Join(mended, " ")
		}
	}
	return hits, exact, readAs
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
	_, ok := c.words[word]
	return ok
}
