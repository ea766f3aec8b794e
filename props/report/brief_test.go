package report

import (
	"strings"
	"testing"
	"unicode/utf8"

	"alongside/data"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/part"
	"alongside/props/swap"
)

// onePage is a brief from the real catalog.
func onePage(t *testing.T, p part.Part, limits, from string, to ...string) OnePage {
	t.Helper()
	c := data.Catalog()
	given, err := p.Read(c)
	if err != nil {
		t.Fatal(err)
	}
	b := OnePage{Bench: compare.NewBench()}
	if limits != "" {
		if b.Needs, err = needs.ParseAll(limits, c); err != nil {
			t.Fatal(err)
		}
	}
	base := c.Material(from)
	b.Bench.Pin(base)
	for _, id := range to {
		pin := c.Material(id)
		b.Swaps = append(b.Swaps, swap.Work(&b.Bench, given, base, pin))
		b.Watched = append(b.Watched, Watched{base, pin, data.Watch().Evaluate(b.Bench, base, pin, given, nil)})
	}
	return b
}

// A brief is one page: 45 lines of 80 columns, over many changes of metal.
func TestBriefIsOnePage(t *testing.T) {
	parts := []part.Part{{}, {Mass: "4.2 lb", Wall: "3/8 in", Case: "plate", Length: "12 in", Service: "-40..250 F", Mate: "1045-cold-drawn-wrought", Fit: "1.5 in", Stress: "5 ksi"}}
	ids := data.Catalog().Everyday
	n := 0
	for i, from := range ids {
		for _, step := range []int{1, 17, 50} {
			var to []string
			for k := 1; k <= 1+(i+step)%3; k++ {
				if id := ids[(i+k*step)%len(ids)]; id != from {
					to = append(to, id)
				}
			}
			b := onePage(t, parts[n%2], []string{"", "yield >= 20 ksi\nelongation >= 3 %"}[n/2%2], from, to...)
			n++
			text, err := BriefDoc(b).Render("text", briefWidth)
			if err != nil {
				t.Fatal(err)
			}
			lines := strings.Split(strings.TrimRight(text, "\n"), "\n")
			if len(lines) > briefLines {
				t.Errorf("%s to %v: %d lines", from, to, len(lines))
			}
			for _, l := range lines {
				if utf8.RuneCountInString(l) > briefWidth {
					t.Errorf("%s to %v: %d columns: %s", from, to, utf8.RuneCountInString(l), l)
				}
			}
		}
	}
	if n < 100 {
		t.Errorf("only %d changes looked at", n)
	}
}
