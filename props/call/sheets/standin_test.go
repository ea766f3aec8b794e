package sheets

import (
	"testing"

	"alongside/data"
	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/part"
	"alongside/props/swap"
)

// A material that the catalog does not have can be compared, judged and
// exchanged like any other, and has no figures.
func TestStandIn(t *testing.T) {
	c, gone := data.Catalog(), standIn("gone-t6-pm")
	if gone.Name() != "gone-t6-pm" || gone.Has(props.Density) {
		t.Errorf("%s has figures", gone.Name())
	}
	for _, next := range []func(*props.Material, catalog.Direction) *props.Material{c.NextTemper, c.NextProcess, c.NextAlloy} {
		if have := next(gone, catalog.Forward); have != gone {
			t.Errorf("next to it is %s", have.Name())
		}
	}
	gray := c.Material("gray-30")
	b := compare.NewBench()
	b.Pin(gone)
	b.Pin(gray)
	for _, row := range compare.Compare(b).Rows {
		if row.Cells[0].Figure != nil || row.Cells[0].Absent == "" {
			t.Errorf("%s: %+v", row.Property, row.Cells[0])
		}
	}
	for _, n := range full(t).Needs {
		if j := needs.Judge(gone, &n); n.Kind == needs.OfProperty && j.Status != needs.NoFigure {
			t.Errorf("%s is judged %v", n.String(), j.Status)
		}
	}
	given, _ := part.Part{Mass: "4 lb", Wall: "3/8 in"}.Read(c)
	swap.Work(&b, given, gone, gray)
	swap.Work(&b, given, gray, gone)
	data.Watch().Evaluate(b, gone, gray, given, nil)
	data.Watch().Evaluate(b, gray, gone, given, nil)
}
