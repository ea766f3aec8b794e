package units_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"alongside/units"
)

// allUnits holds every unit of the table, in order.
func allUnits() []units.Unit {
	var us []units.Unit
	for d := units.NoDimension + 1; d <= units.HK; d++ {
		us = append(us, units.UnitsOf(d)...)
	}
	return us
}

// drawPair draws two units of one dimension.
func drawPair(t *rapid.T) (a, b units.Unit) {
	a = rapid.SampledFrom(allUnits()).Draw(t, "from")
	return a, rapid.SampledFrom(units.UnitsOf(a.Dimension())).Draw(t, "to")
}

// drawDecimal draws a value as a table prints one: a few digits at some place.
func drawDecimal(t *rapid.T, name string, least int) (v float64, place int8) {
	n := rapid.IntRange(least, 99999).Draw(t, name)
	p := rapid.IntRange(-6, 0).Draw(t, name+" place")
	return float64(n) / math.Pow(10, float64(-p)), int8(p)
}

func drawQuantity(t *rapid.T, u units.Unit) units.Quantity {
	lo, place := drawDecimal(t, "value", 1)
	q := units.Quantity{Lo: lo, Hi: lo, Place: place, Unit: u}
	if rapid.Bool().Draw(t, "range") {
		q.Hi += float64(rapid.IntRange(1, 500).Draw(t, "width"))
	} else {
		q.Qual = units.Qualifier(rapid.IntRange(0, 5).Draw(t, "qualifier"))
	}
	return q
}

func TestConvertThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPair(t)
		v, _ := drawDecimal(t, "value", 1)
		there, err := units.Convert(v, a, b)
		if err != nil {
			t.Fatal(err)
		}
		back, err := units.Convert(there, b, a)
		if err != nil || math.Abs(back-v) > 1e-12*max(v, 1000) {
			t.Fatalf("%v %s is %v %s, and back %v (%v)", v, a, there, b, back, err)
		}
	})
}

func TestConvertAgreesWithSI(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPair(t)
		v, _ := drawDecimal(t, "value", 1)
		got, err := units.Convert(v, a, b)
		want := b.FromSI(a.ToSI(v))
		if err != nil || math.Abs(got-want) > 1e-11*max(math.Abs(want), 1) && !near(got, want, 1e-11) {
			t.Fatalf("%v %s: have %v %s (%v), by way of SI %v", v, a, got, b, err, want)
		}
	})
}

// A path through a third unit leads to the same value.
func TestInThenInIsIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPair(t)
		c := rapid.SampledFrom(units.UnitsOf(a.Dimension())).Draw(t, "then")
		q := drawQuantity(t, a)
		viaB, err1 := q.In(b)
		viaC, err2 := viaB.In(c)
		direct, err3 := q.In(c)
		if err1 != nil || err2 != nil || err3 != nil {
			t.Fatal(err1, err2, err3)
		}
		if !near(viaC.Lo, direct.Lo, 1e-11) && math.Abs(viaC.Lo-direct.Lo) > 1e-9 || viaC.Qual != direct.Qual || viaC.Unit != direct.Unit {
			t.Fatalf("%v: have %#v by way of %s, %#v directly", q, viaC, b, direct)
		}
	})
}

func TestReciprocity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPair(t)
		q := drawQuantity(t, a)
		r, err := q.In(b)
		if err != nil {
			t.Fatal(err)
		}
		if r.Lo > r.Hi || q.IsRange() != r.IsRange() {
			t.Fatalf("%v became %#v", q, r)
		}
		turned := a.Reciprocal() != b.Reciprocal()
		if turned && q.Qual == units.AtLeast && r.Qual != units.AtMost || !turned && r.Qual != q.Qual {
			t.Fatalf("the limit of %v became that of %v", q, r)
		}
	})
}

// A larger figure never converts to a smaller one, but for reciprocals.
func TestConvertKeepsOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPair(t)
		v, _ := drawDecimal(t, "value", 1)
		more := v * (1 + rapid.Float64Range(0.001, 2).Draw(t, "more"))
		x, err1 := units.Convert(v, a, b)
		y, err2 := units.Convert(more, a, b)
		if err1 != nil || err2 != nil || (x < y) == (a.Reciprocal() != b.Reciprocal()) {
			t.Fatalf("%v and %v %s are %v and %v %s (%v, %v)", v, more, a, x, y, b, err1, err2)
		}
	})
}

// What is printed is read back as the same figure.
func TestParseOfFormat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := drawQuantity(t, rapid.SampledFrom(allUnits()).Draw(t, "unit"))
		checkRoundTrip(t, q)
		b := rapid.SampledFrom(units.UnitsOf(q.Unit.Dimension())).Draw(t, "to")
		r, err := q.In(b)
		if err != nil {
			t.Fatal(err)
		}
		checkRoundTrip(t, r)
	})
}

// checkRoundTrip reads back what q prints: unit and qualifier are the same and
// the values are those printed. 4.4e-8 Ω·m may come back in the unit ×10⁻⁸ Ω·m.
// Zeros that end a whole number may lose their significance, but a second time
// nothing changes.
func checkRoundTrip(t interface{ Fatalf(string, ...any) }, q units.Quantity) {
	s := q.String()
	r, err := units.ParseAs(s, q.Unit.Dimension(), q.Unit)
	if err != nil {
		t.Fatalf("%#v prints %q, which fails: %v", q, s, err)
	}
	if v := math.Max(math.Abs(q.Lo), math.Abs(q.Hi)); v >= 1e9 && !math.IsInf(v, 0) {
		// Such numbers print with a power of ten; their zeros may lose or gain
		// significance. The values stay.
		near := 0.51*math.Pow10(int(q.Place)) + 1e-9*v
		if r, err = r.In(q.Unit); err != nil || math.Abs(r.Hi-q.Hi) > near || math.Abs(r.Lo-q.Lo) > near {
			t.Fatalf("%#v prints %q, which reads %#v (%v)", q, s, r, err)
		}
		return
	}
	if r.Unit != q.Unit {
		if r, err = r.In(q.Unit); err != nil {
			t.Fatalf("%#v prints %q, which is in another unit: %v", q, s, err)
		}
		r.Place = q.Place
		if r.Qual != q.Qual || r.Number() != q.Number() {
			t.Fatalf("%#v prints %q, which reads %#v (%s)", q, s, r, r)
		}
		return
	}
	if r.Qual != q.Qual || r.Number() != q.Number() {
		t.Fatalf("%#v prints %q, which reads %#v (%s)", q, s, r, r)
	}
	again, err := units.ParseAs(r.String(), r.Unit.Dimension(), r.Unit)
	if err != nil || again != r {
		t.Fatalf("%q reads %#v and then %#v (%v)", s, r, again, err)
	}
}

// The shown figure differs from the kept one by no more than half of its last
// digit, and rounding does not show more than B.7.1 allows.
func TestInRoundsWithinHalfADigit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPair(t)
		v, place := drawDecimal(t, "value", 1)
		q := units.Quantity{Lo: v, Hi: v, Place: place, Unit: a}
		r, err := q.In(b)
		if err != nil {
			t.Fatal(err)
		}
		shown, err := units.ParseAs(r.Number(), b.Dimension(), b)
		if err != nil {
			t.Fatal(err)
		}
		if off := math.Abs(shown.Lo - r.Lo); off > 0.5000001*math.Pow(10, float64(r.Place)) {
			t.Fatalf("%v shows %s for %v", q, r, r.Lo)
		}
	})
}
