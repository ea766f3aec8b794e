package bench

import (
	"strings"

	"alongside/props/compare"
	"alongside/props/report"
	"alongside/tui/ui"
)

// writeCell writes a cell as text, mark, change and sign with the blanks between
// them; under the cursor with a blank more on either side.
func (g *Grid) writeCell(b *strings.Builder, i, row int, cursor bool) {
	c, cell, t := &g.Columns[i], g.cell(row, i+labels), g.theme
	value, delta, end := text(cell), change(cell), c.value
	if delta != "" {
		end = min(end, c.inner-c.mark-1-ui.Width(delta))
	}
	if ui.Width(value) > c.inner-c.mark {
		value = ui.Cut(ui.Or(cell.Short, value), c.inner-c.mark)
	}
	end = max(end, ui.Width(value))
	before, after := ui.Blanks(end-ui.Width(value)), ui.Blanks(c.mark-ui.Width(cell.Mark))
	between, sign := ui.Blanks(c.inner-end-c.mark-ui.Width(delta)), signOf(cell)
	rest := ui.Blanks(c.sign - ui.Width(sign))
	switch {
	case cursor && t.Plain:
		ui.Ink{}.Write(b, "[", before, value, cell.Mark, after, between, delta, sign, rest, "]")
		return
	case cursor:
		t.Cursor.Write(b, " ", before, value, cell.Mark, after, between, delta, sign, rest, " ")
		return
	}
	body, verdict := t.Text, signInk(t, cell.Sign)
	switch {
	case cell.Text == "" || cell.Text == none || cell.Short != "":
		body, verdict = t.Dim, t.Dim
	case i == 0:
		body, verdict = t.Strong, t.Strong
	}
	body.Write(b, before, value)
	t.Dim.Write(b, cell.Mark, after)
	verdict.Write(b, between, delta, sign, rest)
}

func (g *Grid) label(row int, picked bool) string {
	r, t, l := &g.table.Rows[row], g.theme, &g.Labels
	name, room, rest := g.name(r), l.name, ""
	if wide(r) {
		room = l.Width - 1
	} else {
		rest = ui.Blanks(l.gap) + ui.Pad(r.Cells[1].Text, l.sense) + " " + ui.Pad(ui.Plain(r.Cells[2].Text), l.unit)
	}
	name = ui.Cut(name, room)
	blanks := ui.Blanks(room - ui.Width(name))
	if !picked {
		return " " + t.Text.Of(name+blanks) + t.Dim.Of(rest)
	}
	mark := " "
	if t.Plain {
		mark = ">"
	}
	return mark + t.Heading.Of(name) + blanks + t.Text.Of(rest)
}

// Row is a row of the table with the columns from one on beside the first; with
// the cursor in a column, -1 for none.
func (g *Grid) Row(row, first, cursor int) string {
	if g.joined == nil || g.from != first {
		g.from, g.joined = first, make([]string, len(g.table.Rows))
	}
	if s := g.joined[row]; s != "" && cursor < 0 {
		return s
	}
	var b strings.Builder
	b.Grow(2 * g.width)
	b.WriteString(g.label(row, cursor >= 0))
	after := 0 // 1 where the cursor's cell has drawn the blank behind it
	last := min(first+g.Fit(first), len(g.table.Rows[row].Cells)-labels) - 1
	done := false
	g.Each(first, func(i, x int) {
		c, words, room := &g.Columns[i], g.cell(row, i+labels), g.width-x-g.Gap-1
		gap := ui.Blanks(g.Gap - after)
		switch {
		case done:
			return
		case i == last && words.Change == "" && words.Sign == "" && ui.Width(text(words)) > c.inner-c.mark && room > c.inner:
			// Words at the end of a row run on as far as there is room.
			b.WriteString(gap + g.theme.Dim.Of(ui.Cut(text(words), room)))
			done = true
		case i == cursor:
			b.WriteString(gap[1:])
			g.writeCell(&b, i, row, true)
			after = 1
		default:
			b.WriteString(gap)
			g.writeCell(&b, i, row, false)
			after = 0
		}
	})
	s := g.clip(b.String(), first)
	if cursor < 0 {
		g.joined[row] = s
	}
	return s
}

// clip cuts a line where even one column beside the first is too wide.
func (g *Grid) clip(s string, first int) string {
	if first < len(g.Columns) && g.Room() < g.Columns[first].Width {
		return ui.Cut(s, g.width)
	}
	return s
}

// Heads are the lines above the table, the column of the cursor marked.
func (g *Grid) Heads(first, cursor int) []string {
	t, label := g.theme, g.table.Columns[0].Head
	lines := make([]string, len(label))
	for k := range label {
		s := t.Dim.Of(" " + ui.Pad(label[k], g.Labels.Width-1))
		g.Each(first, func(i, _ int) {
			ink, mark := t.Text, ui.Blanks(g.Gap)
			switch {
			case i == cursor && k == 0:
				ink = t.Heading
				if t.Plain {
					mark = ui.Blanks(g.Gap-1) + ">"
				}
			case i == 0:
				ink = t.Strong
			}
			room := g.Columns[i].Width - g.Gap
			name := ui.Cut(ui.Plain(g.table.Columns[i+labels].Head[k]), room)
			s += mark + ink.Of(name) + ui.Blanks(room-ui.Width(name))
		})
		lines[k] = g.clip(s, first)
	}
	return lines
}

// Totals is the line below the table, its counts colored by their signs.
func (g *Grid) Totals(first int) string {
	s := g.theme.Dim.Of(" " + ui.Pad(g.table.Columns[0].Name, g.Labels.Width-1))
	g.Each(first, func(i, _ int) {
		text := total(g.table.Columns[i+labels])
		counts := strings.Split(text, " ")
		for k, count := range counts {
			counts[k] = signInk(g.theme, count).Of(count)
		}
		s += ui.Blanks(g.Gap) + strings.Join(counts, " ") + ui.Blanks(g.Columns[i].Width-g.Gap-ui.Width(text))
	})
	return g.clip(s, first)
}

// signInk is the color of a verdict by its sign, which says the same without
// color.
func signInk(t *ui.Theme, sign string) ui.Ink {
	is := func(v compare.Verdict) bool { return strings.HasPrefix(sign, report.Glyph(v)) }
	switch {
	case is(compare.Beats):
		return t.Blue
	case is(compare.Misses):
		return t.Orange
	case is(compare.Overlaps):
		return t.Violet
	case is(compare.Level):
		return t.Text
	}
	return t.Dim
}
