package panel

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/report"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// finder pins materials by what the user types, filtering as they type.
type finder struct {
	panel
	hits []catalog.Hit
	read string // what a query that finds nothing was taken for
	marked
	moved bool // the cursor was moved since a letter was typed: space marks
}

// marked is the materials of a list that are marked, in that order.
type marked []*props.Material

func (l *marked) toggle(mat *props.Material) {
	if i := slices.Index(*l, mat); i >= 0 {
		*l = slices.Delete(*l, i, i+1)
	} else {
		*l = append(*l, mat)
	}
}

// or is the marked materials, else the one given.
func (l *marked) or(mat *props.Material) []*props.Material {
	if len(*l) > 0 {
		return *l
	}
	return []*props.Material{mat}
}

// NewFinder opens the search for a material to pin.
func NewFinder(d *desk.Desk) desk.Screen {
	f := &finder{panel: panel{desk: d, about: "Finds a metal by any of its designations and pins it on the bench.", typing: true, field: ui.NewField(d.Query)}}
	f.search()
	return f
}

func (f *finder) search() {
	f.desk.Query = f.field.Text()
	f.hits, f.read = f.desk.Catalog.SearchNear(f.desk.Query)
	f.list, f.moved = ui.List{}, false
}

func (f *finder) Title() string {
	if n := len(f.marked); n > 0 {
		return fmt.Sprintf("Pin a material · %d marked", n)
	}
	return "Pin a material"
}

// Height leaves the bench in sight in a tall window: it grows as pins are
// added.
func (f *finder) Height(_, most int) int {
	if len(f.desk.Pins()) == 0 {
		return most
	}
	return max(most*3/5, 14)
}

func (f *finder) Keys() ui.Keys {
	keys := ui.Keys{
		ui.On("enter", "pin and close", "pin this material, or all that are marked, and close", func() {
			if f.moved || !f.desk.ContinueLast() {
				f.pin(f.desk.Close)
			}
		}),
		ui.On("tab", "pin and stay", "pin and find another", func() { f.pin(f.field.Keep) }), // the next letter begins a text
		ui.On("", "choose", "", nil).As("↑↓"),
		ui.On("ctrl+u", "clear", "clear the text", nil),
	}
	if f.field.Fresh() { // the key that opens the finder, pressed where it is open
		keys = append(keys, ui.On("/", "", "", func() {}))
	}
	if f.moved && len(f.hits) > 0 {
		mark := ui.On("space", "mark", "after ↑ or ↓: mark several, Enter pins them all", func() {
			f.toggle(f.hits[f.list.At].Material)
			f.list.Move(1)
		})
		keys = slices.Insert(keys, 2, mark)
	}
	for _, k := range f.list.TypingKeys() {
		move := k.Do
		k.Do = func() tea.Cmd { f.moved = true; return move() }
		keys = append(keys, k)
	}
	return keys
}

func (f *finder) Type(msg tea.KeyMsg) {
	if msg.Paste && strings.ContainsRune(strings.TrimSpace(string(msg.Runes)), '\n') {
		f.desk.PasteMaterials(string(msg.Runes))
	} else if f.desk.TypeInto(&f.field, msg) {
		f.search()
	}
}

func (f *finder) Click(_, y int) bool { return f.list.Click(y) }

// pin pins the marked materials, or the one under the cursor.
func (f *finder) pin(then func()) {
	if f.list.At >= len(f.hits) {
		f.desk.Warn("nothing found to pin")
		return
	}
	f.desk.Pin(f.marked.or(f.hits[f.list.At].Material)...)
	f.marked = nil
	then()
}

func (f *finder) View(w, h int) []string {
	t := f.desk.Theme
	var head []string
	if len(f.desk.Pins()) == 0 {
		head = []string{
			" Type part of an alloy, temper or process, or another name: 380 die, A356 T6,",
			" class 30. Enter pins it, Tab pins it and stays. The first pin is the baseline."}
		if line := f.desk.Offer(); line != "" {
			head = append(head, ui.Few(t.Strong.Wrap(ui.Plain(line), w, 1), 2, w)...)
		}
	}
	count := fmt.Sprintf("%d of %d", len(f.hits), len(f.desk.Catalog.Materials))
	if f.read != "" && len(f.hits) > 0 {
		count = ui.Cut(fmt.Sprintf("not found; near it, %s: %d", ui.Plain(f.read), len(f.hits)), w/2)
	}
	head = append(head, " Find: "+ui.Pad(f.field.View(t, w-len(count)-9), w-len(count)-9)+" "+t.Dim.Of(count))
	cols := f.columns(w)
	return f.list.Draw(ui.Listing{
		Head: append(head, t.Dim.Of(cols.Heads())), Items: len(f.hits),
		Line: func(i int, here bool) string { return f.hit(cols, i, here) },
		Foot: func() []string { return []string{f.names(w)} },
	}, h)
}

func (f *finder) hit(cols ui.Columns, i int, here bool) string {
	mat := f.hits[i].Material
	return f.materialLine(cols, mat, f.marked, f.field.Text(), here, mat.Name(), mat.ID, mat.Alloy.Family.Name)
}

// columns are a mark, the name, id and family where there is room, and figures
// in brief.
func (f *finder) columns(w int) ui.Columns {
	name := 27
	if w >= ui.Roomy {
		name = 32
	}
	cols := append(ui.Columns{{Width: 1}, {Head: "material", Width: name}, {Head: "id"}, {Head: "family"}}, f.briefColumns()...)
	if room := cols.Room(w); room >= 14 {
		cols[3].Width = min(room-1, 26)
	}
	if room := cols.Room(w); room >= 20 {
		cols[2].Width = min(room-1, 28)
	}
	return cols
}

// names tells how else the material under the cursor is called, so that a hit
// under a foreign name is no surprise.
func (f *finder) names(w int) string {
	t := f.desk.Theme
	if len(f.hits) == 0 {
		return t.Bad.Of(ui.Cut(" Nothing like that in the catalog. Try fewer letters, or the alloy alone.", w))
	}
	mat := f.hits[f.list.At].Material
	parts := []string{mat.ID}
	if mat.Alloy.UNS != "" {
		parts = append(parts, "UNS "+mat.Alloy.UNS)
	}
	parts = append(parts, report.AliasTexts(mat)...)
	if slices.Contains(f.desk.Pins(), mat) {
		parts = append([]string{"+ on the bench"}, parts...)
	}
	return ui.Marked(" "+ui.Cut(ui.Plain(strings.Join(parts, dot)), w-1), f.field.Text(), t.Dim, t.Strong)
}
