package swap

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props"
	"alongside/props/compare"
	"alongside/props/part"

	"pgregory.net/rapid"
)

// The handbook table gives 356.0-T6 sand 23 and 20 ksi at 300 °F after 10 000 h and
// 33 and 24 ksi cold; MIL-HDBK-5J, figure 4.3.3.1.1(a), leaves AZ92A-T6 67.1 % after
// 1000 h at 300 °F and 70.1 % after half an hour.
func TestStrengthAtHeat(t *testing.T) {
	r := catalogSwap(t, "service=70..300 F|stress=5 ksi", "gray-30", "356-t6-sand")
	for id, want := range map[string]float64{
		"hot.kept.set": 100 * 20 / 24., "hot.kept.fracture": 100 * 23 / 33.,
		"hot.set": 20 * 20 / 24., "hot.fracture": 30 * 23 / 33., "hot.reserve.set": 20 * 20 / 24. / 5,
	} {
		if l := line(t, r, id); math.Abs(l.Value.Mid-want) > 1e-9*want {
			t.Errorf("%s is %v, want %v", id, l.Value.Mid, want)
		}
	}
	for hours, want := range map[string][2]float64{"1000 h": {67.1, 67.1}, "0.5 h": {70.1, 70.1}, "20 h": {67.1, 70.1}} {
		v := line(t, catalogSwap(t, "service=70..300 F|hours="+hours, "gray-30", "az92a-t6-sand"), "hot.kept.fracture").Value
		if math.Abs(v.Lo-want[0]) > 0.051 || math.Abs(v.Hi-want[1]) > 0.051 { // half of the last digit
			t.Errorf("AZ92A-T6 after %s keeps %v to %v %%, want %v", hours, v.Lo, v.Hi, want)
		}
	}
	if l := line(t, r, "hot.set"); l.Base != nil || !strings.Contains(strings.Join(l.Notes, "; "), "above room temperature") {
		t.Errorf("gray iron has no curve: %v, notes %q", l.Base, l.Notes)
	}
	for given, want := range map[string]string{
		"service=70..700 F":               "on file up to 600 °F only",
		"service=70..300 F|hours=20000 h": "the longest time at heat on file is 10 000 h",
	} {
		if l := catalogSwap(t, given, "gray-30", "356-t6-sand").Line("hot.kept.fracture"); l == nil || l.Done() || !strings.Contains(l.Reason, want) {
			t.Errorf("%s: %+v, want a reason with %q", given, l, want)
		}
	}
	if l := catalogSwap(t, "service=70..650 F", "gray-30", "6061-t6-wrought").Line("hot.kept.fracture"); l.Done() || !strings.Contains(l.Reason, "say the hours") {
		t.Errorf("the curve of the longest time ends before: %+v", l)
	}
	if l := line(t, catalogSwap(t, "service=70..650 F|hours=10 h", "gray-30", "6061-t6-wrought"), "hot.kept.fracture"); l.Value == nil {
		t.Errorf("after fewer hours it reaches farther: %+v", l)
	}
	for _, given := range []string{"service=-40..80 F", "mass=1 lb"} {
		if l := catalogSwap(t, given, "gray-30", "356-t6-sand").Line("hot.kept.set"); l != nil {
			t.Errorf("%s: there is the line %+v", given, l)
		}
	}
	if l := catalogSwap(t, "mass=1 lb", "gray-30", "356-t6-sand").Line("hot.set"); l == nil || l.Need != needRange.text {
		t.Errorf("without a service range: %+v", l)
	}
}

// metalsWithCurves are all whose strength is on file above room temperature.
func metalsWithCurves(p props.PropertyID) []*props.Material {
	w := work{bench: compare.NewBench()}
	return slices.DeleteFunc(slices.Clone(data.Catalog().Materials), func(m *props.Material) bool { return len(w.heatCurves(m, p)) == 0 })
}

// Of every metal on file the share at a published point is the published one, an
// interval holds its middle, and past the last point there is no answer.
func TestSharesKeptAreThePublished(t *testing.T) {
	for _, p := range []props.PropertyID{props.TensileStrength, props.YieldStrength} {
		metals := metalsWithCurves(p)
		if len(metals) < 15 {
			t.Fatalf("only %d metals with a curve", len(metals))
		}
		for _, m := range metals {
			w := work{bench: compare.NewBench()}
			last := 0.0
			for _, c := range w.heatCurves(m, p) {
				for _, at := range c.points {
					got, ok := c.at(at.at)
					if !ok || math.Abs(got.kept.mid-at.kept.mid) > 1e-9*at.kept.mid {
						t.Errorf("%s at %v °C: %v, want %v", m.ID, at.at, got.kept, at.kept)
					}
					last = max(last, at.at)
				}
			}
			if e := keptOf(t, m, p, last+sameHeat+1, ""); e.why == "" {
				t.Errorf("%s: an answer past %v °C: %v", m.ID, last, e.value)
			}
		}
	}
}

