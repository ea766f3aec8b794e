package units_test

import (
	"testing"

	"alongside/units"
)

func BenchmarkParse(b *testing.B) {
	for _, s := range []string{"37 ksi", "0.36 cal/(cm·s·°C)", "11.9e-6 /°F", "70–100 HB 500/10"} {
		b.Run(s, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := units.Parse(s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkConvert(b *testing.B) {
	for _, c := range []struct {
		name     string
		from, to units.Unit
	}{{"factor", units.KSI, units.MPa}, {"reciprocal", units.IACS, units.MicroOhmCM}, {"temperature", units.DegF, units.DegC}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			var sum float64
			for b.Loop() {
				v, _ := units.Convert(39, c.from, c.to)
				sum += v
			}
			_ = sum
		})
	}
}

func BenchmarkIn(b *testing.B) {
	q, err := units.Parse("70–100 ksi")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := q.In(units.MPa); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkString(b *testing.B) {
	q, err := units.Parse("70–100 ksi")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		_ = q.String()
	}
}
