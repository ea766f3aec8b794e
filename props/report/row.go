package report

import (
	"alongside/props"
	"alongside/props/compare"
	"alongside/units"
)

// rowWords name a row and say how its printed numbers count, for every output.
type rowWords struct {
	name, short string
	symbol      string // of the unit
	unit        string // symbol as the head of a row has it
	sense       props.Sense
}

// wordsOf are the words of a row. A conductivity shown in a unit of resistivity
// is one, and less of it is better.
func wordsOf(row *compare.Row) rowWords {
	w := rowWords{symbol: row.Unit.Symbol(), sense: row.Sense}
	w.name, w.short = nameIn(row.Property, row.Unit)
	switch row.Unit.Dimension() {
	case units.Ratio:
	case units.Rating:
		w.unit = "1 best–5"
	default:
		w.unit = w.symbol
	}
	if row.Unit.Reciprocal() {
		switch row.Sense {
		case props.More:
			w.sense = props.Less
		case props.Less:
			w.sense = props.More
		}
	}
	return w
}

// nameIn is the long and the short name of a property whose values are shown
// in a unit.
func nameIn(p props.PropertyID, u units.Unit) (name, short string) {
	if u.Reciprocal() {
		return "Electrical resistivity", "Resistivity"
	}
	return p.Info().Name, p.Info().Short
}

// titled is a row and a material: "Density, A356.0-T6 sand".
func titled(row *compare.Row, m *props.Material) string { return wordsOf(row).name + ", " + m.Name() }

// headIn heads a column of values of a property in a unit: "yield ksi".
func headIn(p props.PropertyID, u units.Unit) []string {
	_, short := nameIn(p, u)
	return []string{props.InSentence(short), u.Symbol()}
}

var senses = [...]string{props.Neutral: "", props.More: "↑", props.Less: "↓", props.Near: "±"}
