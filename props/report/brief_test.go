package report

import (
	"math"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"alongside/data"
	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/part"
	"alongside/props/spoken"
	"alongside/units"
)

// onePage is a brief from the real catalog.
func onePage(t *testing.T, p part.Part, limits, from string, to ...string) OnePage {
	t.Helper()
	c := data.Catalog()
	given, err := p.Read(c)
	if err != nil {
		t.Fatal(err)
	}
	var list []needs.Need
	if limits != "" {
		if list, err = spoken.Read(limits, c, units.US, nil).Limits(); err != nil {
			t.Fatal(err)
		}
	}
	b := compare.NewBench()
	var pins []*props.Material
	for _, id := range append([]string{from}, to...) {
		pins = append(pins, c.Material(id))
		b.Pin(c.Material(id))
	}
	return NewOnePage(b, list, given, data.Watch(), nil, pins[1:]...)
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
			text, err := BriefDoc(b).Render("text", BriefWidth)
			if err != nil {
				t.Fatal(err)
			}
			lines := strings.Split(strings.TrimRight(text, "\n"), "\n")
			if len(lines) > briefLines {
				t.Errorf("%s to %v: %d lines", from, to, len(lines))
			}
			for _, l := range lines {
				if utf8.RuneCountInString(l) > BriefWidth {
					t.Errorf("%s to %v: %d columns: %s", from, to, utf8.RuneCountInString(l), l)
				}
			}
		}
	}
	if n < 100 {
		t.Errorf("only %d changes looked at", n)
	}
}

// The table holds the needs first, then what the swap does to the part, then the
// properties that differ most; what is left out is named, and no cell is a mark.
func TestBriefRows(t *testing.T) {
	b := onePage(t, part.Part{Mass: "12 lb", Service: "70..250 F"}, "yield >= 20 ksi\nelongation >= 3 %", "gray-30", "a356-t6-pm")
	var names []string
	for _, r := range b.rows() {
		names = append(names, r.name)
	}
	want := []string{"Yield ≥ 20 ksi", "Elong ≥ 3 %", "Weight", "Load to stay bent", "Load to break", "Bending, same load", "Growth, 70 to 250 °F"}
	if len(names) <= len(want) || len(names) > briefRows || !slices.Equal(names[:len(want)], want) {
		t.Errorf("rows %q", names)
	}
	sizes := []float64{}
	c := compare.Compare(b.Bench)
	for _, name := range names[len(want):] {
		for i := range c.Rows {
			if r := &c.Rows[i]; r.Property.Info().Short == name {
				lo, hi := ratio(&r.Cells[1])
				sizes = append(sizes, -max(math.Log(lo), -math.Log(hi)))
			}
		}
	}
	if len(sizes) != len(names)-len(want) || !slices.IsSorted(sizes) {
		t.Errorf("the properties %q are not in order of their difference: %v", names[len(want):], sizes)
	}
	p := b.page()
	shown := len(p.table.Rows)
	if left := strings.Join(p.table.Notes, " "); shown < len(names) && strings.Count(left, ",")+1 < len(names)-shown {
		t.Errorf("%d of %d rows are shown; named as left out: %q", shown, len(names), left)
	}
	for _, r := range p.table.Rows {
		for _, c := range r.Cells {
			if strings.ContainsAny(c.Text, "–≠✓✗") && !strings.ContainsAny(c.Text, "0123456789") {
				t.Errorf("a cell is a mark: %q", c.Text)
			}
		}
	}
}

// Short titles are short, and no two sources share one.
func TestShortTitles(t *testing.T) {
	by := map[string]string{}
	for _, s := range data.Catalog().Sources {
		short := shortTitle(s)
		if other := by[short]; other != "" && s.Kind != "standard" { // a standard's editions share its number
			t.Errorf("%s and %s are both %q", other, s.ID, short)
		}
		by[short] = s.ID
		if !strings.HasPrefix(short, s.Title) && len(short) > len(s.Title)+20 || short == "" {
			t.Errorf("%s: %q for %q", s.ID, short, s.Title)
		}
	}
	for title, want := range map[string]string{
		"A48/A48M, Specification for gray iron castings":                                                                 "ASTM A48/A48M",
		"Handbook, volume 1, Properties and Selection: Irons, Steels, and High-Performance Alloys; article on gray iron": "Handbook, volume 1, Properties and Selection, article on gray iron",
	} {
		kind := "handbook"
		if strings.HasPrefix(title, "A48") {
			kind = "standard"
		}
		if have := shortTitle(&props.Source{Title: title, Kind: kind, Publisher: "ASTM"}); have != want {
			t.Errorf("%q, want %q", have, want)
		}
	}
}

// What the part stands in is answered for each metal, said as a medium or as a fact.
func TestBriefAnswersTheMedium(t *testing.T) {
	for _, p := range []part.Part{{Medium: "sea water"}, {With: part.SeaWater}} {
		text, err := BriefDoc(onePage(t, p, "", "c83600-sand", "zn-3-die", "a380-f-die")).Render("text", 200)
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{"In sea water", "yes, bronze", "1: with a conversion coat and paint; 2: no, not bare: copper in the aluminum makes it pit"} {
			if !strings.Contains(text, want) {
				t.Errorf("%+v: no %q in\n%s", p, want, text)
			}
		}
	}
}

// A long answer leaves room for the rows that a customer asks for first.
func TestBriefKeepsItsRows(t *testing.T) {
	for _, medium := range []string{"water, 180 F", "coolant 50 % glycol, 110 °C", "sea water and diesel, pH 6 to 8"} {
		text, err := BriefDoc(onePage(t, part.Part{Mass: "12 lb", Service: "-20..250 F", Mate: "1045-cold-drawn-wrought", Medium: medium}, "yield >= 20 ksi", "gray-30", "a356-t6-pm")).Render("text", MailWidth)
		if err != nil {
			t.Fatal(err)
		}
		table, _, _ := strings.Cut(text, "Notes and sources")
		for _, row := range []string{"\nYield ≥ 20 ksi", "\nIn ", "\nWeight", "\nLoad to stay bent", "\nLoad to break", "\nBending, same load"} {
			if !strings.Contains(table, row) {
				t.Errorf("%s: no row %q in\n%s", medium, row, text)
			}
		}
	}
}

// What to ask becomes what is to be settled only where that reads well.
func TestToSettle(t *testing.T) {
	for ask, want := range map[string]string{
		"Ask for the heat to be carried, or for the temperature that is allowed.": "To settle: the heat to be carried, or the temperature that is allowed.",
		"Ask whether the part is made for the sea.":                               "To settle: whether the part is made for the sea.",
		"Ask for T7, or for an alloy meant for heat.":                             "Ask for T7, or for an alloy meant for heat.",
		"Repair before heat treatment.":                                           "Repair before heat treatment.",
	} {
		if have := toSettle(ask); have != want {
			t.Errorf("%s became %s", ask, have)
		}
	}
}
