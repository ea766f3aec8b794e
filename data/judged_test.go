package data

import (
	"strings"
	"testing"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/spoken"
	"alongside/units"
)

// Comparisons that once contradicted themselves, misled or refused what is
// certain. Bound tells whether the verdict is a bound.
func TestComparisonsThatWentWrong(t *testing.T) {
	for _, tt := range []struct {
		pin, baseline string
		property      props.PropertyID
		basis         compare.BasisSetting
		want          compare.Verdict
		bound         bool
	}{
		{"a356-t6-sand", "c355-t6-sand", props.TensileStrength, compare.TypicalFirst, compare.Misses, false},
		{"c355-t6-sand", "a356-t6-sand", props.TensileStrength, compare.TypicalFirst, compare.Beats, false},
		{"295-t7-sand", "gray-30", props.TensileStrength, compare.TypicalFirst, compare.Misses, false},
		// The first question of every call from iron to aluminum.
		{"a356-t6-sand", "gray-30", props.ThermalExpansion, compare.TypicalFirst, compare.Misses, true},
		{"a356-t6-pm", "gray-30", props.HardnessBrinell, compare.TypicalFirst, compare.Misses, true},
		{"a380-f-die", "gray-30", props.FatigueStrength, compare.TypicalFirst, compare.Beats, true},
		// A wide range of damping of every class says nothing of two classes; ranges
		// that touch do not overlap.
		{"gray-20", "gray-60", props.DampingCapacity, compare.TypicalFirst, compare.Overlaps, false},
		{"ductile-65-45-12", "gray-30", props.DampingCapacity, compare.TypicalFirst, compare.Misses, false},
		// The stated offset goes before a foundry page that leaves it out.
		{"535-f-sand", "c86500-sand", props.YieldStrength, compare.TypicalFirst, compare.Misses, true},
		// Conductivity at 70 and at 212 °F, 2.2 times apart.
		{"c95800-sand", "cf8m", props.ThermalConductivity, compare.TypicalFirst, compare.Beats, true},
		// One heat of a textbook is not the grade.
		{"a356-t6-pm", "ductile-60-40-18", props.Elongation, compare.TypicalFirst, compare.Misses, false},
	} {
		c := against(t, tt.pin, tt.baseline, tt.property, tt.basis)
		if c.Verdict != tt.want || (c.Bound != nil) != tt.bound {
			t.Errorf("%s against %s, %v: %v (%s), bound %v; want %v", tt.pin, tt.baseline, tt.property, c.Verdict, c.Why(), c.Bound, tt.want)
		}
	}
}

// A mean over 68–572 °F is set against another such mean; over 68–212 °F it is only
// a bound, which does not turn the verdict round.
func TestAWideMeanDoesNotStandForANarrowOne(t *testing.T) {
	q := compare.NewBench().Question
	brass, alloy := material(t, "c46400-o60-wrought"), material(t, "333-f-pm")
	if p := q.Pair(brass, alloy, props.ThermalExpansion); p.Verdict != compare.Beats || p.Bound != nil {
		t.Errorf("over 68–572 °F: %v, %s", p.Verdict, p.Why())
	}
	q.Range = &[2]float64{20, 100}
	if p := q.Pair(brass, alloy, props.ThermalExpansion); p.Verdict != compare.Overlaps {
		t.Errorf("over 68–212 °F: %v, %s", p.Verdict, p.Why())
	}
}

// What the baseline shows is what a pin was set against: 535.0 sand at its minimum
// beside its permanent mold and T5, whose minimums alone are on file.
func TestTheBaselineShowsWhatWasCompared(t *testing.T) {
	b := compare.NewBench()
	for _, id := range []string{"535-f-sand", "535-f-pm", "535-t5-sand"} {
		b.Pin(material(t, id))
	}
	b.Only = []props.PropertyID{props.TensileStrength}
	row := compare.Compare(b).Rows[0]
	if f := row.Cells[0].Figure; f.Basis != props.Minimum || f.Value.Lo != 35 || row.Cells[1].Against != f || row.Cells[2].Against != f {
		t.Errorf("the baseline shows %v %v", f.Value, f.Basis)
	}
}

// Limits are judged under the rules of the bench.
func TestLimitsThatWentWrong(t *testing.T) {
	c := Catalog()
	for _, tt := range []struct {
		id, need string
		want     needs.Status
	}{
		{"a356-t6-sand", "brinell >= 70 HB 500/10", needs.Met},
		{"gray-30", "brinell >= 80 HBW 10/500", needs.Met},           // 210 at 3000 kgf
		{"a356-t6-pm", "brinell >= 80 HBW 10/3000", needs.Undecided}, // 70–100 at 500 kgf
		{"a356-t6-pm", "brinell >= 180 HBW 10/3000", needs.NotMet},
		{"a356-t6-pm", "tensile 30-40 ksi", needs.Partly}, // minimum 37, typical 41
		{"malleable-32510", "brinell <= 156 HB", needs.Met},
	} {
		read := spoken.Read(tt.need, c, units.US, nil)
		list, err := spoken.Read(tt.need, c, units.US, nil).Limits()
		if err != nil || len(list) != 1 {
			t.Errorf("%q: %v, %v", tt.need, err, read)
			continue
		}
		if j := needs.Judge(material(t, tt.id), &list[0]); j.Status != tt.want {
			t.Errorf("%s, %s: %v (%s), want %v", tt.id, tt.need, j.Status, j.Note, tt.want)
		}
	}
	list, err := spoken.Read("family = aluminum; tensile >= 40 ksi", c, units.US, nil).Limits()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range needs.Find(c.Materials, list, 0, true).Met {
		if !strings.Contains(r.Material.Alloy.Family.ID, "aluminum") {
			t.Errorf("%s is no aluminum", r.Material.ID)
		}
	}
}

// "Better than" says of every metal what the bench says of it.
func TestBetterThanAgreesWithTheBench(t *testing.T) {
	c := Catalog()
	b := compare.NewBench()
	rows := []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation, props.HardnessBrinell, props.FatigueStrength,
		props.ElasticModulus, props.Density, props.ThermalExpansion, props.ThermalConductivity, props.ElectricalConductivity}
	for _, id := range []string{"gray-30", "c95400-sand", "a380-f-die", "6061-t6-wrought"} {
		base := material(t, id)
		for _, n := range needs.BetterThan(&b, base, rows) {
			for _, m := range c.Materials {
				good := needs.Judge(m, &n).Status.Good()
				v := b.Pair(m, base, n.Property).Verdict
				if better := v == compare.Beats || v == compare.Level || m == base; good != better {
					t.Errorf("%s, %v better than %s: %v, but the bench says %v", m.ID, n.Property, id, good, v)
				}
			}
		}
	}
}
