package swap

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/units"
)

// problems loads the figures that published worked problems give.
func problems(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, err := catalog.Load(os.DirFS("../../testdata/swap"), "problems.toml")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// partOf sets fields written as name=text, separated by bars.
func partOf(t testing.TB, c *catalog.Catalog, text string) part.Part {
	t.Helper()
	var p part.Part
	for _, pair := range strings.Split(text, "|") {
		if pair == "" {
			continue
		}
		name, value, _ := strings.Cut(pair, "=")
		f, ok := fieldNamed(name)
		if !ok {
			t.Fatalf("no field %q", name)
		}
		if err := p.Set(c, f, value); err != nil {
			t.Fatal(err)
		}
	}
	return p
}

func fieldNamed(name string) (part.Field, bool) {
	for _, f := range part.Fields() {
		if f.String() == name {
			return f, true
		}
	}
	return 0, false
}

// worked reads the part and works a swap out.
func worked(t testing.TB, c *catalog.Catalog, p part.Part, from, to string) *Result {
	t.Helper()
	g, err := p.Read(c)
	if err != nil {
		t.Fatal(err)
	}
	b := compare.NewBench()
	base, pin := c.Material(from), c.Material(to)
	if base == nil || pin == nil {
		t.Fatalf("no material %q or %q", from, to)
	}
	return Work(&b, g, base, pin)
}

// Every row of testdata/swap/problems.csv is a published worked problem, or
// arithmetic on figures that were read, with its source beside it.
func TestPublishedProblems(t *testing.T) {
	file, err := os.Open("../../testdata/swap/problems.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	c := problems(t)
	for _, row := range rows[1:] {
		id, from, to, part, line, which := row[0], row[1], row[2], row[3], row[4], row[5]
		t.Run(id, func(t *testing.T) {
			want, err := strconv.ParseFloat(row[6], 64)
			if err != nil {
				t.Fatal(err)
			}
			tolerance, err := strconv.ParseFloat(row[8], 64)
			if err != nil {
				t.Fatal(err)
			}
			r := worked(t, c, partOf(t, c, part), from, to)
			l := r.Line(line)
			if l == nil || l.Reason != "" {
				t.Fatalf("line %s: %+v", line, l)
			}
			v := l.Value
			if which == "ratio" {
				v = l.Ratio
			}
			if v == nil {
				t.Fatalf("line %s has no %s: %s", line, which, l.Need)
			}
			have := inUnit(t, v, row[7])
			if math.Abs(have-want) > tolerance*math.Abs(want) {
				t.Errorf("%s: have %v %s, want %v (%s, %s)", line, have, row[7], want, row[10], row[11])
			}
		})
	}
}

// inUnit is the middle of a value in a unit named in a test file.
func inUnit(t testing.TB, v *Value, unit string) float64 {
	t.Helper()
	if v.Symbol != "" || unit == "" {
		if v.Symbol != unit {
			// Ω and mΩ
			t.Logf("shown in %s", v.Symbol)
			return v.Mid * map[string]float64{"µΩ": 1e-6, "mΩ": 1e-3, "Ω": 1}[v.Symbol] / map[string]float64{"mΩ": 1e-3, "Ω": 1}[unit]
		}
		return v.Mid
	}
	u, err := units.ParseUnit(unit)
	if err != nil {
		t.Fatal(err)
	}
	x, err := units.Convert(v.Mid, v.Unit, u)
	if err != nil {
		t.Fatal(err)
	}
	return x
}
