package catalog

import (
	"fmt"
	"slices"

	"alongside/props/cost"
	"alongside/props/record"
)

// rates reads a [[rates]] record: what the shop charges for the metals that all of
// families, alloys, tempers and processes name; left out, all. Of two records that
// state the same rate for a metal the later one holds.
//
//	[[rates]]
//	source = "RATES-2026"    # a [[source]] of kind house in the same file
//	processes = ["pm"]
//	conversion = "1.80 $/lb"
//	tool_cost = "18,000 $"
func (l *loader) rates(r *record.Record) {
	c := &cost.Record{Source: l.sourceNamed(r), Tempers: r.Texts("tempers")}
	c.Families = l.known(r, "families", "family", keys(l.families))
	var alloys []string
	for _, a := range l.cat.Alloys {
		alloys = append(alloys, a.ID)
	}
	c.Alloys = l.known(r, "alloys", "alloy", alloys)
	for _, p := range r.Texts("processes") {
		c.Processes = append(c.Processes, l.process(r, "processes", p))
	}
	if c.Source.Kind != "house" && c.Source.Kind != "none" {
		r.Fail("source", fmt.Sprintf("%q is not of kind house", c.Source.ID), "rates are the shop's own: name a [[source]] of kind house")
	}
	before := len(*l.errs)
	c.Read(r, l.cat.Rates)
	if len(*l.errs) == before && !slices.ContainsFunc(l.cat.Materials, c.Holds) {
		r.Fail("", "no metal of the catalog is meant", "check families, alloys, tempers and processes against each other")
	}
	r.Finish()
	l.cat.Rates = append(l.cat.Rates, c)
}

// known reads ids that must be among those of the catalog.
func (l *loader) known(r *record.Record, key, what string, ids []string) []string {
	list := r.Texts(key)
	for _, id := range list {
		if !slices.Contains(ids, id) {
			r.Fail(key, fmt.Sprintf("%q is no %s of the catalog", id, what), record.DidYouMean(id, ids))
		}
	}
	return list
}
