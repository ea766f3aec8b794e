package panel

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/call"
	"alongside/props/report"
	"alongside/props/watch"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// watchPanel lists what to ask about before the pin under the cursor takes the
// place of the baseline.
type watchPanel struct{ panel }

// NewWatch opens the watch-outs.
func NewWatch(d *desk.Desk) desk.Screen {
	switch {
	case d.Watch == nil:
		d.Warn("there are no watch-out rules here")
		return nil
	case len(d.Pins()) < 2:
		d.Warn(twoPinsNeeded)
		return nil
	}
	d.Rules = d.Watch()
	return &watchPanel{panel{desk: d, digit: "6", about: "Lists what to ask or settle before the metal is changed, with what raised it."}}
}

func (p *watchPanel) some() bool { return p.pin() != nil }

// pin is the cautions for the pin under the cursor; nil where undo took it away.
func (p *watchPanel) pin() *report.Watched { return p.desk.Watched(max(p.desk.Col, 1)) }

// caution is the one under the cursor; nil where there is none.
func (p *watchPanel) caution() *watch.Caution {
	if list := p.pin().Cautions; p.list.At < len(list) {
		return &list[p.list.At]
	}
	return nil
}

func (p *watchPanel) Title() string {
	if !p.some() {
		return "Watch-outs"
	}
	s := "Watch-outs: " + p.pin().Title()
	if n := len(p.desk.Pins()) - 1; n > 1 {
		s += fmt.Sprintf(" · pin %d of %d", max(p.desk.Col, 1), n)
	}
	return s
}

func (p *watchPanel) Height(_, most int) int {
	if !p.some() {
		return 3
	}
	n := 0 // the same for every pin: the bench above must not jump
	for _, w := range p.desk.AllWatched() {
		n = max(n, len(w.Cautions))
	}
	return min(most, n+watchHead+watchFoot+1)
}

func (p *watchPanel) Keys() ui.Keys {
	d := p.desk
	bench := d.BenchKeys("u", "ctrl+r", "s", "m")
	if !p.some() {
		return bench
	}
	bench[2].Line, bench[3].Line = "", ""
	return slices.Concat(ui.Keys{
		ui.On("f i +", "conditions", "what the part has and goes through", func() { d.Open(NewFacts(d)) }),
		ui.On("e", "part", "the part: temperatures, mate", func() { d.Open(NewPart(d)) }),
		ui.On("d x space", "put aside", "put this one aside, bring it back", p.dismiss),
		ui.On("enter o", "figures", "what raised it: figures and sources", p.card),
		ui.Send("y", "copy", "copy the watch-outs of all pins", func() tea.Cmd { return d.CopyDoc(report.WatchDoc(d.AllWatched()...), "watch-outs") }),
		ui.Send("Y", "", "copy those of this pin", func() tea.Cmd {
			return d.CopyDoc(report.WatchDoc(*p.pin()), "watch-outs of "+p.pin().Pin.Name())
		}),
	}, d.PinKeys(true), bench, p.list.Keys())
}

// card shows what raised the caution under the cursor.
func (p *watchPanel) card() {
	if c := p.caution(); c != nil {
		p.desk.Open(newCardPages(p.desk, "", "", report.NewCautionCard(c)))
	}
}

// dismiss puts the caution under the cursor aside, for every pin, or brings it
// back.
func (p *watchPanel) dismiss() {
	c := p.caution()
	if c == nil {
		return
	}
	id, title, aside := c.ID, c.Title, !c.Dismissed
	p.desk.ChangeCall(func(c *call.Call) {
		c.Aside = slices.DeleteFunc(c.Aside, func(s string) bool { return s == id })
		if aside {
			c.Aside = append(c.Aside, id)
		}
	})
	if aside {
		p.desk.Say("put aside, listed at the end; d on it brings it back: " + title)
	} else {
		p.desk.Say("brought back: " + title)
	}
}

const (
	watchHead = 2 // counts, the part
	watchFoot = 7 // at most: a blank line, the caution under the cursor in words
)

func (p *watchPanel) View(w, h int) []string {
	if !p.some() {
		return []string{" " + ui.Cut(twoPinsNeeded, w-2)}
	}
	t, list := p.desk.Theme, p.pin().Cautions
	p.list.At = ui.Clamp(p.list.At, 0, len(list)-1)
	s := " " + report.WatchCount(list)
	if n := len(list); n > 0 {
		s += fmt.Sprintf("  (%d of %d)", p.list.At+1, n)
	}
	head := []string{t.Strong.Of(ui.Cut(s, w)), t.Dim.Of(ui.Cut(" "+p.partText(), w))}
	if len(list) == 0 {
		head = append(head, t.Dim.Of(ui.Cut(" No rule is raised. That does not mean that nothing can go wrong.", w)))
	}
	most := ui.Clamp(h*2/5+1, 3, watchFoot)
	return p.list.Draw(ui.Listing{
		Head: head, Items: len(list),
		Line: func(i int, here bool) string { return p.line(&list[i], here, w) },
		Foot: func() []string { return ui.Fill(ui.Few(p.words(w), most, w), most) },
	}, h)
}

// partText is what the rules know of the part.
func (p *watchPanel) partText() string {
	now := &p.desk.Now().Part
	var parts []string
	if now.With != 0 {
		parts = append(parts, now.With.String())
	}
	if now.Service != "" {
		parts = append(parts, now.Service)
	}
	if now.Medium != "" {
		parts = append(parts, "in "+now.Medium)
	}
	if now.Mate != "" {
		parts = append(parts, "mate "+now.Mate)
	}
	if len(parts) == 0 {
		return "Nothing is said of the part: f its conditions, e its temperatures and mate."
	}
	return "The part: " + ui.Plain(strings.Join(parts, "; "))
}

// line is a caution after the sign of its state.
func (p *watchPanel) line(c *watch.Caution, here bool, w int) string {
	t, text := p.desk.Theme, ui.Plain(c.Title)
	sign, signInk, ink := "check", t.Dim, t.Text
	switch {
	case c.Dismissed:
		sign, ink = "aside", t.Dim
	case c.Unchecked != "":
		sign, ink = "?", t.Dim
		text += ": not checked, " + ui.Plain(c.Unchecked)
	case c.Severity == watch.Ask:
		sign, signInk = "STOP", t.Bad
	}
	sign, text = " "+ui.Pad(sign, 5), ui.Cut(text, w-9)
	if here {
		return t.Line(ui.Pad(sign+"  "+text, w), true, ink)
	}
	return signInk.Of(sign) + ink.Of("  "+text)
}

// words is the caution under the cursor: what it says, what raised it, and
// where it comes from.
func (p *watchPanel) words(w int) []string {
	c, lines := p.caution(), []string{""}
	if c == nil {
		return lines
	}
	w = min(w, ui.ReadWidth+2)
	lines = append(lines, p.desk.Theme.Text.Wrap(c.Text, w, 1)...)
	return append(lines, p.desk.Theme.Dim.Wrap(report.CautionWhy(c), w, 1)...)
}
