package tui

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/call"
	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/report"
	"alongside/tui/panel"
	"alongside/tui/ui"
	"alongside/units"
)

func (m *Model) setBaseline() {
	i := m.CursorIndex()
	if i < 0 || i == m.Now().Bench.Baseline {
		m.Warn("this is the baseline already; go to another pin with ← →")
		return
	}
	m.Change(func(b *compare.Bench) { b.Baseline = i })
	m.Sayf("baseline: %s", m.Pins()[i].Name())
}

func (m *Model) removePin() {
	pin, i := m.CursorPin(), m.CursorIndex()
	if pin == nil || m.InBurst() {
		return
	}
	m.Change(func(b *compare.Bench) { b.Remove(i) })
	m.Sayf("removed %s; %s brings it back", pin.Name(), m.Label("u"))
}

func (m *Model) flipTemper(d catalog.Direction) {
	m.flip(d, m.Catalog.NextTemper, "temper by this process", "temper")
}

func (m *Model) flipProcess(d catalog.Direction) {
	m.flip(d, m.Catalog.NextProcess, "process", "process")
}

func (m *Model) flipAlloy(d catalog.Direction) {
	m.flip(d, m.Catalog.NextAlloy, "alloy of the family by this process", "")
}

// flip puts the next variant that is not on the bench yet in the place of the
// pin. Where there are more than two of them a menu asks, if they have a name for it.
func (m *Model) flip(d catalog.Direction, next func(*props.Material, catalog.Direction) *props.Material, what, menu string) {
	pin := m.CursorPin()
	all := []*props.Material{pin}
	for v := next(pin, d); !slices.Contains(all, v); v = next(v, d) {
		all = append(all, v)
	}
	free := slices.DeleteFunc(slices.Clone(all), func(v *props.Material) bool { return slices.Contains(m.Pins(), v) })
	switch {
	case menu != "" && len(free) > 2:
		m.Open(panel.NewVariants(m.Desk, "Another "+menu+" for "+pin.Name(), all, d))
	case len(free) > 0:
		m.Replace(free[0])
	case len(all) > 1:
		m.Warnf("%s: every other %s is on the bench already", pin.Name(), what)
	default:
		m.Warnf("%s: no other %s in the catalog", pin.Name(), what)
	}
}

// movePin shifts the pin under the cursor by one place as displayed. The
// baseline always stands at the left.
func (m *Model) movePin(d catalog.Direction) {
	to := m.Col + int(d)
	switch {
	case m.Col == 0:
		m.Warnf("the baseline stays at the left; %s on another pin makes that the baseline", m.Label("b"))
		return
	case to < 1 || to >= len(m.Pins()):
		m.Warn("no place further that way")
		return
	}
	i := m.CursorIndex()
	m.Change(func(b *compare.Bench) {
		for {
			crossed := i+int(d) == b.Baseline
			i = b.Move(i, int(d))
			if !crossed {
				return
			}
		}
	})
}

// nextSystem goes some systems of units on; two on is one back.
func (m *Model) nextSystem(by units.System) {
	m.Change(func(b *compare.Bench) { b.System = (b.System + by) % (units.CGS + 1) })
	s := systemName(m.Now().Bench.System) + " units"
	if n := len(m.Now().Bench.RowUnits); n > 0 {
		s += "; " + ui.Plural(n, "row") + " with a unit of their own stay"
	}
	m.Say(s)
}

func (m *Model) nextRowUnit() {
	row := m.CursorRow()
	if m.OwnRow() || row == nil {
		return
	}
	list := report.RowUnits(row)
	if len(list) < 2 {
		m.Warnf("%s has one unit only", row.Property.Info().Name)
		return
	}
	at := slices.Index(list, row.Unit)
	u := list[(at+1)%len(list)]
	m.Change(func(b *compare.Bench) { setRowUnit(b, row.Property, u) })
	names := make([]string, len(list))
	for i, v := range list {
		names[i] = v.Symbol()
		if v == u {
			names[i] = "[" + names[i] + "]"
		}
	}
	m.Say(strings.Join(names, "  "))
}

