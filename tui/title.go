package tui

import (
	"fmt"
	"strings"

	"alongside/props/compare"
	"alongside/props/report"
	"alongside/tui/ui"
	"alongside/units"
)

// setting is something the title tells of how the bench is looked at, in full
// and in short.
type setting struct{ full, short string }

// settings are what departs from the usual, what changes the figures first,
// and what is as usual.
func (m *Model) settings() (departs, usual []setting) {
	b := &m.now().Bench
	add := func(unusual bool, full, short string) {
		list := &usual
		if unusual {
			list = &departs
		}
		*list = append(*list, setting{full, short})
	}
	if b.Service != nil {
		add(true, "at "+report.ServiceText(b), "at "+report.ServiceText(b))
	}
	if b.Basis == compare.MinimumOnly {
		add(true, "minimums only", "minimums")
	}
	if b.HideLevel || b.HideEmpty {
		add(true, filterWords(b), shortFilter(b))
	}
	if b.Range != nil {
		add(true, "expansion "+report.RangeText(b), "exp. "+report.RangeText(b))
	}
	if b.Band != compare.DefaultBand {
		add(true, "level within "+report.BandText(b.Band), "level "+report.BandText(b.Band))
	}
	if n := len(b.Senses); n > 0 {
		add(true, ui.Plural(n, "row")+" with a sense of "+its(n), ui.Plural(n, "own sense"))
	}
	add(b.System != units.US || len(b.RowUnits) > 0, unitsWords(b), unitsWords(b))
	if n := m.needsOn(); n > 0 {
		add(true, ui.Plural(n, "need"), ui.Plural(n, "need"))
	}
	if b.Basis == compare.TypicalFirst {
		add(false, "typical first", "typical first")
	}
	add(b.Delta != compare.Percent, "delta "+deltaWord(b.Delta), "delta "+deltaWord(b.Delta))
	if !b.HideLevel && !b.HideEmpty {
		add(false, allRows, allRows)
	}
	add(false, ui.Plural(len(b.Pins), "pin"), ui.Plural(len(b.Pins), "pin"))
	return departs, usual
}

func its(n int) string {
	if n == 1 {
		return "its own"
	}
	return "their own"
}

// titleLine says how the bench is looked at: what departs from the usual first
// and at any cost, then what is as usual as far as there is room.
func (m *Model) titleLine() string {
	const name = " Alongside"
	departs, usual := m.settings()
	texts := func(short bool) string {
		var parts []string
		for _, d := range departs {
			if short {
				parts = append(parts, d.short)
			} else {
				parts = append(parts, d.full)
			}
		}
		return strings.Join(parts, dot)
	}
	full, short := m.watchWords()
	// What to give up for the departures, the least missed first.
	for _, try := range []struct{ name, text, watch string }{
		{name, texts(false), full}, {name, texts(false), short}, {name, texts(true), full}, {name, texts(true), short},
		{"", texts(true), short}, {"", texts(true), ""},
	} {
		room := m.width - ui.Width(try.name) - 2
		if try.watch != "" {
			room -= ui.Width(try.watch) + 3
		}
		if ui.Width(try.text) > room && (try.name != "" || try.watch != "") {
			continue
		}
		for _, u := range usual {
			if next := strings.TrimPrefix(try.text+dot+u.full, dot); ui.Width(next) <= room {
				try.text = next
			}
		}
		lead := "  "
		if try.name == "" {
			lead = " "
		}
		if try.watch == "" {
			return m.theme.Strong.Of(try.name) + m.theme.Dim.Of(lead+ui.Cut(try.text, room))
		}
		return m.theme.Strong.Of(try.name) + m.theme.Dim.Of(lead+ui.Pad(try.text, room)) + "  " + m.theme.Strong.Of(try.watch)
	}
	return ""
}

const dot = " · "

func unitsWords(b *compare.Bench) string {
	s := systemName(b.System) + " units"
	if n := len(b.RowUnits); n > 0 {
		s += fmt.Sprintf(" (%s own)", ui.Plural(n, "row"))
	}
	return s
}

func systemName(s units.System) string { return strings.ToUpper(s.String()) }

func deltaWord(d compare.DeltaMode) string {
	if d == compare.Percent {
		return "%"
	}
	return d.String()
}

// filterWords says which rows are left out. A row has nothing to compare when
// fewer than two pins have a figure.
func filterWords(b *compare.Bench) string {
	switch {
	case b.HideLevel && b.HideEmpty:
		return "rows level or with nothing to compare hidden"
	case b.HideLevel:
		return "level rows hidden"
	case b.HideEmpty:
		return "rows with nothing to compare hidden"
	}
	return allRows
}

func shortFilter(b *compare.Bench) string {
	if b.HideLevel && !b.HideEmpty {
		return filterWords(b)
	}
	return "some rows hidden"
}

const allRows = "all rows"
