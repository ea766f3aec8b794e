// Package report turns what was worked out into words and figures: short texts
// that screens lay out, and documents for people, for spreadsheets and for
// programs that leave the program as text, Markdown, HTML, CSV, TSV or JSON.
//
// A row's name, unit and sense are made in row.go, a figure and its source in
// words in cite.go; every output takes them from there.
//
// # JSON
//
// All commands speak one vocabulary, that of data/output.schema.json: what is not
// known is null or empty, and numbers stand in a value, a result, a delta, a bound
// or a count, not rounded. A document is added there and to root's oneOf.
package report

import (
	"fmt"
	"strings"

	"alongside/props/sheet"
)

// Caution stands under everything that leaves the program.
const Caution = "Published figures, for comparison only, not for design. The governing standard, tests of the actual casting, local codes and a licensed engineer decide."

// MailWidth is a line length that mail programs leave unbroken.
const MailWidth = sheet.MailWidth

// Doc is one answer in the three shapes in which it can leave the program.
type Doc struct {
	text     func(*numbering) *sheet.Doc // for reading; sources and notes are numbered by who prints it
	data     func() *sheet.Doc           // for a spreadsheet, bare numbers; nil: as text
	pictures []*sheet.Picture            // those of the text
	json     func() object               // for programs; nil: there is none
}

// Marked is the document with a remark that stands wherever it goes: above what
// is for reading, below what is for a spreadsheet, before the caution for programs.
func (d *Doc) Marked(remark string) *Doc {
	marked := *d
	marked.text = func(n *numbering) *sheet.Doc {
		doc := *d.text(n)
		doc.Blocks = append([]sheet.Block{sheet.Lines{remark}}, doc.Blocks...)
		return &doc
	}
	if d.data != nil {
		marked.data = func() *sheet.Doc {
			doc := *d.data()
			doc.Foot = append([]string{remark}, doc.Foot...)
			return &doc
		}
	}
	if d.json != nil {
		marked.json = func() object { return d.json().marked(remark) }
	}
	return &marked
}

// marked puts a remark before the caution of an object and of those in it.
func (o object) marked(remark string) object {
	for i, f := range o {
		switch v := f.value.(type) {
		case string:
			if f.name == "caution" {
				o[i].value = remark + " " + v
			}
		case object:
			o[i].value = v.marked(remark)
		}
	}
	return o
}

// Formats lists the formats of every command.
func Formats() []string { return []string{"text", "markdown", "tsv", "csv", "html", "json"} }

// Render writes the answer in a format; width is the line length of text.
// Another format is an error that lists those there are.
func (d *Doc) Render(format string, width int) (string, error) {
	switch {
	case format == "json" && d.json != nil:
		return indented(d.json()), nil
	case (format == "csv" || format == "tsv") && d.data != nil:
		return d.data().Render(format, width)
	}
	n := &numbering{}
	doc := d.text(n)
	doc.Notes = append(doc.Notes, n.below()...)
	text, err := doc.Render(format, width)
	if err != nil {
		err = fmt.Errorf("no format %q; use one of: %s", format, strings.Join(Formats(), ", "))
	}
	return text, err
}
