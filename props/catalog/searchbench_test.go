package catalog_test

import (
	"fmt"
	"testing"

	"alongside/data"
	"alongside/props/catalog"
)

// tenfold is the built-in catalog ten times over, each time with other ids.
func tenfold() *catalog.Catalog {
	built := data.Catalog()
	c := &catalog.Catalog{Sources: built.Sources, Families: built.Families}
	for i := range 10 {
		for _, a := range built.Alloys {
			again := *a
			again.ID = fmt.Sprintf("%s-%d", a.ID, i)
			for _, m := range built.Variants(a) {
				other := *m
				other.ID, other.Alloy = fmt.Sprintf("%s-%d", m.ID, i), &again
				c.Materials = append(c.Materials, &other)
			}
			c.Alloys = append(c.Alloys, &again)
		}
	}
	return c
}

// A keystroke in the finder is one search.
func BenchmarkSearch(b *testing.B) {
	c := tenfold()
	for _, query := range []string{"a", "a3", "a356 t6 pm", "t6 a356", "class 30", "EN AC-42100", "380die", "gray irn 30", "zqxzq"} {
		b.Run(query, func(b *testing.B) {
			c.Search(query)
			for b.Loop() {
				c.Search(query)
			}
		})
	}
}

// The first search of a process also lists the words of every material.
func BenchmarkFirstSearch(b *testing.B) {
	built := data.Catalog()
	for b.Loop() {
		c := &catalog.Catalog{Alloys: built.Alloys, Materials: built.Materials}
		c.Search("319 F sand")
	}
}
