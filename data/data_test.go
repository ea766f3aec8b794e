package data

import (
	"os"
	"reflect"
	"testing"

	"alongside/props/catalog"
)

// What the compiled catalog holds is what the TOML says, figure by figure. Where
// a record stands in its file is left out of the Go data.
func TestCompiledEqualsTOML(t *testing.T) {
	c, err := catalog.Load(os.DirFS("."))
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range c.Sources {
		s.File, s.Line = "", 0
	}
	for _, f := range c.Stated() {
		f.Block.File, f.Block.Line = "", 0
	}
	for _, a := range c.Alloys {
		a.File, a.Line = "", 0
	}
	for _, m := range c.Materials {
		m.Line = 0
	}
	built := Catalog()
	if len(built.Materials) != len(c.Materials) || !reflect.DeepEqual(built.Alloys, c.Alloys) {
		t.Fatalf("%d materials compiled, %d in the TOML, or other alloys", len(built.Materials), len(c.Materials))
	}
	if !reflect.DeepEqual(built.Sources, c.Sources) || !reflect.DeepEqual(built.Families, c.Families) {
		t.Error("sources or families differ")
	}
	if !reflect.DeepEqual(built.Words, catalog.ListWords(c)) {
		t.Error("the words of the materials differ")
	}
	for i, m := range c.Materials {
		if !reflect.DeepEqual(built.Materials[i], m) {
			t.Errorf("%s differs", m.ID)
		}
	}
}

func BenchmarkLoadTOML(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := catalog.Load(Files); err != nil {
			b.Fatal(err)
		}
	}
}
