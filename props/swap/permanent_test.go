package swap

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"alongside/data"
)

// The paper gives castings of AC2B, near to 319.0, up to 0.0013 mm/mm of growth when
// heated as cast to 250 °C; SAE J469 zinc No. 3 0.0005 to 0.0006 in/in of shrinkage.
func TestPermanentGrowth(t *testing.T) {
	v := line(t, catalogSwap(t, "service=70..250 F|length=10 in", "gray-30", "319-f-sand"), "growth.permanent").Value
	if v.Lo != 0 || math.Abs(v.Hi-0.013) > 1e-9 || !v.Range {
		t.Errorf("319-F, 10 in: %v to %v, want 0 to 0.013 in", v.Lo, v.Hi)
	}
	v = line(t, catalogSwap(t, "length=10 in", "gray-30", "zn-3-die"), "growth.permanent").Value
	if math.Abs(v.Lo+0.006) > 1e-9 || math.Abs(v.Hi+0.005) > 1e-9 {
		t.Errorf("zinc No. 3, 10 in: %v to %v, want −0.006 to −0.005 in", v.Lo, v.Hi)
	}
	there := line(t, catalogSwap(t, "service=70..250 F|length=10 in", "zn-3-die", "319-f-sand"), "growth.permanent")
	back := line(t, catalogSwap(t, "service=70..250 F|length=10 in", "319-f-sand", "zn-3-die"), "growth.permanent")
	if there.Value.String() != back.Base.String() || there.Base.String() != back.Value.String() {
		t.Errorf("there %v of %v, back %v of %v", there.Value, there.Base, back.Value, back.Base)
	}
	for _, tt := range []struct{ given, pin, reason, need string }{
		{"service=70..500 F|length=10 in", "319-f-sand", "on file up to 482 °F only", ""},
		{"service=70..150 F|length=10 in", "319-f-sand", "on file below", ""},
		{"length=10 in", "319-f-sand", "", needRange.text},
		{"service=70..250 F", "319-f-sand", "", needLength.text},
	} {
		l := catalogSwap(t, tt.given, "gray-30", tt.pin).Line("growth.permanent")
		if l == nil || l.Done() || l.Need != tt.need || !strings.Contains(l.Reason, tt.reason) {
			t.Errorf("%s: %+v", tt.given, l)
		}
	}
	for _, pin := range []string{"319-t6-sand", "a380-f-die", "242-t571-sand"} {
		if l := catalogSwap(t, "service=70..250 F|length=10 in", "gray-30", pin).Line("growth.permanent"); l != nil {
			t.Errorf("%s: %+v", pin, l)
		}
	}
}

// The alloys whose growth is published are found by their JIS grade.
func TestAlloysThatGrowAsCast(t *testing.T) {
	var have []string
	for _, m := range data.Catalog().Materials {
		if growsAsCast(m) && !slices.Contains(have, m.Alloy.ID) {
			have = append(have, m.Alloy.ID)
		}
	}
	slices.Sort(have)
	if want := []string{"319", "356"}; !slices.Equal(have, want) {
		t.Errorf("as cast grow %v, want %v", have, want)
	}
}

// 15.1 MPa stretches zinc No. 3 by 0.2 % in 5 years at 25 °C; the watch-out says so too.
func TestCreepOfZinc(t *testing.T) {
	l := line(t, catalogSwap(t, "stress=15.1 MPa", "a380-f-die", "zn-3-die"), "creep.reserve")
	if math.Abs(l.Value.Mid-1) > 1e-9 || l.Base != nil {
		t.Errorf("reserve %v, today %v, want 1 and none", l.Value, l.Base)
	}
	if l := catalogSwap(t, "stress=5 MPa|service=20..60 C", "a380-f-die", "zn-3-die").Line("creep.reserve"); l == nil || !strings.Contains(l.Reason, "on file at 77 °F only") {
		t.Errorf("hot: %+v", l)
	}
	if l := catalogSwap(t, "stress=5 MPa", "gray-30", "a380-f-die").Line("creep.reserve"); l != nil {
		t.Errorf("no zinc: %+v", l)
	}
	text, err := os.ReadFile("../../data/process/watch/temperature.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, fact := range []string{"15.1 MPa in tension gives 0.2 % strain in 5 years at 25 °C", "No. 3 and No. 5 shrink by 0.0005 to 0.0006 in/in", "grew by up to 0.0010 to 0.0013 mm/mm when heated to 250 °C"} {
		if !strings.Contains(string(text), fact) {
			t.Errorf("the watch-outs do not say %q", fact)
		}
	}
}
