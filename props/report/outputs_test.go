package report

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"alongside/data"
	"alongside/props"
	"alongside/props/bars"
	"alongside/props/call"
	"alongside/props/call/sheets"
	"alongside/props/compare"
	"alongside/props/foundry"
	"alongside/props/needs"
	"alongside/props/part"
	"alongside/props/sheet"
	"alongside/props/spoken"
	"alongside/units"
)

// answers are one of each kind of document, from the real catalog.
func answers(t *testing.T) map[string]*Doc {
	t.Helper()
	c := data.Catalog()
	iron, pin := c.Material("gray-30"), c.Material("a356-t6-pm")
	b := compare.NewBench()
	b.Pin(iron)
	b.Pin(pin)
	list, err := spoken.Read("brinell >= 60\ntensile >= 30 ksi\nfamily = aluminum", c, units.US, nil).Limits()
	if err != nil {
		t.Fatal(err)
	}
	duty, _ := needs.DutyNamed("plate-stiffness")
	four, _ := units.Parse("4 in")
	found := Search{Needs: list, Bench: b, Baseline: iron, Duty: duty, Found: needs.Find(c.Materials, list, 5, true), Show: []props.PropertyID{props.Density}, Front: true}
	cautions := data.Watch().Evaluate(b, iron, pin, part.Given{}, nil)
	alone := data.Watch().Evaluate(b, nil, pin, part.Given{}, []string{cautions[0].ID})
	return map[string]*Doc{
		"compare":         CompareDoc(compare.Compare(b), Scope{}, Limits{Needs: list, Duties: []*needs.Duty{duty}}),
		"need":            NeedDoc(b.Pins, &list[0]),
		"merit":           MeritDoc(&b, duty),
		"found":           FoundDoc(found),
		"list":            ListDoc([]*props.Material{iron, pin}, units.SI),
		"on file":         OnFileDoc(pin, units.SI, true),
		"bars":            BarsDoc(testBars(t)),
		"swap":            SwapDoc(swapped(t, part.Part{Mass: "4.2 lb"}, "gray-30", "a356-t6-pm")),
		"process":         ProcessDoc(data.Foundry().Pages(c, []*props.Material{iron, pin, c.Material("a380-f-die")}, &four), &four, units.US),
		"watch":           WatchDoc(Watched{iron, pin, cautions}, Watched{nil, pin, alone}),
		"sources":         SourcesDoc(c),
		"process sources": ProcessSourcesDoc(data.Foundry(), data.Watch()),
		"convert":         ConvertDoc([]units.Quantity{four}, true),
		"drawing":         DrawingDoc(Drawing{c, data.Foundry(), pin, part.Given{With: part.PressureTight}, cautions}),
		"report":          WholeDoc(whole(t)),
		"call":            CallDoc(keptSheet(b, list)),
		"brief":           BriefDoc(onePage(t, part.Part{Mass: "4.2 lb"}, "yield >= 20 ksi", "gray-30", "a356-t6-pm")),
	}
}

// keptSheet is a call sheet as a folder would read it.
func keptSheet(b compare.Bench, list []needs.Need) *sheets.Sheet {
	at := time.Date(2026, 1, 2, 3, 4, 0, 0, time.UTC)
	return &sheets.Sheet{ID: "2026-01-02-a", Begun: at, Changed: at, Call: call.Call{Name: "bracket", Bench: b, Needs: list, Said: []string{"would it do?"},
		Notes: []call.Note{{At: at, Text: "asks for 200 a year"}}, Part: part.Part{Mass: "4.2 lb", With: part.Threads}, Aside: []string{"light"}}}
}

// What holds no figures, and a list to be filled in, has no caution in each format.
func TestListsInEveryFormat(t *testing.T) {
	c := data.Catalog()
	for name, d := range map[string]*Doc{
		"calls":         CallsDoc([]*sheets.Sheet{keptSheet(compare.NewBench(), nil), {ID: "spoiled", Broken: errors.New("folder/spoiled.toml:1: no call\nremedy")}}),
		"empty call":    CallDoc(keptSheet(compare.NewBench(), nil)),
		"waiting":       WaitingDoc(c),
		"shelf":         ShelfDoc(c, c.Material("a356-t6-pm").Figures(props.TensileStrength)[0].Source, true),
		"shelf sources": ShelfSourcesDoc(c, true),
		"findings":      FindingsDoc([]Found{{What: "terminal", Is: "none", Remedy: "open one"}}),
	} {
		want := map[string]string{"calls": "spoiled", "empty call": "would it do?", "waiting": "a356-t6-pm", "shelf sources": "ASTM-B108", "shelf": "brinell", "findings": "open one"}[name]
		for _, format := range Formats() {
			if text, err := d.Render(format, 80); err != nil || !strings.Contains(strings.ToLower(strings.ReplaceAll(text, "\\", "")), strings.ToLower(want)) || format == "json" && !json.Valid([]byte(text)) {
				t.Errorf("%s as %s: %v, no %q in\n%s", name, format, err, want, text)
			}
		}
	}
}

