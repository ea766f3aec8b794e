package catalog

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"alongside/props"
	"alongside/props/record"
	"alongside/units"
)

// Check is a [[checked]] record: that the shop looked a figure up in its own copy
// of the source.
//
//	[[checked]]
//	of = "a356-t6-pm"        # or alloy a356; T6; pm, or family zinc
//	property = "tensile_strength"
//	basis = "typical"
//	source = "ASM-ALCAST"
//	conditions = ""
//	catalog = "38 ksi"       # as the catalog has it
//	reads = "38.5 ksi"       # only where the copy prints another value
//	edition = "1993"
//	table = "Table 3"
//	by = "JK"
//	on = "2026-11-26"
type Check struct {
	Place
	Reads                  string
	Edition, Table, By, On string // On is a day: 2026-11-26
}

// Place is which figure of the catalog is meant. A catalog that has another value
// there has another figure.
type Place struct{ Of, Property, Basis, Source, Conditions, Catalog string }

// PlaceOf is the place of a stored figure; of a checked one that which it had
// before.
func PlaceOf(o Owner, f *props.Figure) Place {
	if f.Was != nil {
		f = f.Was
	}
	return Place{ownerText(o, f.Block), f.Property.String(), f.Basis.String(), f.Source.ID, f.Cond.String(), f.Value.String()}
}

// ownerText is what a block is stated for: "a356-t6-pm", "alloy a356; T6; pm".
func ownerText(o Owner, b *props.Block) string {
	text := "family " + o.Family.ID
	switch {
	case o.Material != nil:
		return o.Material.ID
	case o.Alloy != nil:
		text = "alloy " + o.Alloy.ID
	}
	var processes []string
	for _, p := range b.Processes {
		processes = append(processes, p.ID())
	}
	for _, list := range [][]string{b.Classes, b.Tempers, processes} {
		if len(list) > 0 {
			text += "; " + strings.Join(list, ", ")
		}
	}
	return text
}

// Problem says what is half filled or wrong in a check, and what to do; "" twice
// where it is whole.
func (c *Check) Problem() (field, problem, remedy string) {
	for _, x := range []struct{ key, text, remedy string }{
		{"edition", c.Edition, "write the edition of your copy, such as 2018"},
		{"table", c.Table, "write the table or page in your copy"},
		{"by", c.By, "write who looked it up"},
		{"on", c.On, "write the day: 2026-11-26"},
	} {
		switch {
		case x.text == "":
			return x.key, "is missing", x.remedy
		case len(x.text) > 200 || !utf8.ValidString(x.text) || strings.ContainsFunc(x.text, unicode.IsControl):
			return x.key, "is longer than 200 letters, or holds signs that are no text", x.remedy
		}
	}
	if _, err := time.Parse(time.DateOnly, c.On); err != nil {
		return "on", fmt.Sprintf("%q is not a date", c.On), "write year, month and day: 2026-11-26"
	}
	return "", "", ""
}

// ReadCheck reads a [[checked]] record.
func ReadCheck(r *record.Record) Check {
	c := Check{
		Place: Place{Of: r.Text("of", true), Property: r.Text("property", true), Basis: r.Text("basis", true), Source: r.Text("source", true),
			Conditions: r.Text("conditions", false), Catalog: r.Text("catalog", true)},
		Reads: r.Text("reads", false), Edition: r.Text("edition", false), Table: r.Text("table", false), By: r.Text("by", false), On: r.Text("on", false),
	}
	r.Label = c.Of
	if field, problem, remedy := c.Problem(); problem != "" {
		r.Fail(field, problem, remedy)
	}
	r.Finish()
	return c
}

// checked puts what the shop found in the place of a figure. Where the catalog
// has no such figure any more the check is dropped, with a word.
func (l *loader) checked(r *record.Record) {
	before := len(*l.errs)
	c := ReadCheck(r)
	if len(*l.errs) > before {
		return
	}
	o, stated := l.statedAt(c.Of)
	fits, other := 0, ""
	for i := range stated {
		if f := &stated[i]; f.Property.String() != c.Property || f.Source.ID != c.Source {
			continue // most are of another property or source
		}
		switch p := PlaceOf(o, &stated[i]); {
		case p == c.Place:
			fits++
			if err := c.put(&stated[i]); err != nil {
				r.Fail("reads", err.Error(), "write the value as your copy prints it, with its unit")
				return
			}
		case other == "" && p.Of == c.Of && p.Basis == c.Basis && p.Conditions == c.Conditions:
			other = p.Catalog
		}
	}
	if fits == 0 {
		now := "no longer has this figure"
		if other != "" {
			now = "has " + other + " now"
		}
		l.cat.Dropped = append(l.cat.Dropped, fmt.Sprintf("%s:%d: the shop's check of %s, %s %s (%s) is not used: the catalog %s; look it up again", r.File(), r.LineOf(""),
			c.Of, strings.ReplaceAll(c.Property, "_", " "), c.Catalog, c.Source, now))
	}
}

// put makes a figure the one that the shop found.
func (c *Check) put(f *props.Figure) error {
	was := f
	if f.Was != nil {
		was = f.Was
	}
	checked, block, old := *was, *was.Block, *was
	if c.Reads != "" {
		value, err := ReadValue(was, c.Reads)
		if err != nil {
			return err
		}
		checked.Value = value
	}
	block.Was, block.Table = &old, c.Table
	block.Where = fmt.Sprintf("edition %s, looked up by %s on %s", c.Edition, c.By, c.On)
	checked.Block, checked.Agrees = &block, nil
	*f = checked
	return nil
}

// statedAt are the figures stored with an owner, ready to be changed; none where
// there is no such owner.
func (l *loader) statedAt(of string) (Owner, []props.Figure) {
	name, _, _ := strings.Cut(of, ";")
	if id, ok := strings.CutPrefix(name, "family "); ok {
		i := slices.IndexFunc(l.cat.Families, func(f *props.Family) bool { return f.ID == id })
		if i < 0 {
			return Owner{}, nil
		}
		f := l.ownFamily(i)
		return Owner{Family: f}, f.Stated
	}
	if id, ok := strings.CutPrefix(name, "alloy "); ok {
		i := slices.IndexFunc(l.cat.Alloys, func(a *props.Alloy) bool { return a.ID == id })
		if i < 0 {
			return Owner{}, nil
		}
		a := l.ownAlloy(i)
		return Owner{a.Family, a, nil}, a.Stated
	}
	m := l.own(of)
	if m == nil {
		return Owner{}, nil
	}
	return Owner{m.Alloy.Family, m.Alloy, m}, m.Stated
}

// ReadValue reads another value for a figure; a bare number is in the figure's
// own unit.
func ReadValue(f *props.Figure, text string) (units.Quantity, error) {
	q, err := units.ParseAs(text, f.Value.Unit.Dimension(), f.Value.Unit)
	if err != nil {
		return q, err
	}
	if q.Lo > q.Hi || q.Qual != units.Exact && q.Qual != units.Approx {
		return q, errors.New("is no bare value or range from low to high")
	}
	if problem := Implausible(f.Property.Info(), q); problem != "" {
		return q, errors.New(problem)
	}
	return q, nil
}
