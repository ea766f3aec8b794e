package tui

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/call"
	"alongside/props/report"
	"alongside/props/watch"
	"alongside/tui/ui"
)

// watchKey names the key that shows the watch-outs.
const watchKey = " (key 6)"

// rulesRead tells that the watch-out rules are at hand.
type rulesRead struct{}

// readRules reads them beside the first frames, which do not wait for it.
func (m *Model) readRules() tea.Cmd {
	if m.o.Watch == nil {
		return nil
	}
	read := m.o.Watch
	return func() tea.Msg { read(); return rulesRead{} }
}

// watched is the cautions for every pin beside the baseline, as displayed, for
// the bench and the part as they are; nil until the rules have been read.
func (m *Model) watched() []report.Watched {
	if m.cautions == nil && m.rules != nil && len(m.now().Bench.Pins) > 1 {
		base, given := m.now().Bench.Pins[m.now().Bench.Baseline], m.given()
		for _, i := range m.order()[1:] {
			pin := m.now().Bench.Pins[i]
			m.cautions = append(m.cautions, report.Watched{Base: base, Pin: pin, Cautions: m.rules.Evaluate(m.now().Bench, base, pin, given, m.now().Aside)})
		}
	}
	return m.cautions
}

// openCautions counts the cautions that are not put aside.
func openCautions(w *report.Watched) int {
	n := watch.Counts(w.Cautions)
	return n.Ask + n.Check + n.Unchecked
}

// watchWords is the number of open cautions of the pin under the cursor, for
// the title line, with the key that shows them, in full and in short; of all
// pins while the cursor is on the baseline.
func (m *Model) watchWords() (full, short string) {
	list := m.watched()
	if len(list) == 0 {
		return "", ""
	}
	if m.col > 0 {
		list = list[m.col-1 : m.col]
	}
	lo, hi, stops := openCautions(&list[0]), 0, 0
	for i := range list {
		n := openCautions(&list[i])
		lo, hi, stops = min(lo, n), max(hi, n), max(stops, watch.Counts(list[i].Cautions).Ask)
	}
	full = ui.Plural(hi, "watch-out")
	if lo < hi {
		full = fmt.Sprintf("%d–%d watch-outs", lo, hi)
	}
	short = full
	if stops > 0 {
		full += fmt.Sprintf(", %d STOP", stops)
	}
	return full + watchKey, short + watchKey
}

// watchPanel lists what to ask about before the pin under the cursor takes the
// place of the baseline.
type watchPanel struct {
	m    *Model
	list ui.List
	h    int
}

func newWatch(m *Model) screen {
	switch {
	case m.o.Watch == nil:
		m.warn("there are no watch-out rules here")
		return nil
	case len(m.now().Bench.Pins) < 2:
		m.warn(twoPinsNeeded)
		return nil
	}
	m.rules = m.o.Watch()
	return &watchPanel{m: m}
}

// pin is the place of the pin under the cursor among those beside the baseline.
func (p *watchPanel) pin() int { return ui.Clamp(p.m.col-1, 0, len(p.m.watched())-1) }

func (p *watchPanel) some() bool { return len(p.m.watched()) > 0 }

func (p *watchPanel) cautions() []watch.Caution { return p.m.watched()[p.pin()].Cautions }

func (p *watchPanel) Title() string {
	if !p.some() {
		return "Watch-outs"
	}
	s := "Watch-outs: " + p.m.watched()[p.pin()].Title()
	if n := len(p.m.watched()); n > 1 {
		s += fmt.Sprintf(" · pin %d of %d", p.pin()+1, n)
	}
	return s
}

func (p *watchPanel) Typing() bool { return false }

func (p *watchPanel) Height(_, most int) int {
	if !p.some() {
		return 3
	}
	n := 0 // the same for every pin: the bench above must not jump
	for _, w := range p.m.watched() {
		n = max(n, len(w.Cautions))
	}
	return min(most, n+watchHead+watchFoot+1)
}

func (p *watchPanel) Keys() ui.Keys {
	m := p.m
	bench := m.keys("u", "ctrl+r", "s", "m")
	if !p.some() {
		return bench
	}
	for i := range bench[2:] {
		bench[2+i].Line = ""
	}
	return append(append(append(ui.Keys{
		ui.On("f i +", "conditions", "what the part has and goes through", func() { m.open(newFacts(m)) }),
		ui.On("e", "part", "the part: temperatures, mate", func() { m.open(newPart(m)) }),
		ui.On("d x space", "put aside", "put this one aside, bring it back", p.dismiss),
		ui.On("enter o", "figures", "what raised it: figures and sources", p.card),
		ui.On("", "pin", "", nil).As("←→"),
		ui.Send("y", "copy", "copy the watch-outs of all pins", func() tea.Cmd { return m.copyDoc(report.WatchDoc(m.watched()...), "watch-outs") }),
		ui.Send("Y", "", "copy those of this pin", func() tea.Cmd {
			w := m.watched()[p.pin()]
			return m.copyDoc(report.WatchDoc(w), "watch-outs of "+w.Pin.Name())
		}),
	}, bench...), m.pinKeys()...), p.list.Keys()...)
}

