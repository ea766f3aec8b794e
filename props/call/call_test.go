package call

import (
	"testing"
	"time"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/part"
)

func TestUndo(t *testing.T) {
	h := Start(fresh())
	if h.Undo() || h.Redo() || h.Left() != 0 {
		t.Error("there was something to undo or redo")
	}
	mass := func(text string) func(*Call) { return func(c *Call) { c.Part.Mass = text } }
	if !h.Change(mass("1 lb")) || !h.Change(mass("2 lb")) || h.Change(mass("2 lb")) || h.Left() != 2 {
		t.Errorf("%d changes, want 2: the same again is none", h.Left())
	}
	if !h.Undo() || h.Now().Part.Mass != "1 lb" || !h.Redo() || h.Now().Part.Mass != "2 lb" {
		t.Errorf("have %q", h.Now().Part.Mass)
	}
	h.Undo()
	h.Change(func(c *Call) { c.Aside = append(c.Aside, "x"); c.Part.With = part.Threads })
	if h.Redo() || h.Left() != 2 {
		t.Error("a change after undo leaves something to redo")
	}
	for range 2 * Depth {
		h.Change(func(c *Call) { c.Part.Mass += "1" })
	}
	if h.Left() != Depth {
		t.Errorf("%d steps kept, want %d", h.Left(), Depth)
	}
	for h.Undo() {
	}
	if h.Now().Part.Mass == "" {
		t.Error("the oldest steps are not dropped")
	}
}

// What is handed out is not changed by later changes, and empty is empty
// whichever way.
func TestCallsAreValues(t *testing.T) {
	h := Start(fresh())
	h.Change(func(c *Call) { c.Part.Price = map[string]string{"a": "1 USD/lb"} })
	before := h.Now().Clone()
	h.Change(func(c *Call) { c.Part.Price["a"] = "2 USD/lb"; c.Bench.RowUnits[1] = 1 })
	if before.Part.Price["a"] != "1 USD/lb" || len(before.Bench.RowUnits) != 0 {
		t.Error("a change reached an older call")
	}
	if !fresh().Same(Call{Bench: fresh().Bench.Clone(), Aside: []string{}}) {
		t.Error("an empty list is not the same as none")
	}
}

func fresh() Call { return Call{Bench: compare.NewBench()} }

// A catalog that takes the place of another hands its materials to the call, to the
// comparisons in its needs and to all of its past; what it lacks stays.
func TestCallOfAnotherCatalog(t *testing.T) {
	old, gone := &props.Material{ID: "a"}, &props.Material{ID: "b"}
	newer := &props.Material{ID: "a"}
	c := fresh()
	c.Bench.Pins = []*props.Material{old, gone}
	c.Needs = []needs.Need{{Than: &needs.Than{Material: old}}, {Off: true}}
	h := Start(c)
	h.Change(func(c *Call) { c.Aside = []string{"x"} })
	h.Undo()
	h.With(func(id string) *props.Material {
		if id == "a" {
			return newer
		}
		return nil
	})
	for range 2 {
		now := h.Now()
		if now.Bench.Pins[0] != newer || now.Bench.Pins[1] != gone || now.Needs[0].Than.Material != newer {
			t.Errorf("%+v", now)
		}
		h.Redo()
	}
	if c.Bench.Pins[0] != old || c.Needs[0].Than.Material != old {
		t.Error("the call before was changed")
	}
	if on := h.Now().NeedsOn(); len(on) != 1 || on[0].Off {
		t.Errorf("%+v", on)
	}
}

func TestNoteTime(t *testing.T) {
	at := time.Date(2026, 1, 2, 3, 4, 5, 678, time.FixedZone("east", 3600))
	if n := NewNote(at, "x"); n.Text != "x" || n.At.Location() != time.UTC || n.At.Hour() != 2 || n.At.Nanosecond() != 0 {
		t.Errorf("%v", n)
	}
}
