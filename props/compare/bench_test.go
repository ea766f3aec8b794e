package compare

import (
	"os"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
)

// shop loads the invented test
func shop(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, err := catalog.Load(os.DirFS("../testdata"), "shop.toml")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func get(t testing.TB, c *catalog.Catalog, id string) *props.Material {
	t.Helper()
	m := c.Material(id)
	if m == nil {
		t.Fatalf("no material %q", id)
	}
	return m
}

// on puts materials on a bench; the first is the baseline.
func on(t testing.TB, c *catalog.Catalog, ids ...string) Bench {
	b := NewBench()
	for _, id := range ids {
		b.Pin(get(t, c, id))
	}
	return b
}

// cellOf works the bench out and returns the cell of the second pin.
func cellOf(t testing.TB, b Bench, p props.PropertyID) *Cell {
	t.Helper()
	b.Only = []props.PropertyID{p}
	return &Compare(b).Rows[0].Cells[1]
}