func (p *watchPanel) Update(msg tea.Msg) tea.Cmd {
	if msg, ok := msg.(tea.MouseMsg); ok && p.some() {
		return p.list.Mouse(msg, func() tea.Cmd { p.card(); return nil })
	}
	return nil
}

// card shows what raised the caution under the cursor.
func (p *watchPanel) card() {
	if c := p.caution(); c != nil {
		p.m.open(newCardPages(p.m, "", report.NewCautionCard(c)))
	}
}

// caution is the one under the cursor; nil where there is none.
func (p *watchPanel) caution() *watch.Caution {
	if p.list.At < len(p.cautions()) {
		return &p.cautions()[p.list.At]
	}
	return nil
}

// dismiss puts the caution under the cursor aside, for every pin, or brings it
// back.
func (p *watchPanel) dismiss() {
	c := p.caution()
	if c == nil {
		return
	}
	id, title, aside := c.ID, c.Title, !c.Dismissed
	p.m.changeCall(func(c *call.Call) {
		c.Aside = slices.DeleteFunc(c.Aside, func(s string) bool { return s == id })
		if aside {
			c.Aside = append(c.Aside, id)
		}
	})
	if aside {
		p.m.say("put aside, listed at the end; d on it brings it back: " + title)
	} else {
		p.m.say("brought back: " + title)
	}
}

const (
	watchHead = 2 // counts, the part
	watchFoot = 7 // at most: a blank line, the caution under the cursor in words
)

// foot is how many lines the caution under the cursor gets in words.
func (p *watchPanel) foot() int {
	return ui.Clamp(p.h*2/5+1, 3, watchFoot)
}

func (p *watchPanel) View(w, h int) []string {
	p.h = h
	t := p.m.theme
	if !p.some() {
		return []string{" " + ui.Cut(twoPinsNeeded, w-2)}
	}
	list, rows := p.cautions(), max(h-watchHead-p.foot(), 1)
	p.list.FitLines(len(list), watchHead, rows)
	lines := []string{p.counts(w), t.Dim.Of(ui.Cut(" "+p.partText(), w))}
	for i := p.list.Top; i < p.list.End(); i++ {
		lines = append(lines, p.line(&list[i], i == p.list.At, w))
	}
	if len(list) == 0 {
		lines = append(lines, t.Dim.Of(ui.Cut(" No rule is raised. That does not mean that nothing can go wrong.", w)))
	}
	return append(ui.Fill(lines, watchHead+rows), p.words(w)...)
}

func (p *watchPanel) counts(w int) string {
	s := " " + report.WatchCount(p.cautions())
	if n := len(p.cautions()); n > 0 {
		s += fmt.Sprintf("  (%d of %d)", p.list.At+1, n)
	}
	return p.m.theme.Strong.Of(ui.Cut(s, w))
}

// partText is what the rules know of the part.
func (p *watchPanel) partText() string {
	m := p.m
	var parts []string
	if m.now().Part.With != 0 {
		parts = append(parts, m.now().Part.With.String())
	}
	if m.now().Part.Service != "" {
		parts = append(parts, m.now().Part.Service)
	}
	if m.now().Part.Mate != "" {
		parts = append(parts, "mate "+m.now().Part.Mate)
	}
	if len(parts) == 0 {
		return "Nothing is said of the part: f its conditions, e its temperatures and mate."
	}
	return "The part: " + ui.Plain(strings.Join(parts, "; "))
}

// signs of the states of a caution, as words in a column.
func cautionSign(c *watch.Caution) string {
	switch {
	case c.Dismissed:
		return "aside"
	case c.Unchecked != "":
		return "?"
	case c.Severity == watch.Ask:
		return "STOP"
	}
	return "check"
}

func (p *watchPanel) line(c *watch.Caution, here bool, w int) string {
	t := p.m.theme
	sign := ui.Pad(cautionSign(c), 5)
	text := ui.Plain(c.Title)
	if c.Unchecked != "" && !c.Dismissed {
		text += ": not checked, " + ui.Plain(c.Unchecked)
	}
	text = ui.Cut(text, w-9)
	switch {
	case here && t.Plain:
		return ">" + sign + "  " + text
	case here:
		return t.Cursor.Of(ui.Pad(" "+sign+"  "+text, w))
	case c.Dismissed, c.Unchecked != "":
		return " " + t.Dim.Of(sign+"  "+text)
	case c.Severity == watch.Ask:
		return " " + t.Bad.Of(sign) + "  " + text
	}
	return " " + t.Dim.Of(sign) + "  " + text
}

// words is the caution under the cursor: what it says, what raised it, and
// where it comes from.
func (p *watchPanel) words(w int) []string {
	t, c := p.m.theme, p.caution()
	lines, most := []string{""}, p.foot()
	if c == nil {
		return make([]string, most)
	}
	text := ui.Wrap(c.Text, min(w-2, ui.ReadWidth))
	why := ui.Wrap(report.CautionWhy(c), min(w-2, ui.ReadWidth))
	for i, l := range append(text, why...) {
		if len(lines) == most {
			lines[most-1] = ui.Cut(lines[most-1], w-1) + ui.Ellipsis
			break
		}
		if i >= len(text) {
			l = t.Dim.Of(l)
		}
		lines = append(lines, " "+l)
	}
	return append(lines, make([]string, most-len(lines))...)
}
