package data_test

import (
	"fmt"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props"
	"alongside/props/compare"

	"github.com/BurntSushi/toml"
)

// How useful is a comparison on an ordinary call? Everyday aluminum castings
// against everyday baselines: no more than one cell in twenty may be refused.
// With -v it prints the table of verdicts by property.
func TestEverydayCallsAreAnswered(t *testing.T) {
	var list struct{ Baselines, Options, Rows []string }
	if _, err := toml.DecodeFile("../testdata/checks/everyday.toml", &list); err != nil {
		t.Fatal(err)
	}
	c := data.Catalog()
	q := compare.NewBench().Question
	verdicts := []compare.Verdict{compare.Beats, compare.Misses, compare.Level, compare.Overlaps, compare.Neutral, compare.Unlike, compare.NoFigure}
	var all [compare.IsBaseline + 1]int
	bounds := 0
	var out strings.Builder
	line := func(name string, count [compare.IsBaseline + 1]int, bounds int) {
		fmt.Fprintf(&out, "%-24s", name)
		for _, v := range verdicts {
			fmt.Fprintf(&out, "%10d", count[v])
		}
		fmt.Fprintf(&out, "%10d\n", bounds)
	}
	fmt.Fprintf(&out, "%-24s", "")
	for _, v := range verdicts {
		fmt.Fprintf(&out, "%10s", v)
	}
	fmt.Fprintf(&out, "%10s\n", "by bound")
	for _, r := range list.Rows {
		p, ok := props.PropertyNamed(r)
		if !ok {
			t.Fatalf("no property %q", r)
		}
		var count [compare.IsBaseline + 1]int
		byBound := 0
		for _, o := range list.Options {
			for _, b := range list.Baselines {
				pair := q.Pair(c.Material(o), c.Material(b), p)
				count[pair.Verdict]++
				all[pair.Verdict]++
				if pair.Bound != nil {
					byBound++
				}
			}
		}
		bounds += byBound
		line(r, count, byBound)
	}
	line("all", all, bounds)
	cells := len(list.Rows) * len(list.Options) * len(list.Baselines)
	t.Logf("%d cells\n%s", cells, out.String())
	if most := cells / 20; all[compare.Unlike] > most {
		t.Errorf("%d of %d cells are unlike, at most %d are meant to be", all[compare.Unlike], cells, most)
	}
}
