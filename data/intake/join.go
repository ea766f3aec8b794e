package main

import (
	"slices"
	"strings"
)

// join puts neighboring blocks of figures into one where they say the same of
// their figures: source, basis, table, page and conditions.
func join(lines []string) []string {
	var out []string
	var last *textBlock
	for i := 0; i < len(lines); {
		if !strings.HasPrefix(lines[i], "[[") || !strings.HasSuffix(lines[i], "figures]]") {
			if lines[i] != "" {
				last = nil
			}
			out = append(out, lines[i])
			i++
			continue
		}
		end := i
		for end < len(lines) && lines[end] != "" {
			end++
		}
		b := cutBlock(lines[i:end])
		if last != nil && last.sameHead(b) && out[len(out)-1] == "" && out[len(out)-2] != "" {
			last.entries = append(last.entries, b.entries...)
			out = append(out[:last.start], last.lines()...)
			last.start = len(out) - len(last.lines())
		} else {
			b.start = len(out)
			out = append(out, b.lines()...)
			last = b
		}
		i = end
	}
	return out
}

// textBlock is a block of figures as lines.
type textBlock struct {
	start   int
	head    []string
	entries [][]string // the lines of each property
}

func cutBlock(lines []string) *textBlock {
	b := &textBlock{head: []string{lines[0]}}
	for i := 1; i < len(lines); i++ {
		from := i
		for strings.HasSuffix(lines[from], "= [") && lines[i] != "]" {
			i++
		}
		if isHead(lines[from]) && len(b.entries) == 0 {
			b.head = append(b.head, lines[from:i+1]...)
		} else {
			b.entries = append(b.entries, lines[from:i+1])
		}
	}
	return b
}

func (b *textBlock) lines() []string {
	return slices.Concat(append([][]string{b.head}, b.entries...)...)
}

// sameHead reports whether the heads agree and no property stands in both.
func (b *textBlock) sameHead(o *textBlock) bool {
	x, y := slices.Sorted(slices.Values(b.head)), slices.Sorted(slices.Values(o.head))
	if !slices.Equal(x, y) {
		return false
	}
	for _, e := range o.entries {
		key, _, _ := strings.Cut(e[0], " =")
		if isHead(e[0]) || slices.ContainsFunc(b.entries, func(have []string) bool { return strings.HasPrefix(have[0], key+" =") }) {
			return false
		}
	}
	return true
}

var headKeys = []string{"basis", "source", "table", "known", "where", "first", "conditions", "classes", "tempers", "processes"}

func isHead(line string) bool {
	key, _, _ := strings.Cut(line, " =")
	return slices.Contains(headKeys, key)
}
