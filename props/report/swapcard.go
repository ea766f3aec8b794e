package report

import (
	"strings"

	"alongside/props"
	"alongside/props/swap"
)

// SwapLineText says a line of a swap in words: the result, or what it waits
// for, and below it the cautions that come with it.
func SwapLineText(l *swap.Line) (text, cautions string) {
	switch {
	case l.Value != nil && l.Words == "":
		text = l.Value.String()
		if l.Base != nil {
			text += " instead of " + l.Base.String()
		}
		if l.Ratio != nil {
			text += ", " + ratioWords(l)
		}
	case l.Words != "":
		text = l.Words
	case l.Ratio != nil:
		text = ratioWords(l)
	case l.Reason != "":
		text = "no number: " + l.Reason
	default:
		text = l.Need
	}
	if l.Done() && l.Need != "" {
		text += "; " + l.Need
	}
	return text, strings.Join(l.Notes, "; ")
}

// ratioWords is "0.373× (−63 %)".
func ratioWords(l *swap.Line) string {
	if c := l.Change(); c != "" {
		return l.RatioText() + " (" + c + ")"
	}
	return l.RatioText()
}

// NewSwapCard answers how a line of a swap was worked out: the relation, its
// source, and the figures put into it with theirs, each once.
func NewSwapCard(r *swap.Result, l *swap.Line) *Card {
	card := &Card{Title: l.Name + ", " + r.Pin.Name()}
	text, _ := SwapLineText(l)
	result := section("Result", "", text+".")
	for _, v := range []struct {
		label string
		value *swap.Value
	}{{"swapped", l.Value}, {"today", l.Base}, {"ratio", l.Ratio}} {
		if v.value != nil && v.value.Lo != v.value.Hi {
			lo, hi := *v.value, *v.value
			lo.Range, lo.Mid = false, v.value.Lo
			hi.Range, hi.Mid = false, v.value.Hi
			result = result.with(v.label+", worst cases", lo.Number()+" to "+strings.TrimSuffix(hi.String(), " "))
		}
	}
	for _, n := range l.Notes {
		result = result.with("note", n)
	}
	card.add(result)
	if f := l.Formula; f.Source != nil {
		card.add(section("Formula", "", f.Text, "", "1 is the part today, 2 the part swapped, m the mate.").published(f.Source).with("known", knownText(f.Known, "", nil)))
	}
	card.add(section("The part", "", r.Given.Part.Summary()))
	seen := map[*props.Figure]bool{}
	for _, u := range l.Figures {
		if !seen[u.Figure] {
			seen[u.Figure] = true
			s := figureSection(u.Of, u.Figure)
			s.Title = u.Symbol + ": " + props.InSentence(u.Figure.Property.Info().Name) + ", " + u.Of.Name()
			card.add(s)
		}
	}
	return card
}
