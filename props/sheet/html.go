package sheet

import (
	"html/template"
	"strings"
	"sync"
)

// page is parsed when HTML is first asked for: text must not wait for it. The
// styles stand in every cell: mail programs drop style sheets.
var page = sync.OnceValue(func() *template.Template {
	const border = "border:1px solid #999;padding:2px 6px;text-align:"
	source := strings.NewReplacer(
		"@table", `style="border-collapse:collapse;font-family:Arial,Helvetica,sans-serif;font-size:10pt"`,
		"@figure", `style="`+border+`right;white-space:nowrap"`,
		"@label", `style="`+border+`left"`,
		"@head", `style="`+border+`left;vertical-align:bottom;background:#eee"`,
		"@group", `style="`+border+`left;background:#f6f6f6;font-weight:bold"`,
		"@small", `style="font-family:Arial,Helvetica,sans-serif;font-size:9pt"`,
	).Replace(pageSource)
	return template.Must(template.New("page").Parse(source))
})

const pageSource = `
{{- define "lines"}}{{range $i, $l := .}}{{if $i}}<br>{{end}}{{$l}}{{end}}{{end -}}
{{- define "paragraph"}}{{if .}}<p @small>{{range $i, $l := .}}{{if $i}}<br>
{{end}}{{$l}}{{end}}</p>
{{end}}{{end -}}
<meta charset="utf-8">
{{range .Blocks}}
{{- if .Title}}<p @small><b>{{.Title}}</b></p>
{{end}}
{{- template "paragraph" .Lines}}
{{- if .Table}}<table @table>
{{if .Head}}<thead><tr>{{range .Head}}<th @head>{{template "lines" .}}</th>{{end}}</tr></thead>
{{end}}<tbody>
{{$columns := .Columns}}{{range .Rows -}}
{{if .Group}}<tr><td colspan="{{$columns}}" @group>{{.Group}}</td></tr>
{{end}}<tr>
{{- range .Cells}}
{{- if .Figure}}<td @figure>{{with .Text}}<b>{{.}}</b>{{end}}{{if .Blank}} {{end}}<small>{{.Beside}}</small></td>
{{- else if .Right}}<td @figure>{{.Text}}</td>
{{- else}}<td @label>{{.Text}}</td>{{end}}{{end}}</tr>
{{end}}</tbody>
{{if .Total}}<tfoot><tr>{{range .Total}}<td @label>{{template "lines" .}}</td>{{end}}</tr></tfoot>
{{end}}</table>
{{end}}
{{- template "paragraph" .Notes}}
{{- end}}
{{- template "paragraph" .Below -}}
`

// What the page is filled with, every text cleaned.
type (
	htmlPage struct {
		Blocks []htmlBlock
		Below  []string
	}
	htmlBlock struct {
		Title        string
		Lines, Notes []string
		Table        bool
		Columns      int
		Head, Total  [][]string
		Rows         []htmlRow
	}
	htmlRow struct {
		Group string
		Cells []htmlCell
	}
	htmlCell struct {
		Text, Beside         string
		Figure, Right, Blank bool
	}
)

// HTML writes the document as tables that paste into a mail. It is a fragment,
// not a page. Every text is escaped where the template puts it.
func (d *Doc) HTML() string {
	p := htmlPage{Below: cleaned(d.below())}
	for _, block := range d.Blocks {
		switch x := block.(type) {
		case Title:
			p.Blocks = append(p.Blocks, htmlBlock{Title: Clean(string(x))})
		case Lines:
			p.Blocks = append(p.Blocks, htmlBlock{Lines: cleaned(x)})
		case *List:
			p.Blocks = append(p.Blocks, x.table().html())
		case *Table:
			p.Blocks = append(p.Blocks, x.html())
		}
	}
	var b strings.Builder
	if err := page().Execute(&b, p); err != nil { // a strings.Builder takes everything
		panic(err)
	}
	return b.String()
}

func (t *Table) html() htmlBlock {
	out := htmlBlock{Title: Clean(t.Heading), Notes: cleaned(t.Notes), Table: true, Columns: t.width()}
	for i := range t.Columns {
		head := joined("\n", cleaned(t.Columns[i].Head)...)
		if head == "" {
			head = Clean(t.Columns[i].Name)
		}
		if t.headed() {
			out.Head = append(out.Head, strings.Split(head, "\n"))
		}
	}
	for r := range t.Rows {
		row := htmlRow{Group: Clean(t.Rows[r].Group)}
		for i := range t.Rows[r].Cells {
			row.Cells = append(row.Cells, t.Rows[r].Cells[i].html(t.column(i).Align))
		}
		out.Rows = append(out.Rows, row)
	}
	if len(t.totals()) > 0 {
		for i := range t.Columns {
			total := cleaned(t.Columns[i].Total)
			if i == 0 {
				total = []string{Clean(t.Total)}
			}
			out.Total = append(out.Total, total)
		}
	}
	return out
}

// html sets the text of a figure in bold and all else small.
func (c *Cell) html(a Align) htmlCell {
	if a != Figure {
		return htmlCell{Text: Clean(c.Text), Right: a == Right}
	}
	beside := *c
	beside.Text = ""
	return htmlCell{Text: Clean(c.Text), Beside: Clean(beside.line()), Figure: true, Blank: c.Text != "" && c.Mark == ""}
}

func cleaned(lines []string) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = Clean(l)
	}
	return out
}
