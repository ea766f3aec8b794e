package tui

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/call"
	"alongside/props/report"
	"alongside/props/watch"
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
	if m.cautions == nil && m.rules != nil && len(m.bench.Pins) > 1 {
		base, given := m.bench.Pins[m.bench.Baseline], m.given()
		for _, i := range m.order()[1:] {
			pin := m.bench.Pins[i]
			m.cautions = append(m.cautions, report.Watched{Base: base, Pin: pin, Cautions: m.rules.Evaluate(m.bench, base, pin, given, m.aside)})
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
	full = plural(hi, "watch-out")
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
	m   *Model
	at  int
	top int
}

func newWatch(m *Model) screen {
	switch {
	case m.o.Watch == nil:
		m.warn("there are no watch-out rules here")
		return nil
	case len(m.bench.Pins) < 2:
		m.warn(twoPinsNeeded)
		return nil
	}
	m.rules = m.o.Watch()
	return &watchPanel{m: m}
}

// pin is the place of the pin under the cursor among those beside the baseline.
func (p *watchPanel) pin() int { return clamp(p.m.col-1, 0, len(p.m.watched())-1) }

func (p *watchPanel) some() bool { return len(p.m.watched()) > 0 }

func (p *watchPanel) list() []watch.Caution { return p.m.watched()[p.pin()].Cautions }

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

func (p *watchPanel) Height(most int) int {
	if !p.some() {
		return 3
	}
	n := 0 // the same for every pin: the bench above must not jump
	for _, w := range p.m.watched() {
		n = max(n, len(w.Cautions))
	}
	return min(most, n+watchHead+watchFoot+1)
}

func (p *watchPanel) Keys() []key.Binding {
	b := func(k, help string) key.Binding { return key.NewBinding(key.WithKeys(k), key.WithHelp(k, help)) }
	return []key.Binding{
		b("f", "conditions"), b("e", "part"), b("d", "put aside"), b("enter", "figures"), b("←→", "pin"), b("y", "copy"), escape, b("u", "undo"),
	}
}

func (p *watchPanel) Update(msg tea.Msg) tea.Cmd { return p.m.list(p, msg) }

func (p *watchPanel) click(_, y int) {
	if y >= watchHead && y < watchHead+p.page() {
		p.move(p.top + y - watchHead - p.at)
	}
}

// page is how many cautions are in sight.
func (p *watchPanel) page() int {
	_, h := p.m.panel()
	return max(h-watchHead-p.foot(), 1)
}

func (p *watchPanel) key(k string) tea.Cmd {
	m := p.m
	if m.otherPin(k) {
		return nil
	}
	switch k {
	case "f", "i", "+":
		m.open(newFacts(m))
	case "e":
		m.open(newPart(m))
	case "enter", "o":
		if c := p.caution(); c != nil {
			card := report.NewCautionCard(c)
			m.open(newPages(m, plain(card.Title), func(w int) []string { return cardLines(m.theme, card, w) }))
		}
	case "d", "x", " ":
		p.dismiss()
	case "y":
		return m.copyDoc(report.WatchDoc(m.watched()...), "watch-outs")
	case "Y":
		w := m.watched()[p.pin()]
		return m.copyDoc(report.WatchDoc(w), "watch-outs of "+w.Pin.Name())
	}
	return nil
}

func (p *watchPanel) move(by int) { p.at = clamp(p.at+by, 0, len(p.list())-1) }

// caution is the one under the cursor; nil where there is none.
func (p *watchPanel) caution() *watch.Caution {
	if p.at < len(p.list()) {
		return &p.list()[p.at]
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
	p.move(0)
}

const (
	watchHead = 2 // counts, the part
	watchFoot = 7 // at most: a blank line, the caution under the cursor in words
)

// foot is how many lines the caution under the cursor gets in words.
func (p *watchPanel) foot() int {
	_, h := p.m.panel()
	return clamp(h*2/5+1, 3, watchFoot)
}

func (p *watchPanel) View() string {
	w, _ := p.m.panel()
	t := p.m.theme
	if !p.some() {
		return " " + cut(twoPinsNeeded, w-2)
	}
	list := p.list()
	p.at = clamp(p.at, 0, len(list)-1)
	rows := p.page()
	p.top = clamp(p.top, p.at-rows+1, p.at)
	p.top = clamp(p.top, 0, len(list)-rows)
	lines := []string{p.counts(w), t.dim.of(cut(" "+p.partText(), w))}
	for i := p.top; i < p.top+rows; i++ {
		switch {
		case i < len(list):
			lines = append(lines, p.line(&list[i], i == p.at, w))
		case i == 0:
			lines = append(lines, t.dim.of(cut(" No rule is raised. That does not mean that nothing can go wrong.", w)))
		default:
			lines = append(lines, "")
		}
	}
	return strings.Join(append(lines, p.words(w)...), "\n")
}

func (p *watchPanel) counts(w int) string {
	s := " " + report.WatchCount(p.list())
	if n := len(p.list()); n > 0 {
		s += fmt.Sprintf("  (%d of %d)", p.at+1, n)
	}
	return p.m.theme.strong.of(cut(s, w))
}

// partText is what the rules know of the part.
func (p *watchPanel) partText() string {
	m := p.m
	var parts []string
	if m.part.With != 0 {
		parts = append(parts, m.part.With.String())
	}
	if m.part.Service != "" {
		parts = append(parts, m.part.Service)
	}
	if m.part.Mate != "" {
		parts = append(parts, "mate "+m.part.Mate)
	}
	if len(parts) == 0 {
		return "Nothing is said of the part: f its conditions, e its temperatures and mate."
	}
	return "The part: " + plain(strings.Join(parts, "; "))
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
	sign := pad(cautionSign(c), 5)
	text := plain(c.Title)
	if c.Unchecked != "" && !c.Dismissed {
		text += ": not checked, " + plain(c.Unchecked)
	}
	text = cut(text, w-9)
	switch {
	case here && t.plain:
		return ">" + sign + "  " + text
	case here:
		return t.cursor.of(pad(" "+sign+"  "+text, w))
	case c.Dismissed, c.Unchecked != "":
		return " " + t.dim.of(sign+"  "+text)
	case c.Severity == watch.Ask:
		return " " + t.bad.of(sign) + "  " + text
	}
	return " " + t.dim.of(sign) + "  " + text
}

// words is the caution under the cursor: what it says, what raised it, and
// where it comes from.
func (p *watchPanel) words(w int) []string {
	t, c := p.m.theme, p.caution()
	lines, most := []string{""}, p.foot()
	if c == nil {
		return make([]string, most)
	}
	text := wrap(c.Text, min(w-2, readWidth))
	why := wrap(report.CautionWhy(c), min(w-2, readWidth))
	for i, l := range append(text, why...) {
		if len(lines) == most {
			lines[most-1] = cut(lines[most-1], w-1) + ellipsis
			break
		}
		if i >= len(text) {
			l = t.dim.of(l)
		}
		lines = append(lines, " "+l)
	}
	return append(lines, make([]string, most-len(lines))...)
}
