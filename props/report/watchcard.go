package report

import (
	"strings"

	"alongside/props/watch"
)

// WatchCount says how many cautions are open and how many are not, in one
// line.
func WatchCount(list []watch.Caution) string { return countText(watch.Counts(list)) }

// CautionWhy says in one line what raised a caution and where it comes from.
func CautionWhy(c *watch.Caution) string {
	text := "Why: " + strings.Join(c.Why, "; ")
	if len(c.Why) == 0 {
		text = "Not checked: " + c.Unchecked
	}
	if c.Source == nil || c.Practice() {
		return text + ". Common practice, no source."
	}
	return text + ". Source: " + cited(c.Source.ID, c.Table, c.Known) + "."
}

// NewCautionCard tells what a caution says, what raised it, and the figures
// that it rests on, each with its source.
func NewCautionCard(c *watch.Caution) *Card {
	card := &Card{Title: c.Title}
	what := section(c.Severity.String() + ": " + c.Title)
	what.add("", c.Text)
	for _, w := range c.Why {
		what.add("why", w)
	}
	what.add("not checked", c.Unchecked)
	if c.Dismissed {
		what.add("state", "put aside for this part")
	}
	citeItems(&what, c.Cite)
	what.add("id", c.ID)
	card.Sections = append(card.Sections, what)
	for _, f := range c.Facts {
		s := section("Published")
		s.add("", f.Text)
		citeItems(&s, f.Cite)
		card.Sections = append(card.Sections, s)
	}
	for i := range c.Figures {
		f := &c.Figures[i]
		title := f.Property.Info().Name + ", " + f.Material.Name()
		if f.Figure == nil {
			s := section(title)
			s.add("figure", "none: "+f.Absent)
			card.Sections = append(card.Sections, s)
			continue
		}
		s := figureSection(f.Material, f.Figure)
		s.Title = title
		card.Sections = append(card.Sections, s)
	}
	return card
}
