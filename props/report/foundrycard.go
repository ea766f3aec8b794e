package report

import (
	"fmt"
	"math"
	"strings"

	"alongside/props"
	"alongside/props/foundry"
	"alongside/units"
)

// ItemText is a statement of a process card in the units of a system, with the
// molding method and the condition it is limited to: "0.08 in, shell; least of
// any metal by the process".
func ItemText(it *foundry.Item, s units.System) string {
	shown := *it
	if it.HasValue && it.Unit == "" {
		if v := rounded(it.Value, itemUnit(it, s)); v.Unit != it.Value.Unit {
			shown.Printed = v.String()
		}
	}
	text := shown.String()
	if limits := joined("; ", it.Method, it.Condition); limits != "" {
		text += ", " + limits
	}
	return text
}

// rounded is a quantity in a unit, with as many digits as it was published
// with and at least two: 2 mm is 0.079 in.
func rounded(q units.Quantity, u units.Unit) units.Quantity {
	v, err := q.In(u)
	if err != nil || v.Unit == q.Unit || v.Lo <= 0 || q.Lo <= 0 {
		return q
	}
	digits := max(int(math.Floor(math.Log10(q.Lo)))-int(q.Place)+1, 2)
	v.Place = max(v.Place, int8(int(math.Floor(math.Log10(v.Lo)))-digits+1))
	return v
}

// itemUnit is the unit in which a statement is shown: that of the system, and
// for a surface the one in which finishes are called out.
func itemUnit(it *foundry.Item, s units.System) units.Unit {
	switch {
	case it.Kind == foundry.SurfaceFinish && s == units.US:
		return units.Microinch
	case it.Kind == foundry.SurfaceFinish:
		return units.Micrometer
	}
	return units.Preferred(it.Value.Unit.Dimension(), s)
}

// ToleranceText is what one source gives for a dimension, in the units of a
// system: "±0.010 in, standard; within one die half".
func ToleranceText(r *foundry.ToleranceResult, s units.System) string {
	if r.Why != "" {
		return r.Why
	}
	v := r.PlusMinus
	if in, err := v.In(units.Preferred(units.Length, s)); err == nil {
		v = in
	}
	if v.Unit == units.Inch {
		v.Place = max(v.Place, thousandth)
	}
	text := "±" + v.String()
	if r.Kind == foundry.MachiningStock {
		text = v.String() + " stock a face"
	}
	if limits := joined("; ", r.Name, r.Method, r.Condition); limits != "" {
		text += ", " + limits
	}
	return text
}

// thousandth is the finest place of a tolerance in inches.
const thousandth = -3

// NewItemsCard shows the statements of a process card on one subject as
// published, each with its source.
func NewItemsCard(m *props.Material, subject string, items []foundry.Item) *Card {
	card := &Card{Title: subject + ", " + m.Name()}
	for i := range items {
		it := &items[i]
		s := section(it.String())
		if len(s.Title) > longTitle {
			s = section(subject, "", it.String())
		}
		card.add(s.with("method", it.Method, "condition", it.Condition).from(it.Cite))
	}
	return card
}

// longTitle is from where on a statement stands under a heading, not in it.
const longTitle = 60

// NewToleranceCard shows what is published for one dimension of a casting, and
// how each figure comes about.
func NewToleranceCard(m *props.Material, dimension units.Quantity, results []foundry.ToleranceResult, system units.System) *Card {
	card := &Card{Title: fmt.Sprintf("Tolerance at %s, %s", dimension, m.Name())}
	for i := range results {
		r := &results[i]
		s := section(joined(", ", r.Kind.String(), r.Name), "", ToleranceText(r, system))
		if r.Why == "" {
			if r.Kind != foundry.MachiningStock {
				s = s.with("in all", r.Full.String())
			}
			s = s.with("how", r.How)
		}
		card.add(s.from(r.Cite))
		if r.By.Source != nil && r.By.Source != r.Source {
			card.add(section("Table of the grade").from(r.By))
		}
	}
	return card
}

// NewHeatCard tells what the temper means, whether the alloy is normally heat
// treated when cast so, and the usual schedules.
func NewHeatCard(h *foundry.HeatCard) *Card {
	m := h.Material
	card := &Card{Title: "Heat treatment, " + m.Name()}
	for _, t := range h.Meaning {
		card.add(section("Temper "+m.Temper, "", t.Text).from(t.Cite))
	}
	for i, r := range h.Reasons {
		title := "More on it"
		if i == 0 {
			title = normally(h.Normally)
		}
		card.add(section(title, "", r.Text).from(r.Cite))
	}
	card.add(section("Heat-treated tempers in the catalog, by this process", "", strings.Join(h.Tempers, ", ")), section("Schedule", "", h.Why))
	for i := range h.Schedules {
		card.add(scheduleSection(&h.Schedules[i], "Usual schedule for "))
	}
	for i := range h.Others {
		card.add(scheduleSection(&h.Others[i], "For comparison: "))
	}
	return card
}

func normally(word string) string {
	switch word {
	case "yes", "no":
		return "Normally heat treated: " + word
	case "depends":
		return "Normally heat treated: it depends"
	}
	return "Heat treated or not"
}

func scheduleSection(sch *foundry.Schedule, title string) Section {
	s := section(title + sch.Temper)
	for i := range sch.Steps {
		st := &sch.Steps[i]
		s = s.with(st.Name, strings.TrimPrefix(st.String(), st.Name+" "))
	}
	return s.with("note", sch.Note).from(sch.Cite)
}

// NewDesignationCard explains a material's designation part by part.
func NewDesignationCard(m *props.Material, parts []foundry.Explanation) *Card {
	card := &Card{Title: "Designation, " + m.Name()}
	head := section(m.Name()).named(m)
	if len(parts) == 0 {
		head = head.with("", "nothing on file explains the parts of this designation")
	}
	card.add(head)
	for _, p := range parts {
		card.add(section(strings.ToUpper(p.Part[:1])+p.Part[1:], "", p.Text).from(p.Cite))
	}
	return card
}
