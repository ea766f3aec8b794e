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
	what := section(c.Severity.String()+": "+c.Title, "", c.Text)
	for _, w := range c.Why {
		what = what.with("why", w)
	}
	what = what.with("not checked", c.Unchecked)
	if c.Dismissed {
		what = what.with("state", "put aside for this part")
	}
	card.add(what.from(c.Cite).with("id", c.ID))
	for _, f := range c.Facts {
		card.add(section("Published", "", f.Text).from(f.Cite))
	}
	for i := range c.Figures {
		f := &c.Figures[i]
		s := section("", "figure", "none: "+f.Absent)
		if f.Figure != nil {
			s = figureSection(f.Material, f.Figure)
		}
		s.Title = f.Property.Info().Name + ", " + f.Material.Name()
		card.add(s)
	}
	return card
}
