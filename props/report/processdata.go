package report

import (
	"alongside/props/foundry"
	"alongside/props/sheet"
)

var processColumns = []string{"material", "line", "value", "to", "unit", "text", "method", "condition", "source", "table", "known"}

// processData has a record for each statement of the process cards; values are
// those of the sources.
func processData(pages []*foundry.Page) *sheet.Doc {
	p := &processSheet{table: &sheet.Table{Columns: sheet.Columns(processColumns...)}}
	for _, page := range pages {
		p.material = page.Material.ID
		p.card(page.ProcessCard)
		for i := range page.Tolerances {
			p.tolerance(&page.Tolerances[i])
		}
		p.heat(page.Heat)
		for _, e := range page.Designation {
			p.add("designation: "+e.Part, e.Text, e.Cite, nil)
		}
		if a := page.Anodic; a != nil {
			p.add("anodic index", a.Group, a.Cite, record{"value": bare(a.Volts), "unit": "V"})
		}
	}
	return dataDoc(p.table, p.below(), processNote)
}

type processSheet struct {
	table    *sheet.Table
	material string
	numbering
}

// add adds a record; more are the cells that only some lines have.
func (p *processSheet) add(line, text string, c foundry.Cite, more record) {
	r := record{"material": p.material, "line": line, "text": text}
	for column, cell := range more {
		r[column] = cell
	}
	if c.Source != nil {
		r["source"], r["table"], r["known"] = p.mark(c.Source), c.Table, c.Known.String()
	}
	p.table.Add(r.cells(processColumns)...)
}

func (p *processSheet) card(c *foundry.ProcessCard) {
	if c.Why != "" {
		p.add("process card", c.Why, foundry.Cite{}, nil)
	}
	for i := range c.Items {
		it := &c.Items[i]
		more := record{"method": it.Method, "condition": it.Condition}
		if it.HasValue {
			more.putValue(it.Value)
			more["unit"] = it.Value.Unit.Symbol() + it.Unit
		}
		p.add(it.Kind.String(), it.Text, it.Cite, more)
	}
}

func (p *processSheet) tolerance(r *foundry.ToleranceResult) {
	more := record{"method": r.Method, "condition": r.Condition}
	text := joined("; ", r.Name, r.How, r.Why)
	line := "tolerance, plus or minus: " + r.Kind.String()
	value := r.PlusMinus
	if r.Kind == foundry.MachiningStock {
		line, value = r.Kind.String(), r.Full
	}
	if r.Why == "" {
		more.putValue(value)
		more["unit"] = value.Unit.Symbol()
	}
	p.add(line, text, r.Cite, more)
}

func (p *processSheet) heat(c *foundry.HeatCard) {
	for _, s := range c.Meaning {
		p.add("temper "+c.Material.Temper, s.Text, s.Cite, nil)
	}
	for _, s := range c.Reasons {
		p.add(joined(": ", "normally heat treated", c.Normally), s.Text, s.Cite, nil)
	}
	for _, t := range c.Tempers {
		p.add("solution-treated temper on file", t, foundry.Cite{}, nil)
	}
	for i := range c.Schedules {
		p.schedule("schedule", &c.Schedules[i])
	}
	if c.Why != "" {
		p.add("schedule", c.Why, foundry.Cite{}, nil)
	}
	for i := range c.Others {
		p.schedule("schedule for "+c.Others[i].Temper, &c.Others[i])
	}
}

func (p *processSheet) schedule(line string, s *foundry.Schedule) {
	p.add(line, joined("; ", s.String(), s.Note), s.Cite, nil)
}
