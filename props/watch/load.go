package watch

import (
	"fmt"
	"io/fs"
	"slices"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/foundry"
	"alongside/props/part"
	"alongside/props/record"
)

// Load reads the rule files that match the patterns. Their records refer to
// the families of the catalog and to the sources of the book. When anything
// is wrong the error is a record.Errors with every mistake; the rules then
// hold what could be read.
func Load(base *catalog.Catalog, book *foundry.Book, fsys fs.FS, patterns ...string) (*Rules, error) {
	var errs record.Errors
	l := &loader{rules: &Rules{book: book}, reader: book.Reader(base)}
	records, err := foundry.ReadRecords(fsys, patterns, &errs, "watch")
	if err != nil {
		return nil, err
	}
	for _, r := range records {
		before, good := len(errs), l.rules.List
		l.rule(r)
		if len(errs) > before {
			// A rule with a mistake might be raised where it should not.
			l.rules.List, l.at = good, l.at[:len(good)]
		}
	}
	l.checkUnless()
	l.rules.cites = l.reader.Cited()
	if len(errs) > 0 {
		return l.rules, errs.Sorted()
	}
	return l.rules, nil
}

type loader struct {
	rules  *Rules
	reader *foundry.Reader
	at     []*record.Record // of each rule
}

// checkUnless reports rules that give way to one that does not exist.
func (l *loader) checkUnless() {
	ids := l.rules.IDs()
	for i := range l.rules.List {
		for _, id := range l.rules.List[i].unless {
			if !slices.Contains(ids, id) || id == ids[i] {
				l.at[i].Fail("unless", fmt.Sprintf("%q is not another rule", id), record.DidYouMean(id, slices.Clone(ids)))
			}
		}
	}
}

// rule reads one rule and holds it against the others.
func (l *loader) rule(r *record.Record) {
	rule := Rule{ID: r.Text("id", true), Title: r.Text("title", true), Text: r.Text("text", true)}
	r.Label = rule.ID
	for i := range l.rules.List {
		if l.rules.List[i].ID == rule.ID && rule.ID != "" {
			r.Fail("id", fmt.Sprintf("%q stands twice", rule.ID), "give one of the two another id, or delete it")
		}
	}
	rule.degree(r)
	rule.from = l.reader.Scope(r, "from", "from_")
	rule.to = l.reader.Scope(r, "to", "")
	rule.unless = r.Texts("unless")
	l.at = append(l.at, r)
	l.conditions(r, &rule)
	for _, t := range r.Tables("fact") {
		f := foundry.Statement{Text: t.Text("text", true)}
		f.Cite = l.reader.Cite(t)
		t.Finish()
		rule.Facts = append(rule.Facts, f)
	}
	rule.Cite = l.reader.Cite(r)
	r.Finish()
	rule.whom(r)
	for _, lim := range rule.limit {
		if lim.op != "absent" && lim.property != props.NoProperty && !slices.Contains(rule.show, lim.property) {
			rule.show = append(rule.show, lim.property)
		}
	}
	l.rules.List = append(l.rules.List, rule)
}

// degree reads how grave a rule is.
func (rule *Rule) degree(r *record.Record) {
	switch word := r.Text("severity", true); word {
	case "check", "":
	case "ask":
		rule.Severity = Ask
	default:
		r.Fail("severity", fmt.Sprintf("%q is not a severity", word), "write check, or ask for stop and ask")
	}
	rule.Gravity = Duty
	if v, ok := r.Value("gravity"); ok {
		n, whole := v.(int64)
		if rule.Gravity = Gravity(n); !whole || n < int64(Harm) || n > int64(Reading) {
			r.Fail("gravity", fmt.Sprintf("%v is not a gravity", v), "write a number from 1, can hurt someone, to 5, concerns the figures only")
		}
	}
}

// whom refuses a rule that does not say for whom it is raised.
func (rule *Rule) whom(r *record.Record) {
	if rule.fresh && rule.to.Empty() {
		r.Fail("new", "needs a description of the pin", `add to = […], processes, tempers or alloys`)
	}
	narrow := slices.ContainsFunc([]string{"with", "medium", "when", "mate"}, func(key string) bool { return !r.Absent(key) })
	if rule.from.Empty() && rule.to.Empty() && !narrow {
		r.Fail("to", "is missing: the rule would be raised for everything", "say from, to, with, medium, mate or when")
	}
}

// conditions reads what must hold beside the two metals for a rule to be
// raised, and which properties it shows.
func (l *loader) conditions(r *record.Record, rule *Rule) {
	rule.mate = l.reader.Families(r, "mate")
	if v, ok := r.Value("new"); ok {
		if rule.fresh, ok = v.(bool); !ok {
			r.Fail("new", fmt.Sprintf("is %v", v), "write new = true, or leave it out")
		}
	}
	for _, word := range r.Texts("with") {
		f, err := part.ParseFact(word)
		if err != nil {
			r.Fail("with", err.Error(), "see the list of facts in the developers' guide")
		}
		rule.with |= f
	}
	for _, id := range r.Texts("medium") {
		m, ok := part.ParseMedia(id)
		switch {
		case id == "unsaid":
			rule.unsaid = true
		case !ok:
			r.Fail("medium", fmt.Sprintf("%q is not a medium", id), record.DidYouMean(id, part.MediaIDs()))
		}
		rule.media |= m
	}
	for _, text := range r.Texts("when") {
		if lim, ok := readLimit(r, text); ok {
			rule.limit = append(rule.limit, lim)
		}
	}
	for _, word := range r.Texts("show") {
		p, ok := props.PropertyNamed(word)
		if !ok {
			r.Fail("show", fmt.Sprintf("%q is not a property", word), "use the id of a property, as in the data files")
			continue
		}
		rule.show = append(rule.show, p)
	}
}
