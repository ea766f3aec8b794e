package catalog

import (
	"os"
	"testing"

	"alongside/props"
)

// shop loads the invented test catalog.
func shop(t testing.TB) *Catalog {
	t.Helper()
	c, err := Load(os.DirFS("../testdata"), "shop.toml")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func get(t testing.TB, c *Catalog, id string) *props.Material {
	t.Helper()
	m := c.Material(id)
	if m == nil {
		t.Fatalf("no material %q", id)
	}
	return m
}
