package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/audit"
	mistake "alongside/props/record"
	"alongside/props/sheet"
)

// Checked is what the check of a catalog or of data files came to.
type Checked struct {
	Mistakes           mistake.Errors
	Open, Explained    []*audit.Finding
	Unbanded           []string // families
	Materials, Figures int
}

// counts are the four lines at the end.
func (c *Checked) counts() []string {
	return []string{fmt.Sprintf("%d materials", c.Materials), fmt.Sprintf("%d figures", c.Figures),
		fmt.Sprintf("%d findings explained", len(c.Explained)), fmt.Sprintf("%d findings open", len(c.Open))}
}

// Text is what is wrong as the tools of the trade print it, a line that begins with
// file and line, and the counts; the findings with a written reason where asked for.
func (c *Checked) Text(explained bool) string {
	var b strings.Builder
	if n := len(c.Mistakes); n > 0 {
		fmt.Fprintf(&b, "%v\n\n%d mistakes\n", c.Mistakes, n)
	}
	for _, f := range c.findings(explained) {
		fmt.Fprintln(&b, f)
	}
	if len(c.Unbanded) > 0 {
		fmt.Fprintln(&b, c.unbanded())
	}
	if b.Len() > 0 {
		b.WriteByte('\n')
	}
	return sheet.CleanLines(b.String() + strings.Join(c.counts(), "\n") + "\n")
}

func (c *Checked) findings(explained bool) []*audit.Finding {
	if explained {
		return slices.Concat(c.Explained, c.Open)
	}
	return c.Open
}

func (c *Checked) unbanded() string {
	return "families without bands, or without a base element that the rules know: " + strings.Join(c.Unbanded, ", ")
}

// CheckDoc is the same for a mail, a spreadsheet or a program.
func CheckDoc(c *Checked, explained bool) *Doc {
	findings := c.findings(explained)
	return &Doc{
		text: func(*numbering) *sheet.Doc {
			t := &sheet.Table{Columns: sheet.Columns("file", "line", "where", "what", "rule", "remedy, or why it is kept")}
			for _, m := range c.Mistakes {
				t.Add(m.File, strconv.Itoa(m.Line), joined(", ", m.Record, m.Field), m.Problem, "", m.Remedy)
			}
			for _, f := range findings {
				t.Add(f.File, strconv.Itoa(f.Line), joined(", ", f.Material.ID, f.Property.String()), f.Message, f.Rule, f.Why)
			}
			d := &sheet.Doc{Blocks: filled(t), Foot: c.counts()}
			if len(c.Unbanded) > 0 {
				d.Foot = append([]string{c.unbanded()}, d.Foot...)
			}
			return d
		},
		json: func() object {
			return object{
				{"mistakes", each(c.Mistakes, func(m **mistake.Error) object {
					return object{{"file", (*m).File}, {"line", (*m).Line}, {"record", (*m).Record}, {"field", (*m).Field}, {"problem", (*m).Problem}, {"remedy", (*m).Remedy}}
				})},
				{"findings", each(findings, func(f **audit.Finding) object {
					return object{{"file", (*f).File}, {"line", (*f).Line}, {"material", (*f).Material.ID}, {"property", (*f).Property.String()}, {"rule", (*f).Rule}, {"message", (*f).Message}, {"kept", (*f).Why}}
				})},
				{"families_without_bands", c.Unbanded},
				{"count", object{{"materials", c.Materials}, {"figures", c.Figures}, {"explained", len(c.Explained)}, {"open", len(c.Open)}}},
			}
		},
	}
}

// RulesDoc lists the rules that question figures, with their sources, and the bands
// of the families.
func RulesDoc(families []*props.Family) *Doc {
	rules := audit.Rules()
	var banded []*props.Family
	for _, f := range families {
		if len(f.Bands) > 0 {
			banded = append(banded, f)
		}
	}
	return &Doc{
		text: func(*numbering) *sheet.Doc {
			var asked sheet.List
			var bands sheet.Lines
			for _, r := range rules {
				asked.Items = append(asked.Items, sheet.Item{Label: r.ID + ": " + r.Says, Text: r.Source})
			}
			for _, f := range banded {
				bands = append(bands, f.Name+": "+audit.Bands(f))
			}
			return &sheet.Doc{Blocks: []sheet.Block{&asked, bands}}
		},
		json: func() object {
			return object{
				{"rules", each(rules, func(r *audit.Rule) object {
					return object{{"rule", r.ID}, {"says", r.Says}, {"source", r.Source}}
				})},
				{"bands", each(banded, func(f **props.Family) object { return object{{"family", (*f).ID}, {"text", audit.Bands(*f)}} })},
			}
		},
	}
}

// VersionDoc is the version of the program and the size of its catalog.
func VersionDoc(version string, materials, figures, sources int) *Doc {
	return &Doc{
		text: func(*numbering) *sheet.Doc {
			size := fmt.Sprintf("catalog: %d materials, %d figures, %d sources", materials, figures, sources)
			return &sheet.Doc{Blocks: []sheet.Block{sheet.Lines{"alongside " + version, size}}}
		},
		json: func() object {
			return object{{"version", version}, {"count", object{{"materials", materials}, {"figures", figures}, {"sources", sources}}}}
		},
	}
}