func TestSharesKeptHoldTheirMiddle(t *testing.T) {
	metals := metalsWithCurves(props.TensileStrength)
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(metals).Draw(t, "metal")
		celsius := rapid.Float64Range(roomTop+1, 500).Draw(t, "temperature")
		hours := rapid.Float64Range(0.1, 20000).Draw(t, "hours")
		e := keptOf(t, m, props.TensileStrength, celsius, fmt.Sprintf("%v h", hours))
		if e.why != "" {
			return
		}
		if v := e.value; !(0 < v.lo && v.lo <= v.mid && v.mid <= v.hi && v.hi < 130) {
			t.Fatalf("%s at %v °C after %v h keeps %v", m.ID, celsius, hours, v)
		}
		if len(e.figures) == 0 || len(e.notes) == 0 {
			t.Fatalf("%s: no figure or no hours told", m.ID)
		}
	})
}

// More hours at one heat never leave more, as far as the curves of the hardened
// aluminum and magnesium alloys go; they are read to about one percent.
func TestMoreHoursLeaveNoMore(t *testing.T) {
	c := data.Catalog()
	rapid.Check(t, func(t *rapid.T) {
		m := c.Material(rapid.SampledFrom([]string{"6061-t6-wrought", "7075-t6-wrought", "2014-t6-wrought", "az92a-t6-sand"}).Draw(t, "metal"))
		celsius := rapid.Float64Range(150, 200).Draw(t, "temperature")
		hours := rapid.Float64Range(0.5, 900).Draw(t, "hours")
		few, many := keptOf(t, m, props.TensileStrength, celsius, fmt.Sprintf("%v h", hours)), keptOf(t, m, props.TensileStrength, celsius, fmt.Sprintf("%v h", hours*rapid.Float64Range(1, 1000/hours).Draw(t, "times")))
		if few.why == "" && many.why == "" && (many.value.hi > few.value.hi+1 || many.value.lo > few.value.lo+1) {
			t.Fatalf("%s at %v °C: %v after fewer, %v after more", m.ID, celsius, few.value, many.value)
		}
	})
}

type fataler interface{ Fatal(args ...any) }

func keptOf(t fataler, m *props.Material, p props.PropertyID, celsius float64, hours string) expected {
	var given part.Part
	for f, v := range map[part.Field]string{part.FieldService: fmt.Sprintf("%v °C", celsius), part.FieldHours: hours} {
		if err := given.Set(data.Catalog(), f, v); err != nil {
			t.Fatal(err)
		}
	}
	g, err := given.Read(data.Catalog())
	if err != nil {
		t.Fatal(err)
	}
	w := work{Given: g, bench: compare.NewBench()}
	return w.kept(m, p)
}

// There and back: what one metal keeps does not depend on its side, and the ratios
// of the strength that is left are inverse.
func TestHeatThereAndBack(t *testing.T) {
	given := "service=70..300 F|hours=1000 h"
	there, back := catalogSwap(t, given, "6061-t6-wrought", "az92a-t6-sand"), catalogSwap(t, given, "az92a-t6-sand", "6061-t6-wrought")
	for _, id := range []string{"hot.kept.set", "hot.fracture"} {
		a, b := line(t, there, id), line(t, back, id)
		if a.Value.String() != b.Base.String() || a.Base.String() != b.Value.String() {
			t.Errorf("%s: %v of %v there, %v of %v back", id, a.Value, a.Base, b.Value, b.Base)
		}
		if a.Ratio != nil && math.Abs(a.Ratio.Mid*b.Ratio.Mid-1) > 1e-9 {
			t.Errorf("%s: ratios %v and %v", id, a.Ratio, b.Ratio)
		}
	}
}

// Aluminum and magnesium never keep more the hotter they are, on any curve on file.
func TestHotterLeavesNoMore(t *testing.T) {
	metals := slices.DeleteFunc(metalsWithCurves(props.TensileStrength), func(m *props.Material) bool {
		return m.Alloy.Family.Base != "Al" && m.Alloy.Family.Base != "Mg"
	})
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(metals).Draw(t, "metal")
		warmer := rapid.Float64Range(roomTop+1, 300).Draw(t, "temperature")
		hotter := warmer + rapid.Float64Range(1, 100).Draw(t, "more")
		a, b := keptOf(t, m, props.TensileStrength, warmer, ""), keptOf(t, m, props.TensileStrength, hotter, "")
		if a.why == "" && b.why == "" && (b.value.mid > a.value.mid+0.1 || b.value.hi > a.value.hi+0.1) {
			t.Fatalf("%s keeps %v at %v °C and %v at %v °C", m.ID, a.value, warmer, b.value, hotter)
		}
	})
}
