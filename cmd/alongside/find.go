package main

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"alongside/props"
	"alongside/props/report"
	"alongside/units"
)

// keyFigures are the properties shown beside each material found.
var keyFigures = [...]props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation, props.Density}

func (p *program) findCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "find [WORDS]",
		Short: "Find materials by designation, or by the customer's limits",
		Long: `Find materials by designation, temper, process or family, best match first. Words
may be typed in any order and spelling, in any system of designations; without
words every material is listed.

With --need it finds the materials that meet every limit, then the near misses
with what stops each and which temper or process of the same alloy would do.
Strength and elongation are judged on specified minimums where published.`,
		Example: `  alongside find a356 t6
  alongside find "class 30"
  alongside find AC-42100 --units si
  alongside find zinc die --format tsv
  alongside find --need "yield >= 20 ksi" --need "density < 2.8 g/cm3" --near 3
  alongside find aluminum --need "process = pm or sand; elongation >= 5 %" --sort yield
  alongside find --better-than gray-30 --rows tensile,density --sort likeness
  alongside find --need "family = aluminum" --duty plate-stiffness --baseline gray-30 --front yield,density`,
	}
	system := choiceFlag(cmd, "units", "units of the key figures", "us", "si", "cgs")
	format := choiceFlag(cmd, "format", "form of the output", "text", "tsv", "json", "markdown", "csv", "html")
	needs := p.searchFlags(cmd)
	needs.system, needs.format = system, format
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if needs.asked() {
			return needs.find(p, args)
		}
		query := strings.Join(args, " ")
		var found []*props.Material
		hits, readAs := p.catalog().SearchNear(query)
		for _, h := range hits {
			found = append(found, h.Material)
		}
		s, _ := units.ParseSystem(system.value)
		write := map[string]func([]*props.Material, units.System) string{"text": findText, "tsv": findTSV, "json": findJSON}
		form := write[format.value]
		if form == nil {
			return fmt.Errorf("--format %s goes with --need; without needs use text, tsv or json", format.value)
		}
		if readAs != "" && len(hits) > 0 {
			fmt.Fprintf(p.err, "alongside: nothing is called %q; these are found for %s\n", query, readAs)
		}
		if err := p.print(form(found, s)); err != nil || len(found) > 0 {
			return err
		}
		return &failure{exitFindings, notFound(query)}
	}
	return cmd
}

type notFound string

func (q notFound) Error() string {
	return "nothing found for " + strconv.Quote(string(q)) + "; try a part of the designation, such as 356 or AC-42"
}

// keyFigure is the first figure of a property, in the unit of a system.
func keyFigure(m *props.Material, id props.PropertyID, s units.System) (*props.Figure, units.Quantity) {
	list := m.Figures(id)
	if len(list) == 0 {
		return nil, units.Quantity{}
	}
	q, err := list[0].Value.In(id.Info().Units[s])
	if err != nil {
		q = list[0].Value
	}
	return list[0], q
}

func findText(found []*props.Material, s units.System) string {
	if len(found) == 0 {
		return ""
	}
	head, second := []string{"id", "name"}, []string{"", ""}
	for _, id := range keyFigures {
		head = append(head, strings.ToLower(id.Info().Short))
		second = append(second, id.Info().Units[s].Symbol())
	}
	records := [][]string{head, second}
	memory := false
	for _, m := range found {
		r := []string{m.ID, m.Name()}
		for _, id := range keyFigures {
			f, q := keyFigure(m, id, s)
			if f == nil {
				r = append(r, "–")
				continue
			}
			text := q.Number() + report.Mark(f.Basis)
			if f.Known() == props.Memory {
				text, memory = text+"'", true
			}
			r = append(r, text)
		}
		records = append(records, r)
	}
	text := columns(records, 2)
	text += "\nm specified minimum, x maximum; no mark: typical"
	if memory {
		text += "; ' from memory, not read"
	}
	return text + "\n"
}

// columns sets records in columns; those from right on are flush right.
func columns(records [][]string, right int) string {
	widths := make([]int, len(records[0]))
	for _, r := range records {
		for i, s := range r {
			r[i] = report.Clean(s)
			widths[i] = max(widths[i], utf8.RuneCountInString(r[i]))
		}
	}
	var b strings.Builder
	for _, r := range records {
		line := ""
		for i, s := range r {
			space := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(s))
			if i > 0 {
				line += "  "
			}
			if i >= right {
				line += space + s
			} else {
				line += s + space
			}
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return b.String()
}

func findTSV(found []*props.Material, s units.System) string {
	var b strings.Builder
	b.WriteString("id\tfamily\talloy\ttemper\tprocess")
	for _, id := range keyFigures {
		b.WriteString("\t" + id.String() + "\tbasis\tknown")
	}
	b.WriteByte('\n')
	for _, m := range found {
		b.WriteString(strings.Join([]string{m.ID, m.Alloy.Family.ID,
			report.SheetText(m.Alloy.Name), report.SheetText(m.Temper), m.Process.ID()}, "\t"))
		for _, id := range keyFigures {
			f, q := keyFigure(m, id, s)
			if f == nil {
				b.WriteString("\t\t\t")
				continue
			}
			b.WriteString("\t" + q.String() + "\t" + f.Basis.String() + "\t" + f.Known().String())
		}
		b.WriteByte('\n')
	}
	return b.String()
}

type foundMaterial struct {
	ID      string        `json:"id"`
	Name    string        `json:"name"`
	Family  string        `json:"family"`
	Alloy   string        `json:"alloy"`
	Temper  string        `json:"temper"`
	Process string        `json:"process"`
	Figures []foundFigure `json:"figures"`
}

type foundFigure struct {
	Property string  `json:"property"`
	Unit     string  `json:"unit"`
	Lo       float64 `json:"lo"`
	Hi       float64 `json:"hi"`
	Basis    string  `json:"basis"`
	Known    string  `json:"known"`
}

func findJSON(found []*props.Material, s units.System) string {
	out := []foundMaterial{}
	for _, m := range found {
		f := foundMaterial{m.ID, m.Name(), m.Alloy.Family.ID, m.Alloy.Name, m.Temper, m.Process.ID(), []foundFigure{}}
		for _, id := range keyFigures {
			if fig, q := keyFigure(m, id, s); fig != nil {
				f.Figures = append(f.Figures, foundFigure{id.String(), q.Unit.Symbol(), report.Quiet(q.Lo), report.Quiet(q.Hi), fig.Basis.String(), fig.Known().String()})
			}
		}
		out = append(out, f)
	}
	text, err := json.MarshalIndent(out, "", "  ")
	if err != nil { // texts and finite numbers only
		panic(err)
	}
	return string(text) + "\n"
}
