package tui

import (
	"fmt"
	"strings"

	"alongside/props/compare"
	"alongside/props/report"
	"alongside/tui/ui"
	"alongside/units"
)

// settings are how the bench is looked at: what departs from the usual, in full
// and in short, what changes the figures first; and what is as usual.
func (m *Model) settings() (full, short, usual []string) {
	b := &m.Now().Bench
	if m.Invented != "" {
		full, short = []string{"DEMO, invented"}, []string{"DEMO, invented"}
	}
	departs := func(unusual bool, long, brief string) {
		if unusual {
			full, short = append(full, long), append(short, brief)
		} else if long != "" {
			usual = append(usual, long)
		}
	}
	if b.Service != nil {
		departs(true, "at "+report.ServiceText(b), "at "+report.ServiceText(b))
	}
	if b.Basis == compare.MinimumOnly {
		departs(true, "minimums only", "minimums")
	}
	rows := filterWords(b)
	if rows != allRows {
		departs(true, rows, shortFilter(b))
	}
	if b.Range != nil {
		departs(true, "expansion "+report.RangeText(b), "exp. "+report.RangeText(b))
	}
	if b.Band != compare.DefaultBand {
		departs(true, "level within "+report.BandText(b.Band), "level "+report.BandText(b.Band))
	}
	if n := len(b.Senses); n > 0 {
		its := map[bool]string{true: "its own", false: "their own"}[n == 1]
		departs(true, ui.Plural(n, "row")+" with a sense of "+its, ui.Plural(n, "own sense"))
	}
	departs(b.System != units.US || len(b.RowUnits) > 0, unitsWords(b), unitsWords(b))
	if n := len(m.Now().NeedsOn()); n > 0 {
		departs(true, ui.Plural(n, "need"), ui.Plural(n, "need"))
	}
	if b.Basis == compare.TypicalFirst {
		departs(false, "typical first", "")
	}
	delta := "delta " + deltaWord(b.Delta)
	departs(b.Delta != compare.Percent, delta, delta)
	if rows == allRows {
		departs(false, allRows, "")
	}
	departs(false, ui.Plural(len(b.Pins), "pin"), "")
	return full, short, usual
}

const dot = " · "

// titleLine says how the bench is looked at: what departs from the usual first
// and at any cost, then what is as usual as far as there is room. Watch-outs
// give way only at the end.
func (m *Model) titleLine() string {
	full, short, usual := m.settings()
	watch, brief := m.WatchWords()
	text, room := "", 0
	for _, try := range [][2]string{{strings.Join(full, dot), watch}, {strings.Join(full, dot), brief}, {strings.Join(short, dot), brief}, {strings.Join(short, dot), ""}} {
		text, watch, room = try[0], try[1], m.width-1
		if watch != "" {
			room -= ui.Width(watch) + 3
		}
		if ui.Width(text) <= room {
			break
		}
	}
	for _, u := range usual {
		if next := strings.TrimPrefix(text+dot+u, dot); ui.Width(next) <= room {
			text = next
		}
	}
	return m.Theme.Dim.Of(" "+ui.Pad(text, room)) + ui.Blanks(m.width-1-room-ui.Width(watch)) + m.Theme.Strong.Of(watch)
}

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
	words := allRows
	switch {
	case b.HideLevel && b.HideEmpty:
		words = "rows level or with nothing to compare hidden"
	case b.HideLevel:
		words = "level rows hidden"
	case b.HideEmpty:
		words = "rows with nothing to compare hidden"
	}
	if len(b.Only) > 0 {
		return strings.TrimSuffix("chosen rows; "+words, "; "+allRows)
	}
	return words
}

func shortFilter(b *compare.Bench) string {
	if !b.HideEmpty && (b.HideLevel || len(b.Only) > 0) {
		return filterWords(b)
	}
	return "some rows hidden"
}

const allRows = "all rows"
