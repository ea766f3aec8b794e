package units_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"alongside/units"
)

// checkDimensions gives the dimension that a quantity of checks.csv has.
var checkDimensions = map[string]units.Dimension{
	"stress":                        units.Stress,
	"modulus":                       units.Stress,
	"fracture toughness":            units.FractureToughness,
	"density":                       units.Density,
	"resistivity":                   units.ElectricalConductivity,
	"resistivity from conductivity": units.ElectricalConductivity,
	"electrical conductivity":       units.ElectricalConductivity,
	"thermal conductivity":          units.ThermalConductivity,
	"heat transfer coefficient":     units.HeatTransfer,
	"specific heat":                 units.SpecificHeat,
	"latent heat":                   units.SpecificEnergy,
	"energy":                        units.Energy,
	"impact energy":                 units.Energy,
	"thermal expansion":             units.ThermalExpansion,
	"temperature (absolute scale)":  units.Temperature,
	"temperature difference":        units.TemperatureDifference,
	"length":                        units.Length,
	"area":                          units.Area,
	"volume":                        units.Volume,
}

// TestPublishedPairs converts every row of checks.csv both ways: published
// factors, and figures that sources print in two units. The tolerance of a row
// covers the rounding of both printed figures. Mass resistivity, which needs a
// density, is not in the file.
func TestPublishedPairs(t *testing.T) {
	rows := readChecks(t)
	if len(rows) < 130 {
		t.Fatalf("checks.csv holds %d rows, want at least 130", len(rows))
	}
	for i, r := range rows {
		where := "line " + strconv.Itoa(i+2) + ", " + r["source"] + " " + r["locator"]
		d, ok := checkDimensions[r["quantity"]]
		if !ok {
			t.Errorf("%s: no dimension for %q", where, r["quantity"])
			continue
		}
		tol, err := strconv.ParseFloat(r["rel_tol"], 64)
		if err != nil {
			t.Fatalf("%s: %v", where, err)
		}
		from, errFrom := units.ParseAs(r["from_value"]+" "+r["from_unit"], d, units.NoUnit)
		to, errTo := units.ParseAs(r["to_value"]+" "+r["to_unit"], d, units.NoUnit)
		if errFrom != nil || errTo != nil {
			t.Errorf("%s: %v, %v", where, errFrom, errTo)
			continue
		}
		checkPair(t, where, from, to, tol)
		checkPair(t, where, to, from, tol*1.01+tol*tol)
	}
}

func checkPair(t *testing.T, where string, from, to units.Quantity, tol float64) {
	t.Helper()
	got, err := from.In(to.Unit)
	if err != nil {
		t.Errorf("%s: %v", where, err)
		return
	}
	limit := tol * math.Abs(to.Lo)
	if to.Unit.Dimension() == units.Temperature && tol < 1e-6 {
		limit = 1e-9
	}
	if to.Unit.Dimension() == units.Temperature && tol >= 1e-6 {
		limit = max(limit, 1) // a printed temperature is rounded to a degree, of either scale
	}
	if math.Abs(got.Lo-to.Lo) > limit {
		t.Errorf("%s: %v is %.9g %s, want %v within %.3g", where, from, got.Lo, to.Unit, to, limit)
	}
}

func readChecks(t *testing.T) []map[string]string {
	t.Helper()
	f, err := os.Open("../testdata/units/checks.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, rec := range all[1:] {
		row := make(map[string]string)
		for i, name := range all[0] {
			row[name] = rec[i]
		}
		rows = append(rows, row)
	}
	return rows
}