// setRowUnit gives a row its own unit, or takes it back where that is the one
// of the system.
func setRowUnit(b *compare.Bench, p props.PropertyID, u units.Unit) {
	delete(b.RowUnits, p)
	if b.UnitOf(p) != u {
		b.RowUnits[p] = u
	}
}

func (m *Model) resetRowUnit() {
	if m.OwnRow() {
		return
	}
	p := m.CursorProperty()
	if !m.Change(func(b *compare.Bench) { delete(b.RowUnits, p) }) {
		m.Warnf("%s has the unit of the system already", p.Info().Name)
	}
}

// nextDelta goes some ways of telling a difference on; three on is one back.
func (m *Model) nextDelta(by int) {
	m.Change(func(b *compare.Bench) {
		for range by {
			b.Delta = b.Delta.Next()
		}
	})
	m.Sayf("delta: %s", m.Now().Bench.Delta)
}

func (m *Model) nextBasis() {
	words := "typical figures first, else the next basis that both share"
	m.Change(func(b *compare.Bench) {
		if b.Basis == compare.MinimumOnly {
			b.Basis = compare.TypicalFirst
		} else {
			b.Basis, words = compare.MinimumOnly, "specified minimums only, for what standards specify"
		}
	})
	m.Say(words)
}

// nextFilter hides rows with nothing to compare, then level ones, then both, then
// none. Where the user has chosen rows, all of them follow, and then those again.
func (m *Model) nextFilter() {
	m.Change(func(b *compare.Bench) {
		b.HideEmpty, b.HideLevel = !b.HideEmpty, b.HideEmpty != b.HideLevel
		if round := !b.HideEmpty && !b.HideLevel; round && len(b.Only) > 0 {
			b.Only = nil
		} else if round {
			b.Only = slices.Clone(m.Settings.Bench.Only)
		}
	})
	m.Sayf("%s (%s shown)", filterWords(&m.Now().Bench), ui.Plural(len(m.Table.Lines), "row"))
}

// paste takes a text on the bench: materials are pinned; a sentence is read as the
// needs and the part.
func (m *Model) paste(text string) {
	if m.NamesMaterials(text) || !panel.TakeSaid(m.Desk, text) {
		m.PasteMaterials(text)
	}
}

// usualNeeds are the properties asked for where no other pin says which ones
// matter.
var usualNeeds = []props.PropertyID{
	props.TensileStrength, props.YieldStrength, props.Elongation, props.ElasticModulus, props.Density,
	props.ThermalConductivity, props.ElectricalConductivity,
}

// betterThanBaseline sets needs that beat or equal the baseline on the rows
// that are shown, have a better and worse, and on which another pin has a
// figure too.
func (m *Model) betterThanBaseline() {
	var rows []props.PropertyID
	base := m.Baseline()
	for i := range m.Table.Lines {
		l := &m.Table.Lines[i]
		other := len(m.Pins()) == 1 && slices.Contains(usualNeeds, l.Property)
		for _, pin := range m.Pins() {
			other = other || pin != base && len(pin.Figures(l.Property)) > 0
		}
		if g := l.Group; other && l.OfProperty() && (g == props.Mechanical || g == props.Elastic || g == props.Physical) {
			rows = append(rows, l.Property)
		}
	}
	list := needs.BetterThan(&m.Now().Bench, base, rows)
	if len(list) == 0 {
		m.Warnf("%s has no figure with a better and worse on these rows", base.Name())
		return
	}
	m.ChangeCall(func(c *call.Call) { c.Needs = list })
	m.Sayf("%s: beat or equal %s; %s edits them, %s shows what does, %s takes them back", ui.Plural(len(list), "need"), base.Name(), m.Label("2"), m.Label("3"), m.Label("u"))
}

// quit ends the program.
func (m *Model) quit() tea.Cmd {
	if !m.MayQuit() {
		return nil
	}
	return tea.Quit
}

// interrupt quits as quit does; the program tells by its exit code.
func (m *Model) interrupt() tea.Cmd {
	if !m.MayQuit() {
		return nil
	}
	return tea.Interrupt
}
