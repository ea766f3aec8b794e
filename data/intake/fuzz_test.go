package main

import (
	"strings"
	"testing"

	"alongside/props/catalog"
)

// Whatever a table of figures holds, each row becomes a figure or says why not.
func FuzzRows(f *testing.F) {
	const head = "material_id,property,basis,value,value_hi,unit,conditions,source,where,agree,note\n"
	for _, seed := range []string{"", "a,b\n1,2\n", head, head + "x1,tensile_strength,typical,30,31,ksi,separately cast bar,S,page,yes,\n",
		head + "x1,\"tensile\nstrength\",typical,,,,,,,,\n", head + "x1,tensile_strength,design-A,NaN,,ksi,,,,,\n", head + "x1,[[alloy]],minimum,\"\"\"\",,,,,,,\n", "material_id\nx\n", head + "short\n"} {
		f.Add(seed)
	}
	c, err := catalog.LoadFiles(nil, []catalog.File{{Name: "f.toml", Content: []byte(figures)}})
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, text string) {
		rows, err := readTable(strings.NewReader(text))
		if err != nil {
			return
		}
		parse(c, rows)
		for i, r := range rows {
			if (r.figure == nil) == (r.problem == "") {
				t.Errorf("row %d of %q: figure %v, problem %q", i, text, r.figure, r.problem)
			}
		}
	})
}
