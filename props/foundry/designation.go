package foundry

import (
	"regexp"

	"alongside/props"
)

// pattern explains the parts of a designation that match it.
type pattern struct {
	Scope
	on    string // name, uns, temper
	match *regexp.Regexp
	part  string
	text  string
	Cite
}

// Explanation is what one part of a designation says.
type Explanation struct {
	Part string // "first digit", "letter prefix", "temper"
	Statement
}

// Designation explains a material's designation part by part: series digit,
// prefix, form digit, class numbers, UNS letter, temper. Parts that nothing
// on file explains are left out.
func (b *Book) Designation(m *props.Material) []Explanation {
	var out []Explanation
	for _, p := range about(b.designations, m) {
		on := m.Alloy.Name
		if p.on == "uns" {
			on = m.Alloy.UNS
		}
		if on != "" && p.match.MatchString(on) {
			out = append(out, Explanation{p.part, Statement{fill(p.text, p.match, on), p.Cite}})
		}
	}
	for _, s := range b.temper(m) {
		out = append(out, Explanation{"temper " + m.Temper, s})
	}
	return out
}
