package needs_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/spoken"
	"alongside/units"
)

func limits(t *testing.T, text string) []needs.Need {
	t.Helper()
	list, err := spoken.Read(text, data.Catalog(), units.US, nil).Limits()
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// Each order puts the catalog as it says, and loses no result.
func TestOrders(t *testing.T) {
	c, b := data.Catalog(), compare.NewBench()
	base := c.Material("gray-30")
	found := needs.Find(c.AskedFor(), limits(t, "tensile >= 20 ksi; density <= 0.3 lb/in3"), 0, true).Met
	if len(found) < 100 {
		t.Fatalf("only %d found", len(found))
	}
	least := func(r *needs.Result) float64 {
		room := math.Inf(1)
		for _, j := range r.Judgements {
			room = min(room, j.Percent)
		}
		return room
	}
	value := func(r *needs.Result) float64 { // as judged: less density is better
		_, mid, _ := r.Judgements[1].Figure.SI()
		return mid
	}
	for name, order := range map[string]struct {
		sort func([]needs.Result)
		key  func(*needs.Result) float64
	}{
		"margin":   {needs.SortByMargin, func(r *needs.Result) float64 { return -least(r) }},
		"density":  {func(l []needs.Result) { needs.SortByProperty(l, &b, props.Density) }, value},
		"likeness": {func(l []needs.Result) { needs.SortByLikeness(l, &b, base) }, func(r *needs.Result) float64 { return needs.Unlikeness(&b, r.Material, base) }},
	} {
		list := slices.Clone(found)
		order.sort(list)
		if len(list) != len(found) {
			t.Errorf("%s: %d of %d are left", name, len(list), len(found))
		}
		for i := 1; i < len(list); i++ {
			if order.key(&list[i-1]) > order.key(&list[i]) {
				t.Errorf("%s: %s stands before %s", name, list[i-1].Material.ID, list[i].Material.ID)
			}
		}
	}
	if needs.Unlikeness(&b, base, base) != 0 {
		t.Error("a metal is not like itself")
	}
	near := limits(t, "yield >= 20 ksi")[0]
	b.Senses = map[props.PropertyID]compare.SenseSetting{props.TensileStrength: {Sense: props.Near, Target: units.KSI.ToSI(30)}}
	list := needs.Find(c.AskedFor(), []needs.Need{near}, 0, true).Met
	needs.SortByProperty(list, &b, props.TensileStrength)
	if f := b.Figure(list[0].Material, props.TensileStrength); f == nil || math.Abs(f.Value.Unit.ToSI(f.Value.Lo)-units.KSI.ToSI(30)) > units.KSI.ToSI(1) {
		t.Errorf("nearest to 30 ksi: %s", list[0].Material.ID)
	}
}

// How far a metal lies outside a limit, and what a judgement says where figures under
// several conditions disagree or only a bound is certain.
func TestJudgedUnderConditions(t *testing.T) {
	c := data.Catalog()
	for _, tt := range []struct {
		id, need string
		want     needs.Status
		short    float64
		note     string
	}{
		{"a356-t6-sand", "brinell >= 70 HB 500/10", needs.Met, 0, ""},
		{"a356-t6-pm", "brinell >= 80 HBW 10/3000", needs.Undecided, math.Inf(1), "kgf"},
		{"a356-t6-pm", "brinell >= 180 HBW 10/3000", needs.NotMet, 0.4, ""},
		{"a356-t6-pm", "tensile 30-40 ksi", needs.Partly, 0.025, "above it"},
		{"gray-30", "process = die", needs.NotMet, 1, ""},
		{"gray-30", "yield >= 20 ksi", needs.NoFigure, math.Inf(1), ""},
		{"a380-f-die", "anodizing, appearance 1 or better", needs.NotMet, 1, ""},
	} {
		n := limits(t, tt.need)[0]
		j := needs.Judge(c.Material(tt.id), &n)
		short := j.Shortfall()
		if j.Status != tt.want || !strings.Contains(j.Note, tt.note) || tt.short == 0 && short != 0 || tt.short > 0 && (short <= 0 || math.IsInf(tt.short, 1) != math.IsInf(short, 1)) {
			t.Errorf("%s, %s: %v, short by %g, %q", tt.id, tt.need, j.Status, short, j.Note)
		}
		if j.Status.String() == "" {
			t.Errorf("%s, %s: a state without a name", tt.id, tt.need)
		}
	}
}

// A need is known by its text; one that was switched off is switched on.
func TestAddSwitchesOn(t *testing.T) {
	list := limits(t, "yield >= 20 ksi; not zinc")
	list[0].Off = true
	again := limits(t, "yield >= 20 ksi")[0]
	if list = needs.Add(list, again); len(list) != 2 || list[0].Off {
		t.Errorf("have %+v", list)
	}
	for op := needs.AtLeast; op <= needs.Between; op++ {
		if op.Turned().Turned() != op || op.Inverse().Inverse() != op || op.Closed().Closed() != op.Closed() {
			t.Errorf("operator %d does not come back", op)
		}
	}
	for _, d := range needs.Duties() {
		if have, ok := needs.DutyNamed(d.ID); !ok || have.Name != d.Name {
			t.Errorf("%s is not found", d.ID)
		}
	}
	if _, ok := needs.DutyNamed("none"); ok {
		t.Error("a duty that is not there")
	}
}
