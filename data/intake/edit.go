package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
)

// edit writes the verdicts into the data files, block by block, from the end
// of each file so that line numbers hold.
func edit(c *catalog.Catalog, folder string, verdicts map[*props.Figure]*verdict) error {
	figures := map[*props.Block][]*props.Figure{}
	for _, f := range c.Stated() {
		figures[f.Block] = append(figures[f.Block], f)
	}
	byFile := map[string]map[*props.Block]bool{}
	for f := range verdicts {
		if byFile[f.File] == nil {
			byFile[f.File] = map[*props.Block]bool{}
		}
		byFile[f.File][f.Block] = true
	}
	for name, set := range byFile {
		path := filepath.Join(folder, name)
		content, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		lines := strings.Split(string(content), "\n")
		var blocks []*props.Block
		for b := range set {
			blocks = append(blocks, b)
		}
		slices.SortFunc(blocks, func(a, b *props.Block) int { return b.Line - a.Line })
		for _, b := range blocks {
			t, err := readBlock(lines, b, figures[b])
			if err != nil {
				return fmt.Errorf("%s: %w", path, err)
			}
			lines = slices.Concat(lines[:b.Line-1], t.write(verdicts), lines[t.end:])
		}
		if err := os.WriteFile(path, []byte(strings.Join(join(lines), "\n")), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// blockText is a block of figures as it stands in its file.
type blockText struct {
	head    []string // the lines up to the first figure: whence the figures come
	entries []*entry
	end     int // line after the last entry
}

// entry is one property with its values.
type entry struct {
	key     string
	texts   []string // each value with its quotes
	figures []*props.Figure
	list    bool
}

var (
	keyLine = regexp.MustCompile(`^([a-z0-9_]+) = (.*)$`)
	value   = regexp.MustCompile(`"(?:[^"\\]|\\.)*"|\d+`)
)

// readBlock finds the lines of a block and pairs each value with its figure.
func readBlock(lines []string, b *props.Block, figures []*props.Figure) (*blockText, error) {
	t := &blockText{head: []string{lines[b.Line-1]}, end: b.Line}
	seen := map[props.PropertyID]int{}
	paired := 0
	for i := b.Line; i < len(lines) && lines[i] != "" && lines[i][0] != '[' && lines[i][0] != '#'; i++ {
		m := keyLine.FindStringSubmatch(lines[i])
		if m == nil {
			continue
		}
		text := m[2]
		for strings.HasPrefix(text, "[") && !strings.HasSuffix(strings.TrimSpace(text), "]") {
			i++
			text += strings.TrimSpace(lines[i])
		}
		t.end = i + 1
		p, ok := props.PropertyNamed(m[1])
		if !ok {
			t.head = append(t.head, lines[i])
			continue
		}
		e := &entry{key: m[1], list: strings.HasPrefix(text, "["), texts: value.FindAllString(text, -1)}
		for range e.texts {
			f := figureAt(figures, p, seen[p])
			if f == nil {
				return nil, fmt.Errorf("line %d: %s does not pair with the figures read", i+1, m[1])
			}
			e.figures = append(e.figures, f)
			seen[p]++
			paired++
		}
		t.entries = append(t.entries, e)
	}
	if paired != len(figures) {
		return nil, fmt.Errorf("line %d: a comment or an empty line inside the block; put it above the block", b.Line)
	}
	return t, nil
}

// figureAt is the n-th figure of a property among those of a block, as written.
func figureAt(figures []*props.Figure, p props.PropertyID, n int) *props.Figure {
	for _, f := range figures {
		if f.Property == p {
			if n == 0 {
				return f
			}
			n--
		}
	}
	return nil
}

// write is the block after the verdicts: the figures that are now read in a
// block of their own before the rest, agreements beside their figure.
func (t *blockText) write(verdicts map[*props.Figure]*verdict) []string {
	var read, rest []*entry
	var where []string
	for _, e := range t.entries {
		r, o, at := e.split(verdicts)
		if len(r.texts) > 0 {
			read = append(read, r)
		}
		if len(o.texts) > 0 {
			rest = append(rest, o)
		}
		for _, w := range at {
			if !slices.Contains(where, w) {
				where = append(where, w)
			}
		}
	}
	var out []string
	if len(read) > 0 {
		out = append(out, readHead(t.head, where)...)
		out = append(out, entryLines(read)...)
		if len(rest) > 0 {
			out = append(out, "")
		}
	}
	if len(rest) > 0 {
		out = append(append(out, t.head...), entryLines(rest)...)
	}
	return out
}

// split is an entry in two: the figures that are now read, with where, and the rest.
func (e *entry) split(verdicts map[*props.Figure]*verdict) (read, rest *entry, where []string) {
	read, rest = &entry{key: e.key}, &entry{key: e.key}
	for i, f := range e.figures {
		switch v := verdicts[f]; {
		case v != nil && v.read:
			read.texts = append(read.texts, withoutAgreement(e.texts[i]))
			where = append(where, v.where...)
		case v != nil && v.agrees != nil:
			rest.texts = append(rest.texts, withAgreement(e.texts[i], v.agrees.ID))
		default:
			rest.texts = append(rest.texts, e.texts[i])
		}
	}
	read.list, rest.list = e.list && len(read.texts) > 1, e.list && len(rest.texts) > 1
	return read, rest, where
}

// readHead is the head of a block of figures that were read.
func readHead(head, where []string) []string {
	var out []string
	for _, l := range head {
		switch {
		case strings.HasPrefix(l, "known = "):
			out = append(out, `known = "read"`, fmt.Sprintf("where = %q", strings.Join(where, "; ")))
		case !strings.HasPrefix(l, "where = "):
			out = append(out, l)
		}
	}
	return out
}

var agreement = regexp.MustCompile(`; agrees [A-Z0-9.-]+`)

func withoutAgreement(text string) string { return agreement.ReplaceAllString(text, "") }

func withAgreement(text, id string) string {
	return `"` + strings.Trim(withoutAgreement(text), `"`) + "; agrees " + id + `"`
}

func entryLines(entries []*entry) []string {
	var out []string
	for _, e := range entries {
		text := strings.Join(e.texts, ", ")
		switch {
		case e.list && len(text) > 110:
			out = append(out, e.key+" = [")
			for _, t := range e.texts {
				out = append(out, "  "+t+",")
			}
			out = append(out, "]")
		case e.list:
			out = append(out, e.key+" = ["+text+"]")
		default:
			out = append(out, e.key+" = "+text)
		}
	}
	return out
}
