package report

import (
	"alongside/props/sheet"
	"alongside/units"
)

// ConvertDoc is one quantity in several units: rounded to the digits it came
// with, or with all its digits. Sheets and JSON have all digits always.
func ConvertDoc(list []units.Quantity, full bool) *Doc {
	return &Doc{
		text: func(*numbering) *sheet.Doc {
			var lines sheet.Lines
			for _, q := range list {
				lines = append(lines, quantityText(q, full))
			}
			return &sheet.Doc{Blocks: []sheet.Block{lines}}
		},
		data: func() *sheet.Doc {
			columns := []string{"value", "to", "unit", "printed"}
			t := &sheet.Table{Columns: sheet.Columns(columns...)}
			for _, q := range list {
				r := record{"unit": q.Unit.Symbol(), "printed": q.String()}
				r.putValue(q)
				t.Add(r.cells(columns)...)
			}
			return &sheet.Doc{Blocks: []sheet.Block{t}}
		},
		json: func() object {
			return object{{"values", each(list, func(q *units.Quantity) object { return valueJSON(*q) })}}
		},
	}
}

// quantityText is a quantity as shown, or with all its digits.
func quantityText(q units.Quantity, full bool) string {
	if !full {
		return q.String()
	}
	value := bare(q.Lo)
	if q.IsRange() {
		value += "–" + bare(q.Hi)
	}
	return joined(" ", q.Qual.String(), value, q.Unit.Symbol())
}
