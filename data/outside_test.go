package data_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/units"
)

// The catalog is checked from outside: testdata/checks/outside.csv holds
// published figures from books that are not the catalog's own source for what
// they are compared with. See the README beside it.

var checks = filepath.Join("..", "testdata", "checks")

// outside is one row of outside.csv.
type outside struct {
	line, material, basis, property, value, source, known, kin string
	figure                                                     *props.Figure
}

func (o *outside) String() string {
	return fmt.Sprintf("outside.csv:%s: %s, %s %s: %s (%s)", o.line, o.material, o.basis, o.property, o.value, o.source)
}

// table reads a CSV file and checks its header.
func table(t *testing.T, name, header string) [][]string {
	t.Helper()
	f, err := os.Open(filepath.Join(checks, name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if have := strings.Join(rows[0], ","); have != header {
		t.Fatalf("%s: columns %s, want %s", name, have, header)
	}
	return rows[1:]
}

// readOutside reads the rows. Each is put into the form of a data file and
// read by the catalog's own loader, so that value, unit and conditions go
// through the same checks as the catalog's figures.
func readOutside(t *testing.T, c *catalog.Catalog) (rows []*outside, same map[string][]string) {
	t.Helper()
	var in strings.Builder
	same = map[string][]string{}
	titles := map[string]bool{}
	for _, r := range table(t, "sources.csv", "id,title,publisher,edition,kind,same") {
		same[r[0]] = strings.Fields(r[5])
		titles[r[0]] = r[1] != ""
		fmt.Fprintf(&in, "[[source]]\nid = %q\ntitle = %q\nkind = %q\n", "outside "+r[0], r[1], r[4])
	}
	in.WriteString("[[family]]\nid = \"outside\"\nname = \"checks\"\n[[alloy]]\nid = \"outside\"\nname = \"outside\"\nfamily = \"outside\"\n")
	for i, r := range table(t, "outside.csv", "material,basis,property,value,source,locator,known,kin,note") {
		o := &outside{fmt.Sprint(i + 2), r[0], r[1], r[2], r[3], r[4], r[6], r[7], nil}
		rows = append(rows, o)
		if !titles[o.source] || r[5] == "" || !slices.Contains([]string{"own", "sister", "reprint"}, o.kin) {
			t.Errorf("%v: source %q without a title in sources.csv, no locator, or kin %q", o, o.source, o.kin)
		}
		fmt.Fprintf(&in, "[[alloy.material]]\nid = \"row-%d\"\n[[alloy.material.figures]]\nbasis = %q\nsource = %q\nknown = %q\n%s = %q\n",
			i, o.basis, "outside "+o.source, o.known, o.property, o.value)
	}
	read, err := catalog.LoadFiles(c, []catalog.File{{Name: "outside.csv", Content: []byte(in.String())}})
	if err != nil {
		t.Fatal(err)
	}
	for i, o := range rows {
		o.figure = &read.Material(fmt.Sprintf("row-%d", i)).Stated[0]
	}
	return rows, same
}

// tolerance is how far two typical figures of one metal may lie apart, as a
// fraction of the catalog's, after the rounding of both. It is the scatter
// between published tables, which rest on different lots and bars: tensile
// properties of cast bars repeat within about 10 %, elongation far worse;
// density and modulus belong to the metal and repeat within 3 %.
func tolerance(p props.PropertyID) float64 {
	switch p {
	case props.Elongation, props.ReductionOfArea, props.ImpactCharpyUnnotched:
		return 0.25
	case props.Density, props.ElasticModulus:
		return 0.03
	case props.ThermalExpansion, props.SpecificHeat, props.ShearModulus, props.PoissonRatio:
		return 0.05
	case props.ThermalConductivity, props.ElectricalConductivity:
		return 0.08
	}
	return 0.10
}

// agrees: a specified limit has to be the same to the printed digits of both,
// a typical figure within the tolerance; of ranges, that they meet.
func agrees(o, f *props.Figure) bool {
	// As printed, not as limits: a textbook rounds the converted minimum.
	olo, ohi := printed(o)
	flo, fhi := printed(f)
	_, mid, _ := f.SI()
	slack := 0.0
	if f.Basis == props.Typical {
		slack = tolerance(f.Property) * math.Abs(mid)
	}
	return olo <= fhi+slack && flo <= ohi+slack
}

// alike reports whether two figures describe the same test. What one side
// does not state does not keep them apart; class and section do, unless the
// outside figure names none and the catalog's is the only kind.
func alike(o, f *props.Figure) bool {
	a, b := o.Cond, f.Cond
	close := func(x, y float64) bool { return math.Abs(x-y) <= 7 } // 200 °F and 100 °C are one end
	switch {
	case o.Property != f.Property || o.Basis != f.Basis || a.Class != b.Class:
		return false
	case a.Section != "" && a.Section != b.Section:
		return false
	case b.HasAt && !close(b.AtC, 25), b.Hours != a.Hours:
		return false
	case a.Offset != 0 && b.Offset != 0 && (a.Offset != b.Offset || a.UnderLoad != b.UnderLoad):
		return false
	case a.Load != 0 && b.Load != 0 && a.Load/(a.Ball*a.Ball) != b.Load/(b.Ball*b.Ball):
		return false
	case a.Cycles != 0 && b.Cycles != 0 && a.Cycles != b.Cycles:
		return false
	case a.HasRange && b.HasRange:
		// Means from 0 °C (32 °F) and from 20 °C to the same end differ
		// by less than the tolerance.
		return math.Abs(a.FromC-b.FromC) <= 21 && close(a.ToC, b.ToC)
	case b.HasRange:
		return b.FromC >= -1 && b.ToC <= 101 // "room temperature"
	}
	return true
}

// counterpart is the catalog's figure that a row is compared with: the first
// one shown that describes the same test and does not stand in the same book.
// A standard may set a limit in inch-pounds and another in metric units; it
// agrees when either does.
func counterpart(m *props.Material, o *outside, same []string) (found *props.Figure) {
	for _, f := range m.Figures(o.figure.Property) {
		switch {
		case !alike(o.figure, f) || slices.Contains(same, f.Source.ID):
		case found == nil:
			found = f
		case f.Basis != props.Typical && f.Source == found.Source && f.Value.Unit != found.Value.Unit && agrees(o.figure, f):
			return f
		}
	}
	return found
}

func TestOutsideFigures(t *testing.T) {
	c, err := catalog.Load(os.DirFS("."))
	if err != nil {
		t.Fatal(err)
	}
	rows, same := readOutside(t, c)
	type disagreement struct{ outside, catalog, why string }
	listed := map[string]disagreement{}
	for _, r := range table(t, "disagreements.csv", "material,basis,property,source,outside,catalog,why") {
		if r[6] == "" {
			t.Errorf("disagreements.csv: %s %s: no explanation", r[0], r[2])
		}
		listed[strings.Join(r[:4], " ")] = disagreement{r[4], r[5], r[6]}
	}
	explained := len(listed)
	agreed, kin, known := 0, map[string]int{}, map[string]int{}
	seen := map[string]bool{}
	for _, o := range rows {
		m := c.Material(o.material)
		if m == nil {
			t.Errorf("%v: the catalog has no such material", o)
			continue
		}
		key := strings.Join([]string{o.material, o.basis, o.property, o.source}, " ")
		if seen[key] && o.figure.Cond.Class == "" {
			t.Errorf("%v: the row stands twice", o)
		}
		seen[key] = true
		f := counterpart(m, o, same[o.source])
		if f == nil {
			t.Errorf("%v: the catalog has no figure of another source for the same test", o)
			continue
		}
		kin[o.kin]++
		known[o.known]++
		if agrees(o.figure, f) {
			agreed++
			continue
		}
		have := disagreement{o.value, fmt.Sprintf("%v (%s)", f.Value, f.Source.ID), ""}
		want, ok := listed[key]
		delete(listed, key)
		if want.why = ""; !ok || have != want {
			t.Errorf("%v: the catalog shows %s; off by %.1f %%. If the catalog is right, explain it in disagreements.csv:\n%s,%q,%q,",
				o, have.catalog, off(o.figure, f), strings.ReplaceAll(key, " ", ","), have.outside, have.catalog)
		}
	}
	for key := range listed {
		t.Errorf("disagreements.csv: %s: no disagreement any more; delete the row", key)
	}
	compared := kin["own"] + kin["sister"] + kin["reprint"]
	if compared < 150 {
		t.Errorf("only %d figures compared", compared)
	}
	t.Logf("%d figures compared, %d agreed, %d explained", compared, agreed, explained)
	t.Logf("%d from tables of their own data, %d from a sister standard, %d from a book that goes back to the same table", kin["own"], kin["sister"], kin["reprint"])
	t.Logf("%d of them were read, %d are from memory", known["read"], known["memory"])
}

// off is the difference of the middles in percent of the catalog's.
func off(o, f *props.Figure) float64 {
	_, a, _ := o.SI()
	_, b, _ := f.SI()
	return 100 * (a - b) / b
}

// The check has to be able to fail: planted slips are seen, and the same
// figure in another unit is not.
func TestAgrees(t *testing.T) {
	figure := func(p props.PropertyID, basis props.Basis, value string) *props.Figure {
		q, err := units.ParseAs(value, p.Info().Dimension, units.NoUnit)
		if err != nil {
			t.Fatal(err)
		}
		return &props.Figure{Property: p, Value: q, Cond: &props.Conditions{}, Block: &props.Block{Basis: basis}}
	}
	for _, tt := range []struct {
		property         props.PropertyID
		basis            props.Basis
		outside, catalog string
		want             bool
	}{
		{props.TensileStrength, props.Minimum, "414 MPa", "60000 psi", true},
		{props.TensileStrength, props.Minimum, "60.0 ksi", "60 ksi", true},
		{props.TensileStrength, props.Minimum, "65 ksi", "60 ksi", false},
		{props.TensileStrength, props.Minimum, "61 ksi", "60.0 ksi", false},
		{props.TensileStrength, props.Typical, "31 ksi", "33 ksi", true},
		{props.TensileStrength, props.Typical, "28 ksi", "33 ksi", false},
		{props.TensileStrength, props.Typical, "40–46 ksi", "45–50 ksi", true},
		{props.Density, props.Typical, "0.97 lb/in3", "0.097 lb/in3", false},
		{props.Density, props.Typical, "2.685 g/cm3", "0.097 lb/in3", true},
		{props.ThermalConductivity, props.Typical, "151 W/m-K", "0.36 cal/cm-s-C", true},
		{props.ElectricalConductivity, props.Typical, "4.42e-8 Ohm-m", "39 %IACS", true},
		{props.ElectricalConductivity, props.Typical, "4.42e-8 Ohm-m", "27 %IACS", false},
	} {
		if have := agrees(figure(tt.property, tt.basis, tt.outside), figure(tt.property, tt.basis, tt.catalog)); have != tt.want {
			t.Errorf("%v %v: %s against %s: agrees %v, want %v", tt.basis, tt.property, tt.outside, tt.catalog, have, tt.want)
		}
	}
}

// printed is the interval that a figure's printed digits stand for, in SI.
func printed(f *props.Figure) (lo, hi float64) {
	lo, hi = f.Value.Interval()
	lo, hi = f.Value.Unit.ToSI(lo), f.Value.Unit.ToSI(hi)
	return min(lo, hi), max(lo, hi)
}
