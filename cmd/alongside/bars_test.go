package main

import (
	"strings"
	"testing"

	"alongside/data"
)

// Test bars are told alone, and stand beside the published figures as a house file.
func TestBars(t *testing.T) {
	const file = "../../data/demo/invented-bars.csv"
	keep(t, "bars", try(data.Catalog, "bars", file), exitOK)
	r := try(data.Catalog, "show", "a356-t6-pm", "--house", file)
	if r.code != exitOK || !strings.Contains(strings.Join(strings.Fields(r.out), " "), "37.6–41.6 ksi house value; separately cast bar; (32 bars, mean 39.58, 90/95 bound 37.9)") {
		t.Errorf("exit code %d, the bars are not shown:\n%s%s", r.code, r.out, r.errors)
	}
	for _, args := range [][]string{{"bars", goldenFolder + "/house.toml"}, {"compare", "gray-30", "--house", goldenFolder + "/../checks/tolerance.csv"}} {
		if r := try(data.Catalog, args...); r.code == exitOK || !strings.Contains(r.errors, "remedy: ") {
			t.Errorf("%v: exit code %d, %s", args, r.code, r.errors)
		}
	}
}
