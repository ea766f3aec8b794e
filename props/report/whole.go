package report

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/disk"
	"alongside/props/foundry"
	"alongside/props/needs"
	"alongside/props/sheet"
)

// Whole is all that a call came to, for an engineer who checks it or a colleague who
// takes over: the brief, and behind it what the brief rests on.
type Whole struct {
	OnePage
	All     compare.Bench // every pin, the brief may tell of fewer
	Catalog *catalog.Catalog
	Book    *foundry.Book
	Said    []string // the customer's words
	Duties  []*needs.Duty
	At      time.Time
	Version string
}

// chapter is a document with its name in the whole.
type chapter struct {
	title, id string
	doc       *Doc
}

func (w *Whole) chapters() []chapter {
	c, size := compare.Compare(w.All), w.Swaps[0].Given.Dimension
	pictures := append(rowPictures(c), drawable(heatPicture(&w.All), growthPicture(&w.All))...)
	drawn := &Doc{pictures: pictures, text: func(*numbering) *sheet.Doc { return &sheet.Doc{Blocks: blocks(pictures)} }}
	out := []chapter{
		{"Side by side", "comparison", CompareDoc(c, Scope{}, Limits{Needs: w.Needs, Duties: w.Duties})},
		{"Pictures", "", drawn},
		{"What the change does to the part", "swap", SwapDoc(w.Swaps...)},
		{"Watch-outs", "watch_outs", WatchDoc(w.Watched...)},
		{"Process", "process", ProcessDoc(w.Book.Pages(w.Catalog, w.All.Pins, size), size, w.Bench.System)},
	}
	for i := range w.Watched {
		pin := w.Watched[i].Pin
		out = append(out, chapter{"Drawing note, " + pin.Name(), "drawing", DrawingDoc(Drawing{w.Catalog, w.Book, pin, w.Swaps[i].Given, w.Watched[i].Cautions})})
	}
	return out
}

// WholeDoc is the report: as HTML a whole page. Its sources are numbered once.
func WholeDoc(w Whole) *Doc {
	return &Doc{text: w.text, json: func() object {
		out := object{{"at", stamp(w.At)}, {"version", w.Version}, {"said", w.Said}, {"brief", w.page().json(w.OnePage)}}
		var drawings []any
		for _, c := range w.chapters() {
			switch c.id {
			case "": // the figures stand in the others
				continue
			case "drawing":
				drawings = append(drawings, c.doc.json())
				continue
			}
			out = append(out, field{c.id, c.doc.json()})
		}
		return append(out, field{"drawings", drawings}, field{"caution", Caution})
	}}
}

func (w *Whole) text(n *numbering) *sheet.Doc {
	brief := w.page().doc
	whole := &sheet.Doc{Page: true, Caution: Caution}
	head := sheet.Lines{moment(w.At) + ", alongside " + w.Version}
	for _, s := range w.Said {
		head = append(head, "The customer: "+s)
	}
	whole.Blocks = append(whole.Blocks, brief.Blocks[0], head)
	whole.Blocks = append(append(whole.Blocks, brief.Blocks[1:]...), sheet.Lines(brief.Foot), sheet.Lines{Caution})
	for _, c := range w.chapters() {
		d := c.doc.text(n)
		d.Blocks = slices.DeleteFunc(d.Blocks, func(b sheet.Block) bool { // its own title is the chapter's
			_, title := b.(sheet.Title)
			return title
		})
		whole.Blocks = append(append(whole.Blocks, sheet.Title(c.title)), d.Blocks...)
		var below sheet.Lines
		for i := range d.Notes {
			below = append(below, d.Notes[i].Line())
		}
		if below = append(below, d.Foot...); len(below) > 0 {
			whole.Blocks = append(whole.Blocks, below)
		}
	}
	whole.Blocks = append(whole.Blocks, sheet.Title("Notes and sources"))
	return whole
}

// formatOf is the format of a report by the ending of its file; "" for none.
func formatOf(ending string) string {
	switch ending = strings.ToLower(ending); ending {
	case ".html", ".json", ".csv", ".tsv":
		return ending[1:]
	case ".htm":
		return "html"
	case ".md":
		return "markdown"
	case ".txt":
		return "text"
	}
	return ""
}

// WriteNew writes a document to a file that is not there yet, in a format or, where
// it is "", in that of the file's ending. The errors say what to do.
func WriteNew(path string, d *Doc, format string) error {
	if format == "" {
		if format = formatOf(filepath.Ext(path)); format == "" {
			return fmt.Errorf("%s: the ending says the format; use .html, .md, .txt or .json", path)
		}
	}
	text, err := d.Render(format, MailWidth)
	if err != nil {
		return err
	}
	return disk.New(path, []byte(text))
}