// testBars are the invented bars of the command's test.
func testBars(t *testing.T) []*bars.Set {
	text, err := os.ReadFile("../../data/demo/invented-bars.csv")
	if err != nil {
		t.Fatal(err)
	}
	sets, err := bars.Read("bars.csv", string(text), data.Catalog())
	if err != nil {
		t.Fatal(err)
	}
	return sets
}

// Every document comes in every format, with the caution where it has figures
// of metals, and JSON and CSV that others can read.
func TestEveryDocumentInEveryFormat(t *testing.T) {
	for name, d := range answers(t) {
		for _, format := range Formats() {
			text, err := d.Render(format, 80)
			if err != nil || len(text) < 5 {
				t.Errorf("%s as %s: %v, %q", name, format, err, text)
			}
			metals := !strings.Contains(name, "sources") && name != "convert"
			if metals {
				const remark = "Demo: invented."
				if marked, err := d.Marked(remark).Render(format, 80); err != nil || !strings.Contains(marked, remark) || format == "json" && !strings.Contains(marked, "\"caution\": \""+remark+" ") {
					t.Errorf("%s as %s lacks the remark: %v", name, format, err)
				}
			}
			if metals && !(name == "list" && !slices.Contains([]string{"csv", "tsv", "json"}, format)) && !strings.Contains(strings.Join(strings.Fields(text), " "), "licensed engineer decide.") {
				t.Errorf("%s as %s lacks the caution", name, format)
			}
			switch format {
			case "json":
				if !json.Valid([]byte(text)) {
					t.Errorf("%s: no JSON", name)
				}
			case "csv":
				if _, err := csv.NewReader(strings.NewReader(text)).ReadAll(); err != nil {
					t.Errorf("%s: %v", name, err)
				}
			}
		}
		if _, err := d.Render("pdf", 80); err == nil || !strings.Contains(err.Error(), "json") {
			t.Errorf("%s as pdf: %v", name, err)
		}
	}
}

// The cells under a column named value, to, from, margin or delta are numbers
// or empty.
func TestSheetsHoldBareNumbers(t *testing.T) {
	for _, name := range []string{"compare", "need", "merit", "found", "list", "on file", "swap", "process", "convert"} {
		text, _ := answers(t)[name].Render("csv", 0)
		r := csv.NewReader(strings.NewReader(text))
		r.FieldsPerRecord = -1
		records, err := r.ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		var head []string
		numbers := 0
		for _, record := range records {
			switch {
			case slices.ContainsFunc(record, isNumberColumn):
				head = record
				continue
			case head == nil || len(record) > 6 && record[1] == "":
				continue
			}
			for i, cell := range record {
				if i >= len(head) || !isNumberColumn(head[i]) || cell == "" {
					continue
				}
				numbers++
				if _, err := strconv.ParseFloat(cell, 64); err != nil {
					t.Errorf("%s, %s: %q is no number", name, head[i], cell)
				}
			}
		}
		if numbers == 0 {
			t.Errorf("%s: no numbers in\n%s", name, text)
		}
	}
}

func isNumberColumn(head string) bool {
	last := head[strings.LastIndex(head, ": ")+1:]
	return slices.Contains([]string{"value", "to", "merit", "from", "margin", "margin %", "delta", "delta %", "today", "swapped", "ratio"}, strings.TrimSpace(last)) && head != "to" && head != "from" || head == "value"
}

// The words for each degree of knowing are the same wherever they stand.
func TestOneWordingForMemory(t *testing.T) {
	degrees := strings.NewReplacer(knownBy[props.Memory].words, "", knownBy[props.Agreed].words, "")
	for name, d := range answers(t) {
		for _, format := range []string{"text", "markdown"} {
			text, _ := d.Render(format, 80)
			text = strings.Join(strings.Fields(text), " ")
			rest := degrees.Replace(text)
			if at := strings.Index(rest, "from memory"); at >= 0 && !strings.Contains(rest[at:], "(tie") && !strings.Contains(rest, "panel from memory") {
				t.Errorf("%s as %s: %q", name, format, rest[max(0, at-40):at+20])
			}
		}
	}
}

