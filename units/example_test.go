package units_test

import (
	"errors"
	"fmt"

	"alongside/units"
)

func ExampleParse() {
	for _, s := range []string{"37 ksi", "0.097 lb/in3", "39% IACS", "11.9e-6 /°F", "1 1/8 in", "70-100 HB 500/10", ">= 30 ksi", "37 ksi (255 MPa)", "1 ft 6 in", "±0.015 in"} {
		q, err := units.Parse(s)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(q)
	}
	// Output:
	// 37 ksi
	// 0.097 lb/in³
	// 39 %IACS
	// 11.9 ×10⁻⁶/°F
	// 1.125 in
	// 70–100 HB 500/10
	// ≥ 30 ksi
	// 37 ksi
	// 18 in
	// ±0.015 in
}

func ExampleQuantity_In() {
	q, _ := units.Parse("37 ksi")
	mpa, _ := q.In(units.MPa)
	fmt.Println(mpa)
	fmt.Printf("%.3f\n", mpa.Lo)
	// Output:
	// 255 MPa
	// 255.106
}

func ExampleParseAs() {
	q, _ := units.ParseAs("37", units.Stress, units.KSI)
	fmt.Println(q)
	_, err := units.ParseAs("37 ksi", units.Density, units.NoUnit)
	fmt.Println(err)
	// Output:
	// 37 ksi
	// "37 ksi": understood 37 ksi (stress); expected a unit of density such as lb/in³, lb/ft³, g/cm³, kg/m³
}

func ExampleError() {
	_, err := units.Parse("37 kis")
	fmt.Println(err)
	var e *units.Error
	if errors.As(err, &e) {
		fmt.Println(e.Hint)
	}
	// Output:
	// "37 kis": understood 37, but no unit in "kis"; expected a unit such as ksi, MPa, lb/in³, W/m·K, °F: did you mean ksi?
	// did you mean ksi?
}

func ExamplePreferred() {
	for _, s := range []units.System{units.US, units.SI, units.CGS} {
		fmt.Println(s, units.Preferred(units.ThermalConductivity, s))
	}
	// Output:
	// us Btu/h·ft·°F
	// si W/m·K
	// cgs cal/cm·s·°C
}

func ExampleQuantity_Possible() {
	_, err := units.Parse("-500 °F")
	fmt.Println(err)
	fmt.Println(units.Quantity{Lo: -460, Hi: 20, Unit: units.DegF}.Possible())
	// Output:
	// "-500 °F": understood -500 °F, below absolute zero; expected a temperature of at least -459.67 °F (-273.15 °C)
	// <nil>
}

func ExampleParseUnit() {
	for _, s := range []string{"BTU/ft-h-F", "W m⁻¹ K⁻¹", "lbs/cu in", "MPa√m", "tons"} {
		u, err := units.ParseUnit(s)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(u, "is", u.Dimension())
	}
	// Output:
	// Btu/h·ft·°F is thermal conductivity
	// W/m·K is thermal conductivity
	// lb/in³ is density
	// MPa·√m is fracture toughness
	// "tons": understood no unit in "tons"; expected a unit such as ksi, MPa, lb/in³, W/m·K, °F: say which: short tons (2000 lb), long tons (2240 lb) or t (metric)
}
