package desk

import (
	"errors"
	"os"
	"strings"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/settings"
	"alongside/tui/ui"
)

// keys is a bench that has every key where it was.
type keys struct{}

func (keys) Label(shipped string) string     { return shipped }
func (keys) BenchKeys(...string) ui.Keys     { return nil }
func (keys) PanelKey(string, string) *ui.Key { return nil }

// newDesk has the invented metals named on its bench.
func newDesk(t *testing.T, o Options, ids ...string) *Desk {
	t.Helper()
	c, err := catalog.Load(os.DirFS("../testdata"), "catalog.toml")
	if err != nil {
		t.Fatal(err)
	}
	o.Catalog, o.Settings = c, settings.Default()
	o.Bench = compare.NewBench()
	for _, id := range ids {
		o.Bench.Pin(c.Material(id))
	}
	return New(o, keys{})
}

// Undo brings back what was changed; the cursor stays on its metal and its row.
func TestUndoKeepsTheCursor(t *testing.T) {
	d := newDesk(t, Options{}, "black-30", "w1-t6-pm", "w2-f-die")
	pin := d.PinAt(2)
	d.GoTo(pin, props.Density)
	if d.CursorPin() != pin || d.CursorProperty() != props.Density || d.CursorRow() == nil {
		t.Fatalf("on %v, %v", d.CursorPin(), d.CursorProperty())
	}
	d.Change(func(b *compare.Bench) { b.Remove(1) })
	if d.CursorPin() != pin || d.CursorProperty() != props.Density || d.Left() != 1 {
		t.Errorf("on %s, %v, %d to undo", d.CursorPin().ID, d.CursorProperty(), d.Left())
	}
	d.Undo()
	if len(d.Pins()) != 3 || d.CursorPin() != pin || d.Left() != 0 {
		t.Errorf("%d pins, on %s, %d to undo", len(d.Pins()), d.CursorPin().ID, d.Left())
	}
	if d.Undo(); !d.Trouble || d.Status != "nothing to undo" {
		t.Errorf("status %q", d.Status)
	}
	if d.Redo(); len(d.Pins()) != 2 {
		t.Errorf("%d pins after redo", len(d.Pins()))
	}
}

// What is worked out of the call is worked out again when it changes, not before.
func TestDerivedFollowsTheCall(t *testing.T) {
	d := newDesk(t, Options{}, "black-30", "w1-t6-pm")
	before := d.Swapped()
	if again := d.Swapped(); &before[0] != &again[0] {
		t.Error("worked out twice")
	}
	if err := d.SetPart(part.FieldMass, "4.2 lb"); err != nil {
		t.Fatal(err)
	}
	if after := d.Swapped(); after[0].Given.Mass == nil || before[0].Given.Mass != nil {
		t.Error("the swap does not know the mass")
	}
	if err := d.SetPart(part.FieldMass, "heavy"); err == nil || d.Now().Part.Mass != "4.2 lb" {
		t.Errorf("a mass that is none: %v, %q", err, d.Now().Part.Mass)
	}
}

// A change that is not on the disk is told before the program ends.
func TestQuitTellsWhatIsNotSaved(t *testing.T) {
	d := newDesk(t, Options{Unkept: errors.New("no folder")}, "black-30")
	if !d.MayQuit() {
		t.Error("nothing was changed")
	}
	d.PasteMaterials("w1-t6-pm; nonsense\nw2-f-die")
	if len(d.Pins()) != 3 || !strings.Contains(d.Status, "nonsense") || d.NamesMaterials("no metal") || !d.NamesMaterials("x, w1-t6-pm") {
		t.Errorf("%d pins, %q", len(d.Pins()), d.Status)
	}
	d.Keep()
	if d.MayQuit() || !strings.Contains(d.Status, "no folder") {
		t.Errorf("may quit; %q", d.Status)
	}
	if !d.MayQuit() {
		t.Error("asked twice and still held")
	}
}
