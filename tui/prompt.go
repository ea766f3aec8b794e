package tui

import (
	"alongside/props/compare"
	"alongside/props/report"
	"alongside/tui/ui"
)

// prompt asks for one value. A text that cannot be used is kept in the field
// with the reason under it.
type prompt struct {
	panel
	title, about string
	accept       func(string) error
	edits        bool // the text is to be changed, the next letter does not replace it
}

func newPrompt(m *Model, title, about, text string, accept func(string) error) *prompt {
	return &prompt{panel: panel{m: m, typing: true, field: ui.NewField(text)}, title: title, about: about, accept: accept}
}

func (p *prompt) Title() string       { return p.title }
func (p *prompt) Height(int, int) int { return 9 }

func (p *prompt) Keys() ui.Keys {
	return ui.Keys{ui.On("enter", "take it", "take what is typed", p.take)}
}

func (p *prompt) take() {
	if err := p.accept(p.field.Text()); err != nil {
		p.problem = err.Error()
		if !p.edits {
			p.field.Keep()
		}
	} else {
		p.m.close()
	}
}

func (p *prompt) View(w, _ int) []string {
	lines := append([]string{""}, p.m.theme.Text.Wrap(p.about, w, 1)...)
	lines = append(lines, "", " > "+p.field.View(p.m.theme, w-4), "")
	return append(lines, p.problemLines(w)...)
}

// newBand asks how close two figures count as level.
func newBand(m *Model) screen {
	return newPrompt(m, "Level within",
		"How close to the baseline counts as level, in percent of the baseline's figure. Temperatures and ratings are level only within their own rounding.",
		report.BandText(m.now().Bench.Band), func(s string) error {
			band, err := report.ParseBand(s)
			if err == nil {
				m.change(func(b *compare.Bench) { b.Band = band })
				m.sayf("level within %s", report.BandText(band))
			}
			return err
		})
}

// newService asks for the temperature at which strength is compared.
func newService(m *Model) screen {
	return newPrompt(m, "Service temperature",
		"Strength and elongation are then compared at this temperature: figures published there, or interpolated between two published temperatures of one source. Empty: room temperature.",
		report.ServiceText(&m.now().Bench), func(s string) error {
			at, err := report.ParseService(s, m.now().Bench.System)
			if err == nil {
				m.change(func(b *compare.Bench) { b.Service = at })
				m.say("strength and elongation at " + ui.Or(report.ServiceText(&m.now().Bench), "room temperature"))
			}
			return err
		})
}

// newRange asks for the temperatures between which expansion is compared.
func newRange(m *Model) screen {
	return newPrompt(m, "Temperature range for expansion",
		"Mean expansion is then worked out for this range from the published ranges, never beyond them, such as 68–300 °F. Empty: each figure over its own published range.",
		report.RangeText(&m.now().Bench), func(s string) error {
			over, err := report.ParseRange(s, m.now().Bench.System)
			if err == nil {
				m.change(func(b *compare.Bench) { b.Range = over })
				m.say("expansion over " + ui.Or(report.RangeText(&m.now().Bench), "the ranges as published"))
			}
			return err
		})
}
