package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/compare"
	"alongside/props/report"
	"alongside/tui/ui"
)

// prompt asks for one value. A text that cannot be used is kept in the field
// with the reason under it.
type prompt struct {
	m       *Model
	title   string
	about   string
	field   ui.Field
	problem string
	accept  func(string) error
}

func (p *prompt) Title() string { return p.title }
func (p *prompt) Typing() bool  { return true }

func (p *prompt) Height(int, int) int { return 9 }

func (p *prompt) Keys() ui.Keys {
	return ui.Keys{ui.On("enter", "take it", "take what is typed", p.take)}
}

func (p *prompt) take() {
	if err := p.accept(p.field.Text()); err != nil {
		p.problem = err.Error()
	} else {
		p.m.close()
	}
}

func (p *prompt) Update(msg tea.Msg) tea.Cmd {
	if k, ok := msg.(tea.KeyMsg); ok {
		p.field.Update(k)
	}
	return nil
}

func (p *prompt) View(w, _ int) []string {
	lines := []string{""}
	for _, l := range ui.Wrap(p.about, w-2) {
		lines = append(lines, " "+l)
	}
	lines = append(lines, "", " > "+p.field.View(p.m.theme, w-4), "")
	for _, l := range ui.Wrap(p.problem, w-2) {
		lines = append(lines, " "+p.m.theme.Bad.Of(l))
	}
	return lines
}

// newBand asks how close two figures count as level.
func newBand(m *Model) screen {
	return &prompt{
		m: m, title: "Level within",
		about: "How close to the baseline counts as level, in percent of the baseline's figure. Temperatures and ratings are level only within their own rounding.",
		field: ui.NewField(report.BandText(m.now().Bench.Band)),
		accept: func(s string) error {
			band, err := report.ParseBand(s)
			if err == nil {
				m.change(func(b *compare.Bench) { b.Band = band })
				m.sayf("level within %s", report.BandText(band))
			}
			return err
		},
	}
}

// newService asks for the temperature at which strength is compared.
func newService(m *Model) screen {
	return &prompt{
		m: m, title: "Service temperature",
		about: "Strength and elongation are then compared at this temperature: figures published there, or interpolated between two published temperatures of one source. Empty: room temperature.",
		field: ui.NewField(report.ServiceText(&m.now().Bench)),
		accept: func(s string) error {
			at, err := report.ParseService(s, m.now().Bench.System)
			if err == nil {
				m.change(func(b *compare.Bench) { b.Service = at })
				m.say("strength and elongation at " + ui.Or(report.ServiceText(&m.now().Bench), "room temperature"))
			}
			return err
		},
	}
}

// newRange asks for the temperatures between which expansion is compared.
func newRange(m *Model) screen {
	return &prompt{
		m: m, title: "Temperature range for expansion",
		about: "Mean expansion is then worked out for this range from the published ranges, never beyond them, such as 68–300 °F. Empty: each figure over its own published range.",
		field: ui.NewField(report.RangeText(&m.now().Bench)),
		accept: func(s string) error {
			over, err := report.ParseRange(s, m.now().Bench.System)
			if err == nil {
				m.change(func(b *compare.Bench) { b.Range = over })
				m.say("expansion over " + ui.Or(report.RangeText(&m.now().Bench), "the ranges as published"))
			}
			return err
		},
	}
}
