package props

import (
	"os"
	"testing"
)

// shop loads the invented test catalog.
func shop(t testing.TB) *Catalog {
	t.Helper()
	c, err := Load(os.DirFS("testdata"), "shop.toml")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func get(t testing.TB, c *Catalog, id string) *Material {
	t.Helper()
	m := c.Material(id)
	if m == nil {
		t.Fatalf("no material %q", id)
	}
	return m
}

// on puts materials on a bench; the first is the baseline.
func on(t testing.TB, c *Catalog, ids ...string) Bench {
	b := NewBench()
	for _, id := range ids {
		b.Pin(get(t, c, id))
	}
	return b
}

// cellOf works the bench out and returns the cell of the second pin.
func cellOf(t testing.TB, b Bench, p PropertyID) *Cell {
	t.Helper()
	b.Only = []PropertyID{p}
	return &Compare(b).Rows[0].Cells[1]
}

// The symbols of ISO 6892-1 and the usual words name their property.
func TestResolveProperty(t *testing.T) {
	for word, want := range map[string]PropertyID{
		"Rm": TensileStrength, "Rp0.2": YieldStrength, "A5": Elongation, "ultimate tensile strength": TensileStrength,
		"Young's modulus": ElasticModulus, "rho": Density, "cp": SpecificHeat, "UTS": TensileStrength, "thermal-conductivity": ThermalConductivity,
	} {
		if have, err := ResolveProperty(word); have != want || err != nil {
			t.Errorf("%s: have %v, %v, want %v", word, have, err, want)
		}
	}
}
