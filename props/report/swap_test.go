package report

import (
	"strings"
	"testing"

	"alongside/data"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/swap"
)

func swapped(t *testing.T, part part.Part, from, to string) *swap.Result {
	t.Helper()
	c := data.Catalog()
	g, err := part.Read(c)
	if err != nil {
		t.Fatal(err)
	}
	b := compare.NewBench()
	return swap.Work(&b, g, c.Material(from), c.Material(to))
}

// Whatever leaves the program carries the caution, and every figure a source.
func TestSwapCarriesCautionAndSources(t *testing.T) {
	r := swapped(t, part.Part{Mass: "4.2 lb", Case: part.Plate, Service: "70..250 F"}, "gray-30", "a356-t6-pm")
	for _, format := range SwapFormats() {
		text, err := RenderSwap(format, 80, r)
		if err != nil {
			t.Fatal(err)
		}
		for _, part := range []string{"licensed engineer", "Ranges are the worst cases", "mean coefficients of expansion", "ρ₂/ρ₁"} {
			if !strings.Contains(text, part) {
				t.Errorf("%s lacks %q", format, part)
			}
		}
	}
	if _, err := RenderSwap("pdf", 80, r); err == nil || !strings.Contains(err.Error(), "text, markdown, tsv, html, json") {
		t.Errorf("have %v", err)
	}
	width := 0
	text, _ := RenderSwap("text", 80, r)
	for _, l := range strings.Split(text, "\n") {
		width = max(width, length(l))
	}
	if width > 80 {
		t.Errorf("text is %d wide", width)
	}
}

// The card of a line names the source of its formula and of each figure.
func TestSwapCardNamesSources(t *testing.T) {
	r := swapped(t, part.Part{Mass: "4.2 lb"}, "gray-30", "a356-t6-pm")
	for i := range r.Lines {
		l := &r.Lines[i]
		for _, s := range NewSwapCard(r, l).Sections {
			sourced := s.Title == "Result" || s.Title == "The part"
			for _, item := range s.Items {
				sourced = sourced || item.Label == "source" && item.Text != ""
			}
			if !sourced {
				t.Errorf("%s: section %q has no source", l.ID, s.Title)
			}
		}
	}
}
