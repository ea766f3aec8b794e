package tui

import (
	"slices"
	"testing"

	"alongside/props"
	"alongside/props/call"
	"alongside/props/compare"
	"alongside/units"
)

func TestEmptyBenchOpensTheFinder(t *testing.T) {
	d := plainDesk(t, 80, 24)
	d.want("Pin a material")
	d.want("The first pin is the baseline.")
	d.typeText("black")
	d.press("enter")
	d.wantPins("*black-30")
	d.wantNot("Pin a material")
	d.want("Black 30")
}

// The main job: pin three, put the baseline on the black metal, flip, change
// units, copy, quit.
func TestMainJob(t *testing.T) {
	d := plainDesk(t, 80, 24)
	d.typeText("w1 t6 sand")
	d.press("tab")
	d.typeText("white 2")
	d.press("tab")
	d.typeText("black")
	d.press("enter")
	d.wantPins("*w1-t6-sand w2-f-die black-30")
	d.press("b")
	d.wantPins("w1-t6-sand w2-f-die *black-30")
	d.want("baseline: Black 30 sand")
	d.press("right", "p")
	d.wantPins("w1-t6-pm w2-f-die *black-30")
	d.press("s")
	d.want("SI units")
	d.want("283")
	d.press("y")
	if len(d.copied) != 1 {
		t.Fatalf("%d copies", len(d.copied))
	}
	d.want("screen as text: copied with a test")
	d.press("q")
	if !d.quit {
		t.Error("q did not quit")
	}
}

func TestUnlikeSaysWhy(t *testing.T) {
	d := plainDesk(t, 200, 60, "w2-f-die", "w3-t6-sand")
	d.press("right")
	d.want("≠")
	d.want("unlike, counts in no total: specified minimum against typical")
}

func TestFlips(t *testing.T) {
	d := plainDesk(t, 80, 24, "black-30", "w1-f-sand")
	d.press("right", "t")
	d.wantPins("*black-30 w1-t6-sand")
	d.want("White 1-T6 sand, was White 1-F sand")
	d.press("t")
	d.wantPins("*black-30 w1-f-sand")
	d.press("T", "p")
	d.wantPins("*black-30 w1-t6-pm")
	d.press("t")
	d.wantPins("*black-30 w1-t6-pm")
	d.want("no other temper")
	d.press("P", "a")
	d.wantPins("*black-30 w3-t6-sand")
	d.press("A")
	d.wantPins("*black-30 w1-t6-sand")
	d.press("left", "a")
	d.want("no other alloy of the family")
}

func TestFlipSkipsWhatIsOnTheBench(t *testing.T) {
	d := plainDesk(t, 80, 24, "w1-f-sand", "w1-t6-sand", "w1-t6-pm")
	d.press("t")
	d.wantPins("*w1-f-sand w1-t6-sand w1-t6-pm")
	d.want("on the bench already")
	d.press("p")
	d.want("on the bench already")
	d.press("tab", "x", "home", "t")
	d.wantPins("*w1-t6-sand w1-t6-pm")
}

func TestPinTwiceGoesToThePin(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("/")
	d.typeText("w2")
	d.press("enter")
	d.wantPins("*black-30 w1-t6-pm w2-f-die w3-t6-sand")
	d.want("on the bench already")
	d.want(">White 2")
}

func TestMove(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("right", ">")
	d.wantPins("*black-30 w2-f-die w1-t6-pm w3-t6-sand")
	d.want(">White 1")
	d.press(">", ">")
	d.wantPins("*black-30 w2-f-die w3-t6-sand w1-t6-pm")
	d.want("no place further")
	d.press("shift+left")
	d.wantPins("*black-30 w2-f-die w1-t6-pm w3-t6-sand")
	d.press("home", ">")
	d.want("the baseline stays at the left")
	// With the baseline in the middle a move goes past it.
	d.press("end", "left", "b", "right")
	d.wantPins("black-30 w2-f-die *w1-t6-pm w3-t6-sand")
	d.press("right", ">")
	d.wantPins("black-30 *w1-t6-pm w3-t6-sand w2-f-die")
}

func TestUndoAndRedo(t *testing.T) {
	d := plainDesk(t, 80, 24, "black-30", "w2-f-die", "w1-f-sand", "w3-t6-sand")
	start := d.m.Bench()
	steps := []string{"x", "t", ">", "b", "s", "r", "d", "m", "f"}
	d.press("right")
	var benches []compare.Bench
	for _, k := range steps {
		before := d.m.Bench()
		d.press(k)
		if !same(before, d.m.Bench()) {
			benches = append(benches, before)
		}
	}
	if len(benches) < len(steps) {
		t.Fatalf("only %d of %v changed the bench", len(benches), steps)
	}
	end := d.m.Bench()
	for i := len(benches) - 1; i >= 0; i-- {
		d.press("u")
		if !same(d.m.Bench(), benches[i]) {
			t.Errorf("undo %d differs", i)
		}
	}
	if !same(d.m.Bench(), start) {
		t.Error("undone to the end, the bench is not as at the start")
	}
	d.press("u")
	d.want("nothing to undo")
	for range benches {
		d.press("ctrl+r")
	}
	if !same(d.m.Bench(), end) {
		t.Error("all done again, the bench is not as at the end")
	}
	d.press("ctrl+r")
	d.want("nothing to redo")
}

func TestNothingOnAnEmptyBenchPanics(t *testing.T) {
	d := plainDesk(t, 80, 24)
	d.press("esc")
	d.want("The bench is empty")
	for _, c := range d.m.commands {
		for _, k := range c.Names {
			d.press(k, "esc")
		}
	}
	d.wantPins("")
}

