package call

import (
	"testing"

	"alongside/props/compare"
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