// Cards name a source for all that they state.
func TestFoundryAndWatchCards(t *testing.T) {
	c, book := data.Catalog(), data.Foundry()
	pin := c.Material("a356-t6-pm")
	four, _ := units.Parse("4 in")
	card := book.Card(pin)
	var cards []*Card
	for _, k := range foundry.Kinds() {
		cards = append(cards, NewItemsCard(pin, k.String(), card.Of(k)))
	}
	cards = append(cards, NewToleranceCard(pin, four, book.Tolerance(pin, four), units.US))
	for _, id := range []string{"a356-t6-pm", "a380-f-die", "gray-30"} {
		page := book.Page(c, c.Material(id), nil)
		cards = append(cards, NewHeatCard(page.Heat), NewDesignationCard(page.Material, page.Designation))
	}
	iron := c.Material("gray-30")
	b := compare.NewBench()
	b.Pin(iron)
	b.Pin(pin)
	cautions := data.Watch().Evaluate(b, iron, pin, part.Given{}, nil)
	for i := range cautions {
		cards = append(cards, NewCautionCard(&cautions[i]))
		why := CautionWhy(&cautions[i])
		if !strings.HasPrefix(why, "Why: ") && !strings.HasPrefix(why, "Not checked: ") || !strings.HasSuffix(why, ".") {
			t.Error(why)
		}
	}
	if !strings.HasPrefix(WatchCount(cautions), "stop and ask ") {
		t.Error(WatchCount(cautions))
	}
	sourced := 0
	for _, card := range cards {
		if card.Title == "" {
			t.Error("a card without a title")
		}
		for _, s := range card.Sections {
			known, source := false, false
			for _, item := range s.Items {
				known, source = known || item.Label == "known", source || item.Label == "source"
				if item.Text == "" {
					t.Errorf("%s, %s: an empty text", card.Title, s.Title)
				}
			}
			if known != source {
				t.Errorf("%s, %s: a source without how it became known", card.Title, s.Title)
			}
			if source {
				sourced++
			}
		}
	}
	if sourced < 30 {
		t.Errorf("only %d sections have a source", sourced)
	}
}

// The rows of needs and merits above the table, and their cards.
func TestRowsAboveTheTable(t *testing.T) {
	c := data.Catalog()
	b := compare.NewBench()
	b.Pin(c.Material("gray-30"))
	b.Pin(c.Material("a356-t6-pm"))
	list, err := spoken.Read("brinell >= 60\nyield >= 20 ksi\nprocess = pm\nresistivity <= 10 µΩ·cm", c, units.US, nil).Limits()
	if err != nil {
		t.Fatal(err)
	}
	lines := NeedLines(b.Pins, list)
	if len(lines) != 4 || lines[0].Name != "Brinell hardness ≥ 60 HB" || lines[0].Short != "Brinell ≥60 HB" || lines[1].Short != "yield ≥20 ksi" ||
		lines[2].Short != "process = perm. mold" || lines[3].Short != "resistivity ≤10 µΩ·cm" {
		t.Errorf("needs: %+v", lines)
	}
	if lines[2].Cells[1].Value != "yes" || lines[2].Cells[0].Value != "no" || lines[1].Cells[0].Why == "" {
		t.Errorf("needs: %+v", lines)
	}
	duty, _ := needs.DutyNamed("plate-stiffness")
	merits := MeritLines(&b, []*needs.Duty{duty})
	if len(merits) != 1 || merits[0].Cells[0].Verdict != compare.IsBaseline || merits[0].Cells[1].Value == "" {
		t.Errorf("merits: %+v", merits)
	}
	for i := range list {
		if text := NewNeedCard(b.Pins[1], &list[i]).text(); !strings.Contains(text, "judged: ") {
			t.Error(text)
		}
	}
	if text := NewMeritCard(&b, b.Pins[1], duty).text(); !strings.Contains(text, "never a score") || !strings.Contains(text, "from course notes") && !strings.Contains(text, "open course notes") {
		t.Error(text)
	}
	r := needs.JudgeAll(b.Pins[1], list)
	if have := NeedValue(&r, &list[1]); have == "" || have == "–" {
		t.Errorf("NeedValue: %q", have)
	}
	for _, l := range append(Legend(), sheet.Clean(Stops(&r))) {
		if strings.ContainsRune(l, '\n') {
			t.Error(l)
		}
	}
}

// A need that is switched off is said to be so, with pins and without.
func TestNeedsThatAreOff(t *testing.T) {
	list := []needs.Need{{Kind: needs.OfProcess, Processes: []props.Process{props.Sand}, Off: true}}
	pinned := compare.NewBench()
	pinned.Pin(data.Catalog().Material("a356-t6-pm"))
	for _, b := range []compare.Bench{compare.NewBench(), pinned} {
		for _, format := range []string{"text", "json"} {
			out, err := CallDoc(keptSheet(b, list)).Render(format, 120)
			if err != nil {
				t.Fatal(err)
			}
			if !strings.Contains(out, list[0].String()+" (off)") {
				t.Errorf("%d pins, %s: %s", len(b.Pins), format, out)
			}
		}
	}
}
