package props

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"alongside/units"
)

func figure(t *testing.T, p PropertyID, value string, b Block, words ...string) Figure {
	t.Helper()
	q, err := units.Parse(value)
	if err != nil {
		t.Fatal(err)
	}
	if b.Source == nil {
		b.Source = &Source{ID: "S", Kind: "standard"}
	}
	c := condition(t, words...)
	return Figure{Property: p, Value: q, Cond: &c, Block: &b}
}

// A material has its own figures and those of its alloy and family that admit it.
func TestInheritance(t *testing.T) {
	family := &Family{ID: "aluminum", Name: "aluminum casting alloy", Group: "light", None: []Absence{{TransverseLoad, "not cast iron"}}}
	a := &Alloy{ID: "w", Name: "W.0", Kind: "blue alloy", Family: family, Class: "plain"}
	m := &Material{ID: "w-t6-sand", Alloy: a, Temper: "T6", Process: Sand}
	die := &Material{ID: "w-f-die", Alloy: a, Temper: "F", Process: Die}
	m.Stated = []Figure{figure(t, TensileStrength, "30 ksi", Block{Known: Read})}
	a.Stated = []Figure{
		figure(t, TensileStrength, "31 ksi", Block{Known: Read, Inherited: true, Tempers: []string{"T6"}}),
		figure(t, TensileStrength, "32 ksi", Block{Known: Read, Inherited: true, Processes: []Process{Die}}),
		figure(t, RatingWeldability, "2", Block{Inherited: true, Processes: []Process{PermanentMold}}),
	}
	a.Stated[2].Value.Unit = units.RatingNumber
	family.Stated = []Figure{
		figure(t, PoissonRatio, "0.33", Block{Family: true, Inherited: true, Classes: []string{"plain"}}),
		figure(t, PoissonRatio, "0.30", Block{Family: true, Inherited: true, Classes: []string{"fancy"}}),
	}
	texts := func(m *Material, p PropertyID) (out []string) {
		for _, f := range m.Figures(p) {
			out = append(out, f.Value.String())
		}
		return out
	}
	for _, test := range []struct {
		m    *Material
		p    PropertyID
		want []string
	}{
		{m, TensileStrength, []string{"30 ksi", "31 ksi"}},
		{die, TensileStrength, []string{"32 ksi"}},
		{m, PoissonRatio, []string{"0.33"}},
		{m, RatingWeldability, []string{"2"}}, // printed for the permanent mold castings
		{die, RatingWeldability, nil},         // of a die casting another thing
	} {
		if have := texts(test.m, test.p); !slices.Equal(have, test.want) {
			t.Errorf("%s, %s: have %q, want %q", test.m.ID, test.p, have, test.want)
		}
		if test.m.Has(test.p) != (len(test.want) > 0) {
			t.Errorf("%s, %s: Has", test.m.ID, test.p)
		}
	}
	if m.Name() != "W.0-T6 sand" || die.Name() != "W.0-F die" || (&Material{Alloy: a, Temper: "cold drawn", Process: Wrought}).Name() != "W.0 cold drawn wrought" {
		t.Errorf("%q, %q", m.Name(), die.Name())
	}
	if m.Absent(TransverseLoad) != "not cast iron" || m.Absent(Density) != "" {
		t.Error("absence of the family")
	}
	if !a.Is("aluminum") || !a.Is("blue alloy") || !a.Is("alloy") || a.Is("blue") || !family.Among([]string{"light"}) || family.Among([]string{"heavy"}) {
		t.Error("kind or group")
	}
	if m.Remembered() || !(&Material{Alloy: &Alloy{Family: &Family{}}, Stated: []Figure{figure(t, Density, "0.1 lb/in3", Block{})}}).Remembered() {
		t.Error("remembered")
	}
}

