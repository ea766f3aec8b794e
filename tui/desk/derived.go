package desk

import (
	"fmt"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/foundry"
	"alongside/props/needs"
	"alongside/props/report"
	"alongside/props/spoken"
	"alongside/props/swap"
	"alongside/props/watch"
	"alongside/tui/ui"
)

// derived is what is worked out from the call when it is asked for, until the
// call changes.
type derived struct {
	cautions  map[int]*report.Watched // see Watched
	swaps     []*swap.Result          // see Swapped
	processes []*foundry.Page         // see ProcessPages
	metWords  string                  // see Screened
	briefs    map[*props.Material][]string
}

// Swapped is what the change of metal does to the part, for every pin beside the
// baseline, as displayed; nil without two pins. The same list is returned until the
// call changes.
func (d *Desk) Swapped() []*swap.Result {
	if d.swaps == nil && len(d.Pins()) > 1 {
		given := d.Given()
		for at := 1; at < len(d.Pins()); at++ {
			d.swaps = append(d.swaps, swap.Work(&d.Now().Bench, given, d.Baseline(), d.PinAt(at)))
		}
	}
	return d.swaps
}

// Book is what is published about processes; nil where the program was
// started without it.
func (d *Desk) Book() *foundry.Book {
	if d.Foundry == nil {
		return nil
	}
	return d.Foundry()
}

// ProcessPages is what is on file about how each pin is made, as displayed; the
// same until the call changes.
func (d *Desk) ProcessPages() []*foundry.Page {
	if d.processes == nil {
		for at := range d.Pins() {
			d.processes = append(d.processes, d.Book().Page(d.Catalog, d.PinAt(at), d.Given().Dimension))
		}
	}
	return d.processes
}

// rulesRead tells that the watch-out rules are at hand.
type rulesRead struct{}

// ReadRules reads them beside the first frames, which do not wait for it.
func (d *Desk) ReadRules() tea.Cmd {
	if d.Watch == nil {
		return nil
	}
	read := d.Watch
	return func() tea.Msg { read(); return rulesRead{} }
}

// Watched is the cautions for a pin beside the baseline, as displayed, for the
// bench and the part as they are; nil for the baseline, and until the rules have
// been read.
func (d *Desk) Watched(at int) *report.Watched {
	pin, base := d.PinAt(at), d.Baseline()
	if d.Rules == nil || at < 1 || pin == nil {
		return nil
	}
	w, ok := d.cautions[at]
	if !ok {
		if d.cautions == nil {
			d.cautions = map[int]*report.Watched{}
		}
		w = &report.Watched{Base: base, Pin: pin, Cautions: d.Rules.Evaluate(d.Now().Bench, base, pin, d.Given(), d.Now().Aside)}
		d.cautions[at] = w
	}
	return w
}

// AllWatched is that for every pin.
func (d *Desk) AllWatched() []report.Watched {
	var list []report.Watched
	for at := range d.Pins() {
		if w := d.Watched(at); w != nil {
			list = append(list, *w)
		}
	}
	return list
}

// WatchKey names the key that shows the watch-outs.
func (d *Desk) WatchKey() string { return " (key " + d.Label("6") + ")" }

// WatchWords is the number of open cautions of the pin under the cursor, with the
// key that shows them, in full and in short; of all pins while the cursor is on the
// baseline.
func (d *Desk) WatchWords() (full, short string) {
	var open []int // of each pin: cautions that are not put aside
	stops := 0
	for at := range d.Pins() {
		if d.Col != 0 && d.Col != at {
			continue
		}
		if w := d.Watched(at); w != nil {
			n := watch.Counts(w.Cautions)
			open, stops = append(open, n.Ask+n.Check+n.Unchecked), max(stops, n.Ask)
		}
	}
	if open == nil {
		return "", ""
	}
	lo, hi := slices.Min(open), slices.Max(open)
	full = ui.Plural(hi, "watch-out")
	if lo < hi {
		full = fmt.Sprintf("%d–%d watch-outs", lo, hi)
	}
	short = full
	if stops > 0 {
		full += fmt.Sprintf(", %d STOP", stops)
	}
	return full + d.WatchKey(), short + d.WatchKey()
}

// Read reads what is said of a part made of the baseline.
func (d *Desk) Read(text string) spoken.Said {
	return spoken.Read(text, d.Catalog, d.Now().Bench.System, d.Baseline())
}

// Screened says how many materials of the catalog meet the needs.
func (d *Desk) Screened() string {
	if d.metWords == "" {
		all := d.Catalog.Materials
		offered, remembered := needs.Offered(all)
		met, near := needs.Screen(offered, d.Now().Needs)
		d.metWords = fmt.Sprintf("%d of %d materials meet every need; %d more miss one or two (%s shows them)", len(met), len(all), len(near), d.Label("3"))
		if more, _ := needs.Screen(remembered, d.Now().Needs); len(more) > 0 {
			d.metWords = fmt.Sprintf("%d of %d materials meet every need, %d more from memory; %d miss one or two", len(met), len(all), len(more), len(near))
		}
	}
	return d.metWords
}

// BriefProperties are the figures shown beside a material in a list.
var BriefProperties = []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation}

// Brief is these figures of a material as short texts, kept until the call changes.
func (d *Desk) Brief(mat *props.Material) []string {
	b, ok := d.briefs[mat]
	if !ok {
		if d.briefs == nil {
			d.briefs = map[*props.Material][]string{}
		}
		b = report.Brief(&d.Now().Bench, mat, BriefProperties, report.Mark)
		d.briefs[mat] = b
	}
	return b
}

// UseCatalog puts another catalog of the same materials in the place of the
// present one.
func (d *Desk) UseCatalog(c *catalog.Catalog) {
	d.Catalog = c
	d.history.With(c.Material)
	d.Comparison = nil
	d.rework()
}

// Take takes what was done beside the screen, and nothing else.
func (d *Desk) Take(msg tea.Msg) {
	switch msg := msg.(type) {
	case rulesRead:
		d.Rules = d.Watch()
	case saved:
		d.takeSaved(msg)
	case offered:
		d.takeOffered(msg)
	case copied:
		d.takeCopied(msg)
	}
}
