package main

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"alongside/props"
	"alongside/props/catalog"
)

//go:embed rules.toml
var rulesText string

// rule says what a kind of page may be called.
type rule struct {
	Source string   // whose figures the page gives, as the rows name it
	Pages  []string // kinds of page, by the start of their words; all when left out
	Read   []string // sources of the catalog whose figures the page reproduces
	Where  string   // the page in the words of the catalog
	Agrees string   // document named where the digits agree with a figure of another source
}

// rules are the rules of rules.toml, and the remarks by which a row is refused.
type rules struct {
	Refuse []string
	Rule   []rule
}

func (rs *rules) read(text string) error {
	meta, err := toml.Decode(text, rs)
	if err != nil {
		return fmt.Errorf("rules.toml: %w", err)
	}
	if left := meta.Undecoded(); len(left) > 0 {
		return fmt.Errorf("rules.toml: unknown key %v; use refuse, or source, pages, read, where, agrees", left[0])
	}
	return nil
}

// check holds the rules against the source list.
func (rs *rules) check(c *catalog.Catalog) error {
	known := map[string]bool{}
	for _, s := range c.Sources {
		known[s.ID] = true
	}
	for _, r := range rs.Rule {
		for _, id := range append(slices.Clone(r.Read), r.Agrees) {
			if id != "" && !known[id] {
				return fmt.Errorf("rules.toml: rule for %s: %q is not in the source list; add it to data/sources-*.toml", r.Source, id)
			}
		}
		if len(r.Read) > 0 && r.Where == "" {
			return fmt.Errorf("rules.toml: rule for %s: where is missing; say what kind of page it is", r.Source)
		}
	}
	return nil
}

// of is the first rule that fits the row's source and page; nil for none and
// for a row that is refused.
func (rs *rules) of(r *row) *rule {
	if slices.ContainsFunc(rs.Refuse, func(remark string) bool { return strings.Contains(r.Note, remark) }) {
		return nil
	}
	for i := range rs.Rule {
		ru := &rs.Rule[i]
		fits := func(start string) bool { return strings.HasPrefix(r.Page, start) }
		if ru.Source == r.Source && (len(ru.Pages) == 0 || slices.ContainsFunc(ru.Pages, fits)) {
			return ru
		}
	}
	return nil
}

// verdict is what the catalog may say of a figure after the rows were judged.
type verdict struct {
	read   bool
	where  []string
	agrees *props.Source
}

// judge adds what a rule says of a figure that a row gives, and reports whether
// it says anything.
func (v *verdict) judge(c *catalog.Catalog, ru *rule, f *props.Figure) bool {
	if slices.Contains(ru.Read, f.Source.ID) {
		v.read = true
		if !slices.Contains(v.where, ru.Where) {
			v.where = append(v.where, ru.Where)
		}
		return true
	}
	if ru.Agrees == "" || ru.Agrees == f.Source.ID {
		return false
	}
	for _, s := range c.Sources {
		if s.ID == ru.Agrees && (v.agrees == nil || (v.agrees.Trade() && !s.Trade())) {
			v.agrees = s
		}
	}
	return true
}
