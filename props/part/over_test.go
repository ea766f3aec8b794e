package part

import (
	"strings"
	"testing"

	"alongside/units"
)

// What is typed now goes over what was said before; facts and prices of both hold.
func TestOver(t *testing.T) {
	before := Part{Mass: "1 lb", Wall: "1/4 in", With: Threads, Price: map[string]string{"a": "1 USD/lb", "b": "2 USD/lb"}}
	p := before.Over(Part{Mass: "2 lb", With: PressFit, Price: map[string]string{"b": "3 USD/lb"}})
	if p.Mass != "2 lb" || p.Wall != "1/4 in" || p.With != Threads|PressFit || p.Price["a"] != "1 USD/lb" || p.Price["b"] != "3 USD/lb" {
		t.Errorf("%+v", p)
	}
	if before.Mass != "1 lb" || before.Price["b"] != "2 USD/lb" || before.With != Threads {
		t.Errorf("the part before was changed: %+v", before)
	}
	if q := (Part{}).Over(Part{Price: map[string]string{"c": "1 USD/lb"}}); q.Price["c"] != "1 USD/lb" {
		t.Errorf("%+v", q)
	}
}

// ITS-90: 0 °C is 32 °F, 100 °C is 212 °F.
func TestTemperatures(t *testing.T) {
	if at, err := Temperature("212 F", units.NoUnit); err != nil || at < 99.999 || at > 100.001 {
		t.Errorf("212 F is %g °C, %v", at, err)
	}
	if at, err := TemperatureRange("0..100 C", units.NoUnit); err != nil || at != [2]float64{0, 100} {
		t.Errorf("%v, %v", at, err)
	}
	for typed, want := range map[string]string{"100..200 C": "one temperature is needed", "≥ 300 °F": "a limit is not a temperature", "9000 F": "every casting metal is molten", "x": "x"} {
		if _, err := Temperature(typed, units.NoUnit); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", typed, err)
		}
	}
	if _, err := TemperatureRange("100 C", units.NoUnit); err == nil || !strings.Contains(err.Error(), "two temperatures are needed") {
		t.Error(err)
	}
}

// Each fact and medium is read by its id and written in words.
func TestFactsAndMediaInWords(t *testing.T) {
	for _, f := range AllFacts() {
		var p Part
		if err := p.Set(nil, FieldWith, f.ID()); err != nil || p.With != f || f.String() == "" {
			t.Errorf("%s: %v, %q", f.ID(), err, f)
		}
	}
	if both := Threads | PressFit; !strings.Contains(both.String(), ", ") || both.ID() != "" {
		t.Errorf("%q, %q", both, both.ID())
	}
	var p Part
	if err := p.Set(nil, FieldWith, "pres-fit"); err == nil || !strings.Contains(err.Error(), "did you mean press-fit?") {
		t.Error(err)
	}
	if err := p.Set(nil, FieldWith, "xyzzyxyzzy"); err == nil || strings.Contains(err.Error(), "did you mean") {
		t.Error(err)
	}
	for _, id := range MediaIDs() {
		m, ok := ParseMedia(id)
		if !ok || m.String() != strings.ReplaceAll(id, "-", " ") || MediaOf(m.Facts())&^m != 0 && m.Facts()&(SeaWater|PotableWater) != 0 {
			t.Errorf("%s: %q", id, m)
		}
	}
	if _, ok := ParseMedia("soup"); ok || MediaOf(SeaWater).String() != "sea water" || MediaOf(Fluid|Outdoors) != 0 {
		t.Error("media of facts")
	}
}

func TestPricesOfAPart(t *testing.T) {
	c := catalogOf(t)
	var p Part
	for _, typed := range []string{"a1-sand=0.60 USD/lb", "s1-hard-wrought = 1.20/lb"} {
		if err := p.Set(c, FieldPrice, typed); err != nil {
			t.Fatal(err)
		}
	}
	if len(p.Price) != 2 || !strings.Contains(p.Summary(), "a1-sand at 0.60 USD/lb") {
		t.Errorf("%v, %s", p.Price, p.Summary())
	}
	for typed, want := range map[string]string{"1.20/lb": "the material is missing", "nothing-99=1/lb": "no material", "a1-sand=-1/lb": "above zero", "a1-sand=1e30 USD/lb": "no metal has that price", "a1-sand=> 1 USD/lb": "a limit is not a price", "a1-sand=1 USD": ""} {
		if err := p.Set(c, FieldPrice, typed); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", typed, err)
		}
	}
	if err := p.Set(c, FieldPrice, "a1-sand="); err != nil || len(p.Price) != 1 {
		t.Errorf("%v, %v", p.Price, err)
	}
	if err := p.Set(c, FieldPrice, ""); err != nil || p.Price != nil {
		t.Errorf("%v, %v", p.Price, err)
	}
}

// Every field of words takes its words and refuses another, naming them; every size
// is read into the place that it has.
func TestEveryField(t *testing.T) {
	c := catalogOf(t)
	for _, f := range Fields() {
		info := f.Info()
		var p Part
		switch {
		case f == FieldPrice || f == FieldMate || f == FieldWith:
			continue
		case info.Words != nil:
			for _, w := range info.Words {
				if err := p.Set(c, f, w); err != nil || p.Get(f) != w {
					t.Errorf("%s %s: %v, have %q", f, w, err, p.Get(f))
				}
				if _, err := p.Read(c); err != nil {
					t.Errorf("%s %s: %v", f, w, err)
				}
			}
			if err := p.Set(c, f, "xyzzy"); err == nil || !strings.Contains(err.Error(), info.Words[0]) {
				t.Errorf("%s: %v", f, err)
			}
			continue
		}
		if err := p.Set(c, f, info.Example); err != nil || p.Get(f) != info.Example {
			t.Errorf("%s %s: %v", f, info.Example, err)
		}
		g, err := p.Read(c)
		if err != nil {
			t.Errorf("%s: %v", f, err)
		}
		if size := g.Size(f); (size != nil) != (info.size != nil) || size != nil && size.Unit.Dimension() != f.Dimension() {
			t.Errorf("%s: size %v", f, size)
		}
		if p.Summary() == "" && f != FieldDimension {
			t.Errorf("%s is not in the summary", f)
		}
	}
	for _, load := range []Case{Tie, Plate, Beam, FixedBeam} {
		if load.String() == "" {
			t.Errorf("%s has no words", string(load))
		}
	}
}
