package report

import (
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/foundry"
	"alongside/props/sheet"
)

// MemorySign marks a figure that was remembered, not read.
const MemorySign = "*"

const fromMemory = "from memory, not read"

// knownBy say how a figure or statement became known: the sign beside it and
// the words behind its source, "" where it was read. The words of each degree
// stand here and nowhere else.
var knownBy = [...]struct{ sign, words string }{
	props.Memory:  {MemorySign, fromMemory},
	props.Agreed:  {"", "from memory, same digits in another document"},
	props.Read:    {"", ""},
	props.Checked: {"", "checked by the shop"},
}

// recalled reports whether something waits to be read in its source.
func recalled(k props.Known) bool { return knownBy[k].sign != "" }

// RecalledSign explains the sign at a figure that was not read.
const RecalledSign = MemorySign + " " + fromMemory

// knownText says at length how something became known, on what kind of page, and
// with which document a figure from memory agrees.
func knownText(k props.Known, where string, agrees *props.Source) string {
	words := knownBy[k].words
	switch {
	case k == props.Checked:
		return words + ": " + where
	case agrees != nil:
		return words + ": " + sourceText(agrees)
	case recalled(k) && where != "":
		return words + " (" + where + ")"
	case recalled(k):
		return words + ": check it against the source"
	case where != "":
		return "read: " + where
	}
	return "read"
}

// correction says what a figure was before the shop found another value; "" for
// one that was confirmed, or not checked.
func correction(f *props.Figure) string {
	if f.Was == nil || f.Was.Value == f.Value {
		return ""
	}
	from := ""
	if f.Was.Known() != props.Read {
		from = " from memory"
	}
	return "shop reads " + f.Value.String() + ", catalog had " + f.Was.Value.String() + from
}

// cited is where something stands: its source by title or number, the table,
// and whether it was read: "S3, Table A.1, from memory, not read".
func cited(source, table string, k props.Known) string {
	return joined(", ", source, table, knownBy[k].words)
}

// figureText is a figure in one line: value in the unit wanted, basis,
// conditions, what else there is to say, and where it stands.
func figureText(f *props.Figure, value, cite string, more ...string) string {
	return value + " " + aboutFigure(f, cite, more...)
}

// aboutFigure is figureText without the value.
func aboutFigure(f *props.Figure, cite string, more ...string) string {
	parts := append([]string{f.Basis.Phrase(), f.Cond.String()}, more...)
	parts = append(parts, correction(f))
	return joined("; ", append(parts, cite)...)
}

// titleCite names the source of a figure by its title.
func titleCite(f *props.Figure) string { return cited(f.Source.Title, f.Table, f.Known()) }

// citedFigure is a figure in one line with its source: "27 ksi typical;
// separately cast bar; Handbook, Table 3". The value is given in the unit
// wanted.
func citedFigure(f *props.Figure, value string) string {
	return figureText(f, value, titleCite(f))
}

// What is said of common practice: of a page of the trade, and where nothing at
// all is named.
const (
	practice = "common practice, no standard or handbook named"
	noSource = "common practice, no source"
)

// sourceText is a source in one line.
func sourceText(s *props.Source) string {
	text := s.Title
	if s.Publisher != "" && !strings.Contains(text, s.Publisher) {
		text += ", " + s.Publisher
	}
	if s.Edition != "" {
		text += ", " + s.Edition
	}
	if s.Trade() {
		text += " (" + practice + ")"
	}
	if s.Successor != nil {
		text += ", superseded by " + s.Successor.ID
	}
	return text
}

// statedFor says for which materials of the alloy the source states a figure.
func statedFor(m *props.Material, b *props.Block) string {
	if !b.Inherited {
		return m.Name()
	}
	s := "the alloy " + m.Alloy.Name
	if b.Family {
		s = "the family " + m.Alloy.Family.Name
	}
	if len(b.Classes) > 0 {
		s += ", class " + strings.Join(b.Classes, ", ")
	}
	if len(b.Tempers) > 0 {
		s += ", tempers " + strings.Join(b.Tempers, ", ")
	} else {
		s += ", every temper"
	}
	if len(b.Processes) == 0 {
		return s + " and process"
	}
	names := make([]string, len(b.Processes))
	for i, p := range b.Processes {
		names[i] = p.String()
	}
	return s + ", by " + strings.Join(names, ", ")
}

// published is the section with what there is to tell of a source at length.
func (s Section) published(src *props.Source) Section {
	kind := " (" + src.Kind + ")"
	if src.Trade() {
		kind = " (" + practice + ")"
	}
	s = s.with("source", src.Title, "published by", joined(", ", src.Publisher, src.Edition)+kind)
	if src.Successor != nil {
		s = s.with("superseded by", sourceText(src.Successor))
	}
	return s.with("source note", src.Note)
}

// from is the section with where its statement comes from.
func (s Section) from(c foundry.Cite) Section {
	switch {
	case c.Source == nil:
		return s
	case c.Practice():
		s = s.with("source", practice)
	default:
		s = s.published(c.Source).with("table", c.Table)
	}
	return s.with("known", knownText(c.Known, c.Where, nil))
}

// numbering hands out footnote and source numbers in order of first use.
type numbering struct {
	notes   []string
	sources []string
	bySrc   map[*props.Source]int
}

func (n *numbering) note(text string) int { return numbered(&n.notes, text) }

// numbered is the place of a text in a list, counted from 1; a new one is
// added.
func numbered(list *[]string, text string) int {
	at := slices.Index(*list, text)
	if at < 0 {
		at = len(*list)
		*list = append(*list, text)
	}
	return at + 1
}

func (n *numbering) source(s *props.Source) int {
	if id, ok := n.bySrc[s]; ok {
		return id
	}
	if n.bySrc == nil {
		n.bySrc = map[*props.Source]int{}
	}
	n.sources = append(n.sources, sourceText(s))
	n.bySrc[s] = len(n.sources)
	return len(n.sources)
}

// cited is where a statement comes from; common practice has no number.
func (n *numbering) cited(c foundry.Cite) string {
	if c.Source.Kind == "none" {
		return noSource
	}
	return cited(n.mark(c.Source), c.Table, c.Known)
}

// mark is the number of a source as it stands in a text.
func (n *numbering) mark(s *props.Source) string { return "S" + strconv.Itoa(n.source(s)) }

// figure is figureText with the number of the source.
func (n *numbering) figure(f *props.Figure, value string) string {
	return figureText(f, value, cited(n.mark(f.Source), f.Table, f.Known()))
}

// statement is a sentence with its source in brackets.
func (n *numbering) statement(s foundry.Statement) string {
	return s.Text + " [" + n.cited(s.Cite) + "]"
}

// statements are several of them in one text.
func (n *numbering) statements(list []foundry.Statement) string {
	var out []string
	for _, s := range list {
		out = append(out, n.statement(s))
	}
	return strings.Join(out, "; ")
}

// below are the notes and sources for the foot of a document.
func (n *numbering) below() []sheet.Note {
	var out []sheet.Note
	for i, text := range n.notes {
		out = append(out, sheet.Note{Number: i + 1, Text: text})
	}
	return append(out, marked("S", n.sources)...)
}

// marked numbers texts behind a letter: S1, S2.
func marked(letter string, texts []string) []sheet.Note {
	var out []sheet.Note
	for i, text := range texts {
		out = append(out, sheet.Note{Mark: letter + strconv.Itoa(i+1), Text: text})
	}
	return out
}

func joined(by string, parts ...string) string {
	return strings.Join(slices.DeleteFunc(slices.Clone(parts), func(s string) bool { return s == "" }), by)
}
