package panel

import (
	"strings"
	"time"

	"alongside/props/call"
	"alongside/props/compare"
	"alongside/props/report"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// prompt asks for one value. A text that cannot be used is kept in the field
// with the reason under it.
type prompt struct {
	panel
	title  string
	accept func(string) error
	edits  bool // the text is to be changed, the next letter does not replace it
}

func newPrompt(d *desk.Desk, title, about, text string, accept func(string) error) *prompt {
	return &prompt{panel: panel{desk: d, about: about, typing: true, field: ui.NewField(text)}, title: title, accept: accept}
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
		p.desk.Close()
	}
}

func (p *prompt) View(w, _ int) []string {
	lines := append([]string{""}, p.desk.Theme.Text.Wrap(p.about, w, 1)...)
	lines = append(lines, "", " > "+p.field.View(p.desk.Theme, w-4), "")
	return append(lines, p.problemLines(w)...)
}

// NewBand asks how close two figures count as level.
func NewBand(d *desk.Desk) desk.Screen {
	return newPrompt(d, "Level within",
		"How close to the baseline counts as level, in percent of the baseline's figure. Temperatures and ratings are level only within their own rounding.",
		report.BandText(d.Now().Bench.Band), func(s string) error {
			band, err := report.ParseBand(s)
			if err == nil {
				d.Change(func(b *compare.Bench) { b.Band = band })
				d.Sayf("level within %s", report.BandText(band))
			}
			return err
		})
}

// NewService asks for the temperature at which strength is compared.
func NewService(d *desk.Desk) desk.Screen {
	return newPrompt(d, "Service temperature",
		"Strength and elongation are then compared at this temperature: figures published there, or interpolated between two published temperatures of one source. Empty: room temperature.",
		report.ServiceText(&d.Now().Bench), func(s string) error {
			at, err := report.ParseService(s, d.Now().Bench.System)
			if err == nil {
				d.Change(func(b *compare.Bench) { b.Service = at })
				d.Say("strength and elongation at " + ui.Or(report.ServiceText(&d.Now().Bench), "room temperature"))
			}
			return err
		})
}

// NewRange asks for the temperatures between which expansion is compared.
func NewRange(d *desk.Desk) desk.Screen {
	return newPrompt(d, "Temperature range for expansion",
		"Mean expansion is then worked out for this range from the published ranges, never beyond them, such as 68–300 °F. Empty: each figure over its own published range.",
		report.RangeText(&d.Now().Bench), func(s string) error {
			over, err := report.ParseRange(s, d.Now().Bench.System)
			if err == nil {
				d.Change(func(b *compare.Bench) { b.Range = over })
				d.Say("expansion over " + ui.Or(report.RangeText(&d.Now().Bench), "the ranges as published"))
			}
			return err
		})
}

// NewName asks for the name of the call.
func NewName(d *desk.Desk) desk.Screen {
	return newPrompt(d, "Name of the call", "Under this name the call is found again.", d.Now().Name, func(s string) error {
		d.ChangeCall(func(c *call.Call) { c.Name = strings.TrimSpace(s) })
		return nil
	})
}

// NewSaid takes a line as the customer said it.
func NewSaid(d *desk.Desk) desk.Screen {
	return newPrompt(d, "The customer's words", "A line as the customer said it. "+strings.Join(d.Now().Said, " / "), "", func(s string) error {
		if s = strings.TrimSpace(s); s != "" {
			d.ChangeCall(func(c *call.Call) { c.Said = append(c.Said, s) })
		}
		return nil
	})
}

// NewNote takes a note.
func NewNote(d *desk.Desk) desk.Screen {
	about := "Kept with the time."
	for _, n := range d.Now().Notes {
		about += " " + n.At.Local().Format("15:04") + " " + n.Text + "."
	}
	return newPrompt(d, "Note", about, "", func(s string) error {
		if s = strings.TrimSpace(s); s != "" {
			d.ChangeCall(func(c *call.Call) { c.Notes = append(c.Notes, call.NewNote(time.Now(), s)) })
		}
		return nil
	})
}