// Figures of one property stand in the order that Figures promises.
func TestFiguresInOrder(t *testing.T) {
	trade, agrees := &Source{ID: "T", Kind: "trade"}, &Source{ID: "A"}
	stated := []Figure{
		figure(t, TensileStrength, "1 ksi", Block{Known: Read}, "at 300 °F"),
		figure(t, TensileStrength, "2 ksi", Block{Known: Checked, Source: trade}),
		figure(t, TensileStrength, "3 ksi", Block{}),
		figure(t, TensileStrength, "4 ksi", Block{}),
		figure(t, TensileStrength, "5 ksi", Block{Known: Read}),
		figure(t, TensileStrength, "6 ksi", Block{Known: Read}),
		figure(t, TensileStrength, "7 ksi", Block{First: "a reason"}),
		figure(t, TensileStrength, "2.5 ksi", Block{Known: Checked, Source: trade, First: "a reason"}),
	}
	stated[3].Agrees = agrees
	stated[5].Was = &Figure{}
	m := &Material{Alloy: &Alloy{Family: &Family{}}, Stated: stated}
	var have []float64
	for _, f := range m.Figures(TensileStrength) {
		have = append(have, f.Value.Lo)
	}
	if want := []float64{7, 6, 5, 4, 3, 2.5, 2, 1}; !slices.Equal(have, want) {
		t.Errorf("have %v, want %v", have, want)
	}
	if stated[3].Known() != Agreed || stated[5].Known() != Checked || stated[2].Known() != Memory {
		t.Error("degrees of knowing")
	}
}

// NIST SP 811 (2008), 7.9 and B.7: a number stands for half a unit of its last
// digit; what a standard specifies is exact.
func TestBoundsOfFigures(t *testing.T) {
	typical, least := figure(t, TensileStrength, "37 ksi", Block{}), figure(t, TensileStrength, "37 ksi", Block{Basis: Minimum})
	if lo, hi := typical.Bounds(); lo != 36.5 || hi != 37.5 {
		t.Errorf("typical 37 ksi is %g to %g", lo, hi)
	}
	if lo, hi := least.Bounds(); lo != 37 || hi != 37 {
		t.Errorf("a minimum of 37 ksi is %g to %g", lo, hi)
	}
	most := figure(t, HardnessBrinell, "200 HB", Block{Basis: Maximum})
	if lo, hi := most.Bounds(); lo != 200 || hi != 200 {
		t.Errorf("a maximum of 200 HB is %g to %g", lo, hi)
	}
	// 1 psi = 6.894757 kPa, SP 811 appendix B.8.
	if lo, mid, hi := typical.SI(); math.Abs(mid/6.894757e6-37) > 1e-5 || !(lo < mid && mid < hi) {
		t.Errorf("%g, %g, %g", lo, mid, hi)
	}
}

// The words of data files are read as they are written.
func TestWordsReadBack(t *testing.T) {
	for i, name := range BasisNames() {
		if b, ok := ParseBasis(name); !ok || int(b) != i || b.String() != name || b.Phrase() == "" {
			t.Errorf("basis %q", name)
		}
	}
	if _, ok := ParseBasis("guess"); ok {
		t.Error("guess is no basis")
	}
	phrases := map[Basis]string{Typical: "typical", Minimum: "specified minimum", Maximum: "specified maximum", Design: "design allowable", House: "house value", Estimated: "estimated minimum"}
	for b, want := range phrases {
		if b.Phrase() != want {
			t.Errorf("%s: %q", b, b.Phrase())
		}
	}
	for _, word := range ProcessWords() {
		if p, ok := ParseProcess(word); !ok || p.ID() != word && p.String() != word || p.Words() == "" {
			t.Errorf("process %q", word)
		}
	}
	if _, ok := ParseProcess("forged"); ok || len(ProcessIDs()) != int(processCount)-1 {
		t.Error("processes")
	}
	for _, id := range PropertyIDs() {
		if p, ok := PropertyNamed(id); !ok || p.String() != id || p.OfCurve() {
			t.Errorf("property %q", id)
		}
	}
	if _, ok := PropertyNamed("luck"); ok || !TensileRetained.OfCurve() || !slices.Contains(GaugeLengths(), "2 in") {
		t.Error("properties")
	}
	if Mechanical.String() != "Mechanical" || More.String() != "more" || Checked.String() != "checked" {
		t.Error("names")
	}
}

func TestUnknownProperty(t *testing.T) {
	for typed, want := range map[string]string{"yeild strength": "nearest: yield_strength", "xyzzy": "use one of: tensile_strength"} {
		_, err := ResolveProperty(typed)
		var unknown *UnknownProperty
		if !errors.As(err, &unknown) || unknown.Typed != typed || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", typed, err)
		}
	}
}
