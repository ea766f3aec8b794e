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

// Words are the words under which the materials of a catalog are found. A word
// of a material is its number in All and its kind, see word; those of the
// built-in catalog are Go data like its figures.
type Words struct {
	All   string     // every folded word once between line feeds, those that are only ids last
	Named int        // how many words are more than ids
	Own   [][]uint32 // by material: its id, then the words of its own
	Alloy [][]uint32 // by alloy: what its materials have in common
	// Joined are the words that were two numbers with a hyphen between them, sorted.
	Joined []string
	// Common is by material how early it stands among those asked for most; 0 if not,
	// −1 if known from memory alone.
	Common []int
}

// word is a word of a material by its number and what it is to it.
func word(number int, k kind) uint32 { return uint32(number)<<kindBits | uint32(k) }

func parts(w uint32) (number int, k kind) { return int(w >> kindBits), kind(w & (1<<kindBits - 1)) }

const kindBits = 3

// index is the words beside their materials. The first search makes it.
type index struct {
	once sync.Once
	Words
	starts   []int           // of each word in All, and where one more would start
	entries  []entry         // the materials in the order of the catalog
	families map[string]bool // the words that mean a family by themselves
}

// entry is a material with its words.
type entry struct {
	material *props.Material
	common   int
	id       int         // the number of its id
	words    [2][]uint32 // of the material itself, and those of its alloy
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

// text is a word by its number.
func (x *index) text(number int) string { return x.All[x.starts[number] : x.starts[number+1]-1] }

func (c *Catalog) indexed() *index {
	c.index.once.Do(func() {
		x := &c.index
		if x.Words = c.Words; x.All == "" {
			x.Words = ListWords(c)
		}
		x.starts = make([]int, 0, strings.Count(x.All, "\n"))
		for i, r := range x.All {
			if r == '\n' {
				x.starts = append(x.starts, i+1)
			}
		}
		x.families = map[string]bool{}
		for _, f := range c.Families {
			for _, w := range f.Words {
				x.families[w] = true
			}
		}
		x.entries = make([]entry, 0, len(c.Materials))
		alloy := -1
		for i, m := range c.Materials {
			if i == 0 || m.Alloy != c.Materials[i-1].Alloy {
				alloy++
			}
			own := x.Own[i]
			id, _ := parts(own[0])
			x.entries = append(x.entries, entry{m, x.Common[i], id, [...][]uint32{own[1:], x.Alloy[alloy]}})
		}
	})
	return &c.index
}

// lister lists the words of a catalog.
type lister struct {
	Words
	all    []string
	number map[string]int // of each word
}

// ListWords lists the words of a catalog.
func ListWords(c *Catalog) Words {
	x := &lister{number: map[string]int{}}
	var materials []*props.Material
	former := map[*props.Source][]*props.Source{}
	for _, s := range c.Sources {
		if s.Successor != nil {
			former[s.Successor] = append(former[s.Successor], s)
		}
	}
	for _, a := range c.Alloys {
		x.Alloy = append(x.Alloy, x.alloyWords(a))
		for _, m := range c.Variants(a) {
			own := x.addName(make([]uint32, 1, 8), plainWord, m.Temper)
			own = x.addAliases(own, m.Aliases)
			own = x.addSpecifications(own, m, former)
			own = x.addWords(own, m.Process.ID())
			x.Own = append(x.Own, x.addWords(own, m.Process.Words()))
			materials = append(materials, m)
			at := slices.Index(c.Everyday, m.ID)
			common := len(c.Everyday) - at
			if at < 0 {
				common = 0
				if m.Remembered() {
					common = -1
				}
			}
			x.Common = append(x.Common, common)
			x.join(m.ID, m.Aliases)
		}
		x.join(a.Name, a.Aliases)
	}
	slices.Sort(x.Joined)
	x.Joined = slices.Compact(x.Joined)
	x.Named = len(x.all)
	for i, m := range materials {
		x.Own[i][0] = word(x.numberOf(fold(m.ID)), ownID)
	}
	x.All = "\n" + strings.Join(x.all, "\n") + "\n"
	return x.Words
}

// join takes down which names are two numbers with a hyphen between them.
func (x *lister) join(name string, aliases []props.Alias) {
	if joinsNumbers(name) {
		x.Joined = append(x.Joined, fold(name))
	}
	for _, a := range aliases {
		if joinsNumbers(a.Name) {
			x.Joined = append(x.Joined, fold(a.Name))
		}
	}
}

func (x *lister) alloyWords(a *props.Alloy) []uint32 {
	list := x.addName(nil, ownName, a.ID)
	list = x.addName(list, ownName, a.Name)
	if a.UNS != "" {
		list = x.addName(list, alias, a.UNS)
		list = x.add(list, plainWord, "UNS")
	}
	list = x.addAliases(list, a.Aliases)
	for _, s := range append([]string{a.Family.Name, a.Kind}, a.Family.Words...) {
		list = x.addWords(list, s)
	}
	return list
}

func (x *lister) addAliases(list []uint32, aliases []props.Alias) []uint32 {
	for _, a := range aliases {
		k := alias
		if a.Near {
			k = nearAlias
		}
		list = x.addName(list, k, a.Name)
		list = x.add(list, plainWord, a.System)
		list = x.addWords(list, a.System)
	}
	return list
}

// addSpecifications adds the standards whose limits are on file for the
// material, with and without their issuer (ASTM A536, A536), and those that took
// their place or were replaced by them. Where there are no limits, as for die
// castings, it is the standard of the composition.
func (x *lister) addSpecifications(list []uint32, m *props.Material, former map[*props.Source][]*props.Source) []uint32 {
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
func (x *lister) addName(list []uint32, k kind, name string) []uint32 {
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
func (x *lister) addWords(list []uint32, phrase string) []uint32 {
	for w := range strings.FieldsFuncSeq(phrase, separator) {
		list = x.add(list, plainWord, w)
	}
	return list
}

func (x *lister) add(list []uint32, k kind, text string) []uint32 {
	if text = fold(text); text == "" {
		return list
	}
	return append(list, word(x.numberOf(text), k))
}

// numberOf is the number of a folded word, a new one where it has none.
func (x *lister) numberOf(text string) int {
	n, known := x.number[text]
	if !known {
		n = len(x.all)
		x.number[text] = n
		x.all = append(x.all, text)
	}
	return n
}

// joinsNumbers reports whether two numbers of a name run together when it is folded.
func joinsNumbers(name string) bool {
	for i := 1; i+1 < len(name); i++ {
		if name[i] == '-' && isDigit(name[i-1]) && isDigit(name[i+1]) {
			return true
		}
	}
	return false
}
