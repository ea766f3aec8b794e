package report

import (
	"math"
	"slices"
	"strings"
	"testing"

	"alongside/props"
	"alongside/props/compare"
	"alongside/units"
)

// text writes a card as one string, a line an item.
func (c *Card) text() string {
	var b strings.Builder
	b.WriteString(c.Title + "\n")
	for _, s := range c.Sections {
		b.WriteString("# " + s.Title + "\n")
		for _, i := range s.Items {
			b.WriteString(i.Label + ": " + i.Text + "\n")
		}
	}
	return b.String()
}

func TestCard(t *testing.T) {
	c := invented(t, "l30", "t1-f-sand")
	b := c.Bench
	for _, test := range []struct {
		property props.PropertyID
		pin      int
		want     []string
	}{
		{props.TensileStrength, 1, []string{
			"Tensile strength, T1.0-F sand",
			"figure: 27 ksi typical",
			"conditions: separately cast bar",
			"source: Invented handbook",
			"published by: Nobody, 2001 (handbook)",
			"table: Table 3",
			"known: from memory, not read: check it against the source",
			"stated for: T1.0-F sand",
			"27 ksi  ·  ", "186 MPa",
			"why this one: first in the order of the bench: typical",
			"against: Class L30 sand: 31 ksi typical",
			"verdict: misses the baseline: −4 ksi (−5 to −3), −13 %, 0.87×",
			"# Other figures on file, in order\n23.0 ksi: specified minimum",
			"UNS: Z00001",
			"also called: former tin one; EN 9999 TC-10000 (near)",
			"Cu 1.0–2.0  ·  Sn remainder",
		}},
		{props.ElasticModulus, 1, []string{"stated for: the alloy T1.0, every temper and process", "why this one: the only figure on file", "overlaps the baseline"}},
		{props.YieldStrength, 0, []string{"# No figure\n: this invented metal has no yield point", "id: l30"}},
		{props.HardnessBrinell, 1, []string{"verdict: unlike, counts in no total: "}},
		{props.Solidus, 0, []string{"# No figure\n: no figure on file"}},
		{props.TensileStrength, 0, []string{"verdict: the baseline"}},
	} {
		have := NewCard(&b, b.Pins[test.pin], test.property).text()
		for _, want := range test.want {
			if !strings.Contains(have, want) {
				t.Errorf("%v: no %q in\n%s", test.property, want, have)
			}
		}
	}
}

// With the bench set to minimums the card says that these come first, and of a
// figure nothing stands behind it says so.
func TestCardSaysWhyAFigureIsShown(t *testing.T) {
	c := invented(t, "l30", "t1-t6-pm")
	b := c.Bench
	have := NewCard(&b, b.Pins[1], props.TensileStrength).text()
	if !strings.Contains(have, "figure: 34.0 ksi specified minimum") || !strings.Contains(have, "shares basis and conditions") && !strings.Contains(have, "first in the order") {
		t.Error(have)
	}
	if !strings.Contains(have, "35–42 ksi: typical") {
		t.Errorf("the other figure is missing:\n%s", have)
	}
	b.Basis = compare.MinimumOnly
	if have := NewCard(&b, b.Pins[1], props.TensileStrength).text(); !strings.Contains(have, "specified minimums only, where there are any") || !strings.Contains(have, "35–42 ksi: typical") {
		t.Error(have)
	}
	trade := NewCard(&b, b.Pins[1], props.RatingMachinability).text()
	if !strings.Contains(trade, "common practice, no standard or handbook named") {
		t.Error(trade)
	}
}

// A material need not be pinned, and the bench stays as it is.
func TestCardOfAnUnpinnedMaterial(t *testing.T) {
	all := invented(t, "l30", "t1-f-sand")
	b := all.Bench
	b.Pins = b.Pins[:1:1]
	have := NewCard(&b, all.Bench.Pins[1], props.Density).text()
	if !strings.Contains(have, "beats the baseline") || len(b.Pins) != 1 {
		t.Errorf("%d pins\n%s", len(b.Pins), have)
	}
	empty := compare.NewBench()
	if have := NewCard(&empty, all.Bench.Pins[1], props.Density).text(); !strings.Contains(have, "verdict: the baseline") {
		t.Error(have)
	}
}

func TestBrief(t *testing.T) {
	c := invented(t, "l30", "t1-t6-pm")
	list := []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Density}
	if have := Brief(&c.Bench, c.Bench.Pins[0], list, Mark); !slices.Equal(have, []string{"31", "", "0.260"}) {
		t.Errorf("%q", have)
	}
	if have := Brief(&c.Bench, c.Bench.Pins[1], list[:2], Mark); !slices.Equal(have, []string{"34.0m", "24.0m"}) && !slices.Equal(have, []string{"35–42", "24.0m"}) {
		t.Errorf("%q", have)
	}
}

func TestRowUnits(t *testing.T) {
	c := invented(t, "l30", "t1-f-sand")
	for i := range c.Rows {
		row := &c.Rows[i]
		list := RowUnits(row)
		if list[0] != row.Property.Info().Units[0] {
			t.Errorf("%v begins with %v", row.Property, list[0])
		}
		seen := map[units.Unit]bool{}
		for _, u := range list {
			if seen[u] {
				t.Errorf("%v lists %v twice", row.Property, u)
			}
			seen[u] = true
		}
		if row.Property == props.TensileStrength && (!seen[units.MPa] || !seen[units.PSI] || seen[units.Pa] || seen[units.Mpsi]) {
			t.Errorf("tensile strength: %v", list)
		}
	}
}

func TestSettingsRead(t *testing.T) {
	for in, want := range map[string]float64{"2": 0.02, "2 %": 0.02, "0": 0, "2.5%": 0.025} {
		if have, err := ParseBand(in); err != nil || math.Abs(have-want) > 1e-12 {
			t.Errorf("band %q: %v, %v", in, have, err)
		}
	}
	for _, bad := range []string{"", "-1", "26", "1-2", "2 ksi", "about 2", "x"} {
		if v, err := ParseBand(bad); err == nil {
			t.Errorf("band %q: %v", bad, v)
		}
	}
	// 300 °F is 148.9 °C, 68 °F is 20 °C (exact: 5/9·(F − 32)).
	if at, err := ParseService("300", units.US); err != nil || math.Abs(*at-1340.0/9) > 1e-9 {
		t.Errorf("300 in US units: %v, %v", at, err)
	}
	if at, err := ParseService("149 C", units.US); err != nil || math.Abs(*at-149) > 1e-9 {
		t.Errorf("149 C: %v, %v", at, err)
	}
	if at, err := ParseService("  ", units.SI); err != nil || at != nil {
		t.Errorf("empty: %v, %v", at, err)
	}
	if r, err := ParseRange("68-212 °F", units.SI); err != nil || math.Abs(r[0]-20) > 1e-9 || math.Abs(r[1]-100) > 1e-9 {
		t.Errorf("68-212 °F: %v, %v", r, err)
	}
	b := compare.NewBench()
	b.Range = &[2]float64{20, 100}
	if have := RangeText(&b); have != "68–212 °F" {
		t.Error(have)
	}
	for _, bad := range []string{"300", ">= 20", "20–100 ksi", "x"} {
		if r, err := ParseRange(bad, units.SI); err == nil {
			t.Errorf("range %q: %v", bad, r)
		}
	}
	for _, bad := range []string{"20–100", ">= 20", "3 ksi"} {
		if at, err := ParseService(bad, units.SI); err == nil {
			t.Errorf("service %q: %v", bad, *at)
		}
	}
}
