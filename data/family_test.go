package data

import (
	"slices"
	"testing"

	"alongside/props"
)

// Every family says what it consists of, which group it belongs to and where
// its figures lie, so that no rule passes over it in silence.
func TestFamiliesAreWhole(t *testing.T) {
	groups := map[string]string{"cast iron": "iron", "carbon steel": "steel"} // by a word that people type for the family
	members := map[string]int{}
	for _, f := range Catalog().Families {
		if f.Base == "" {
			t.Errorf("%s has no base element", f.ID)
		}
		want := ""
		for word, group := range groups {
			if slices.Contains(f.Words, word) {
				want = group
			}
		}
		if f.Group != want {
			t.Errorf("%s: group %q, want %q", f.ID, f.Group, want)
		}
		members[f.Group]++
		for _, p := range []props.PropertyID{props.ElasticModulus, props.Density, props.PoissonRatio, props.ThermalExpansion} {
			if n := len(slices.DeleteFunc(slices.Clone(f.Bands), func(b props.Band) bool { return b.Of != p.String() })); n != 1 {
				t.Errorf("%s has %d bands of %v, want 1", f.ID, n, p)
			}
		}
	}
	if members["iron"] != 5 || members["steel"] != 2 {
		t.Errorf("have %v", members)
	}
}