func TestSettings(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("right")
	b := func() compare.Bench { return d.m.Bench() }
	d.press("s", "s")
	if b().System != units.CGS {
		t.Errorf("system %v", b().System)
	}
	d.press("s", "d")
	if b().System != units.US || b().Delta != compare.Amount {
		t.Errorf("system %v, delta %v", b().System, b().Delta)
	}
	d.want("+10 ✓")
	d.press("d")
	d.want("1.3×")
	d.press("d")
	d.wantNot("1.3× ✓")
	d.press("m")
	d.want("minimums only")
	d.want("37.0m")
	d.press("e", "ctrl+u")
	d.typeText("200")
	d.press("enter")
	d.want("expected one percentage from 0 to 25")
	d.press("ctrl+u")
	d.typeText("5 %")
	d.press("enter")
	if b().Band != 0.05 {
		t.Errorf("band %v", b().Band)
	}
	d.want("level within 5 %")
}

func TestRowUnit(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("right", "r")
	if u := d.m.Now().Bench.UnitOf(props.TensileStrength); u != units.MPa {
		t.Errorf("unit %v", u)
	}
	d.want("1 row own")
	seen := []units.Unit{units.KSI, units.MPa}
	for i := 0; d.m.Now().Bench.UnitOf(props.TensileStrength) != units.KSI; i++ {
		d.press("r")
		seen = append(seen, d.m.Now().Bench.UnitOf(props.TensileStrength))
		if i > 30 {
			t.Fatalf("r does not come back: %v", seen)
		}
	}
	for _, u := range []units.Unit{units.PSI, units.KgfPerMM2, units.NPerMM2} {
		if !slices.Contains(seen, u) {
			t.Errorf("r never shows %v", u)
		}
	}
	if slices.Contains(seen, units.Pa) {
		t.Error("r shows pascals, which are long strings of zeros")
	}
	d.press("r", "R")
	if len(d.m.Now().Bench.RowUnits) != 0 {
		t.Error("R did not take the unit back")
	}
	// A row with one unit says so.
	for i, l := range d.m.Table.Lines {
		if l.Property == props.HardnessBrinell {
			d.m.Rows.At = i
		}
	}
	d.press("r")
	d.want("one unit only")
}

func TestSense(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("right", "w", "l")
	if s, _ := d.m.Now().Bench.SenseOf(props.TensileStrength); s != props.Less {
		t.Errorf("sense %v", s)
	}
	d.want("less is better")
	d.press("w", "t", "enter") // takes the figure under the cursor
	if s, target := d.m.Now().Bench.SenseOf(props.TensileStrength); s != props.Near || int(units.KSI.FromSI(target)+0.5) != 41 {
		t.Errorf("sense %v, target %v", s, units.KSI.FromSI(target))
	}
	d.press("w", "t", "ctrl+u")
	d.typeText("300 kg")
	d.press("enter")
	d.want("expected")
	d.press("ctrl+u")
	d.typeText("300 MPa")
	d.press("enter")
	if _, target := d.m.Now().Bench.SenseOf(props.TensileStrength); target != 300e6 {
		t.Errorf("target %v", target)
	}
	d.press("w", "m")
	if len(d.m.Now().Bench.Senses) != 0 {
		t.Error("the default sense is kept as a change")
	}
}

func TestFilters(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	all := len(d.m.Table.Lines)
	d.press("f")
	d.want("rows with nothing to compare hidden")
	d.want(" Yield ") // only the baseline has none
	d.wantNot("Machining")
	if n := len(d.m.Table.Lines); n >= all {
		t.Errorf("%d rows with the empty ones hidden, %d with all", n, all)
	}
	d.press("f")
	d.want("level rows hidden")
	d.press("f")
	d.want("rows level or with nothing to compare hidden")
	d.press("f")
	d.want("all rows")
	if n := len(d.m.Table.Lines); n != all {
		t.Errorf("%d rows at the end, %d at the start", n, all)
	}
	// A filter that hides everything says so.
	d = plainDesk(t, 80, 24, "w1-f-sand", "w1-t6-sand")
	d.m.Change(func(b *compare.Bench) { b.Only = []props.PropertyID{props.Density}; b.HideLevel = true })
	d.press("left")
	d.want("The filter hides every row")
	d.press("enter", "w", "r", "G", "pgdown", "Y", "c", "enter")
	d.fits()
}

func TestTemperatures(t *testing.T) {
	d := plainDesk(t, 120, 40, "black-30", "w1-t6-pm")
	d.press("right", "E")
	d.typeText("68 to 400 ksi")
	d.press("enter")
	d.want("expected")
	d.press("ctrl+u")
	d.typeText("70")
	d.press("enter")
	d.want("two temperatures are needed")
	d.press("ctrl+u")
	d.typeText("68-400 F")
	d.press("enter")
	d.want("expansion 68–400 °F")
	d.press("S")
	d.typeText("300")
	d.press("enter")
	d.want("at 300 °F")
	d.press("s")
	d.want("at 149 °C")
	d.want("expansion 20–204 °C")
	d.press("S", "ctrl+u", "enter")
	d.want("strength and elongation at room temperature")
	d.press("E", "ctrl+u", "enter")
	if d.m.Now().Bench.Service != nil || d.m.Now().Bench.Range != nil {
		t.Error("an empty text does not take the temperature away")
	}
}

func same(a, b compare.Bench) bool { return call.Call{Bench: a}.Same(call.Call{Bench: b}) }
