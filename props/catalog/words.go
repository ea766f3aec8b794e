package catalog

import (
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"alongside/props"
)

// kind is what a word is to a material; the higher, the better it names it.
type kind uint8

const (
	plainWord kind = iota // of an alias, its standard, a temper, process or family
	nearAlias             // an alias of the nearest equivalent
	alias
	ownName // the alloy's own id or name
	ownID   // the material's id
)

// index holds the words under which materials are found. The first search makes
// it.
type index struct {
	once    sync.Once
	words   []string          // every folded word once, those that are only ids last
	named   int               // how many words are more than ids
	number  map[string]int32  // where each word stands in words
	phrases map[string][]word // the words of what many alloys have in common
	entries []entry           // the materials in the order of the catalog
}

// entry is a material with its words.
type entry struct {
	material *props.Material
	id       int32     // the number of its id
	words    [2][]word // of the material itself, and those of its alloy
}

// word is a word of a material by its number.
type word struct {
	number int32
	kind   kind
}

// fold reduces a designation to lower-case letters and digits: "A356.0" and
// "a 356" both become a356; the ".0" of a casting designation is dropped.
func fold(s string) string {
	out := make([]byte, 0, 64)
	for i, r := range s {
		if r == '0' && i > 0 && s[i-1] == '.' && !startsWithDigit(s[i+1:]) {
			continue
		}
		switch {
		case 'a' <= r && r <= 'z' || '0' <= r && r <= '9':
			out = append(out, byte(r))
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			out = utf8.AppendRune(out, unicode.ToLower(r))
		}
	}
	if string(out) == s {
		return s // without a copy
	}
	return string(out)
}

func startsWithDigit(s string) bool { return s != "" && s[0] >= '0' && s[0] <= '9' }

func separator(r rune) bool {
	switch r {
	case ' ', ',', ';', '/', '(', ')', '-', '–':
		return true
	}
	return unicode.IsSpace(r)
}

// withoutEN drops the letters that people leave out: EN AC-42100, EN-GJL-250.
func withoutEN(name string) string {
	return strings.TrimPrefix(strings.TrimPrefix(name, "EN "), "EN-")
}

func (c *Catalog) indexed() *index {
	c.index.once.Do(func() { c.index.build(c) })
	return &c.index
}

func (x *index) build(c *Catalog) {
	x.words = make([]string, 0, 5*len(c.Materials))
	x.number = make(map[string]int32, cap(x.words))
	x.entries = make([]entry, 0, len(c.Materials))
	x.phrases = map[string][]word{}
	former := map[*props.Source][]*props.Source{}
	for _, s := range c.Sources {
		if s.Successor != nil {
			former[s.Successor] = append(former[s.Successor], s)
		}
	}
	for _, a := range c.Alloys {
		alloy := x.alloyWords(a)
		for _, m := range a.Materials {
			own := x.addName(make([]word, 0, 8), plainWord, m.Temper)
			own = x.addAliases(own, m.Aliases)
			own = x.addSpecifications(own, m, former)
			own = x.addCommon(own, m.Process.ID())
			own = x.addCommon(own, m.Process.Words())
			x.entries = append(x.entries, entry{m, 0, [...][]word{own, alloy}})
		}
	}
	x.named = len(x.words)
	for i, e := range x.entries {
		x.entries[i].id = x.numberOf(fold(e.material.ID))
	}
}

func (x *index) alloyWords(a *props.Alloy) []word {
	list := x.addName(make([]word, 0, 64), ownName, a.ID)
	list = x.addName(list, ownName, a.Name)
	if a.UNS != "" {
		list = x.addName(list, alias, a.UNS)
		list = x.add(list, plainWord, "UNS")
	}
	list = x.addAliases(list, a.Aliases)
	for _, s := range append([]string{a.Family.Name}, a.Family.Words...) {
		list = x.addCommon(list, s)
	}
	return slices.Clone(list)
}

func (x *index) addAliases(list []word, aliases []props.Alias) []word {
	for _, a := range aliases {
		k := alias
		if a.Near {
			k = nearAlias
		}
		list = x.addName(list, k, a.Name)
		list = x.add(list, plainWord, a.System)
		list = x.addCommon(list, a.System)
	}
	return list
}

// addSpecifications adds the standards whose limits are on file for the
// material, with and without their issuer (ASTM A536, A536), and those that took
// their place or were replaced by them. Where there are no limits, as for die
// castings, it is the standard of the composition.
func (x *index) addSpecifications(list []word, m *props.Material, former map[*props.Source][]*props.Source) []word {
	var seen []*props.Source
	add := func(s *props.Source) {
		if s == nil || s.Kind != "standard" && s.Kind != "government" || slices.Contains(seen, s) {
			return
		}
		seen = append(seen, s)
		list = x.addName(list, alias, s.ID)
		if _, number, issued := strings.Cut(s.ID, "-"); issued {
			list = x.add(list, alias, number)
		}
	}
	for f := range m.All() {
		if f.Basis == props.Minimum || f.Basis == props.Maximum {
			add(f.Source)
		}
	}
	if len(seen) == 0 {
		add(m.Alloy.Composition.Source)
	}
	for _, s := range slices.Clone(seen) {
		add(s.Successor)
		for _, old := range former[s] {
			add(old)
		}
	}
	return list
}

// addName adds a designation as a whole, also without its EN, and its words.
func (x *index) addName(list []word, k kind, name string) []word {
	list = x.add(list, k, name)
	if short := withoutEN(name); short != name {
		list = x.add(list, k, short)
	}
	if strings.ContainsFunc(name, separator) {
		list = x.addWords(list, name)
	}
	return list
}

// addWords adds the single words of a phrase.
func (x *index) addWords(list []word, phrase string) []word {
	for w := range strings.FieldsFuncSeq(phrase, separator) {
		list = x.add(list, plainWord, w)
	}
	return list
}

// addCommon is addWords for the standards, processes and families, which come
// back with many alloys: each is split once.
func (x *index) addCommon(list []word, phrase string) []word {
	words, split := x.phrases[phrase]
	if !split {
		words = x.addWords(nil, phrase)
		x.phrases[phrase] = words
	}
	return append(list, words...)
}

func (x *index) add(list []word, k kind, text string) []word {
	if text = fold(text); text == "" {
		return list
	}
	return append(list, word{x.numberOf(text), k})
}

// numberOf is the number of a folded word, a new one where it has none.
func (x *index) numberOf(text string) int32 {
	n, known := x.number[text]
	if !known {
		n = int32(len(x.words))
		x.number[text] = n
		x.words = append(x.words, text)
	}
	return n
}
