package data_test

import (
	"os"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/compare"
)

// A figure from common practice or from memory is not shown before one that
// was read in a standard or handbook on the same basis, unless the data say
// why; and a single old or foreign figure does not hide the one that the
// designation stands for.
func TestReadFiguresAreShownFirst(t *testing.T) {
	c, err := catalog.Load(os.DirFS("."))
	if err != nil {
		t.Fatal(err)
	}
	b := compare.NewBench()
	withReason, trade, memory, shown := 0, 0, 0, 0
	for _, m := range c.Materials {
		for _, p := range props.Properties() {
			list := b.Figures(m, p)
			seen := map[props.Basis]bool{}
			for i, f := range list {
				if seen[f.Basis] {
					continue
				}
				seen[f.Basis] = true
				shown++
				if f.Source.Trade() {
					trade++
				}
				if f.Known() == props.Memory {
					memory++
				}
				better := betterFigure(f, list[i+1:])
				switch {
				case better == nil:
				case f.First != "":
					withReason++
				default:
					t.Errorf("%s:%d: %s, %v %v: %v (%s, %v) is shown before %v (%s, %v); write why (first = …) or correct it",
						m.Alloy.File, f.Line, m.ID, f.Basis, p, f.Value, f.Source.ID, f.Known(), better.Value, better.Source.ID, better.Known())
				}
			}
		}
	}
	t.Logf("%d figures are the first shown of their basis: %d from memory, %d common practice; %d stand before a read one with a reason", shown, memory, trade, withReason)
}

// betterFigure finds a figure of the same basis at room temperature that was
// read in a standard or handbook, where f was not.
func betterFigure(f *props.Figure, rest []*props.Figure) *props.Figure {
	if !f.Source.Trade() && f.Known() == props.Read {
		return nil
	}
	for _, g := range rest {
		if g.Basis == f.Basis && !g.Source.Trade() && g.Known() == props.Read && !g.Cond.HasAt && g.Cond.Hours == 0 {
			return g
		}
	}
	return nil
}

// What does not depend on temper and process is stated once for the alloy, so
// that one correction mends all: no two materials of an alloy hold the same
// physical figure of their own.
func TestPhysicalFiguresAreStatedOnce(t *testing.T) {
	c, err := catalog.Load(os.DirFS("."))
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range c.Alloys {
		at := map[string]string{}
		for _, m := range c.Variants(a) {
			for _, f := range m.Stated {
				if g := f.Property.Info().Group; g != props.Physical && g != props.Elastic {
					continue
				}
				key := f.Property.String() + " " + f.Value.String() + " " + f.Cond.String() + " " + f.Source.ID + " " + f.Basis.String()
				if other, ok := at[key]; ok && other != m.ID {
					t.Errorf("%s:%d: %s repeats what %s states: %s; state it once for the alloy", a.File, f.Line, m.ID, other, key)
				}
				at[key] = m.ID
			}
		}
	}
}
