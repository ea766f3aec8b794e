package units_test

import (
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"alongside/units"
)

// gnu gives each unit in the words of GNU units. The calorie and Btu are named
// by kind, since the program's plain btu and cal have their own conventions.
var gnu = map[units.Unit]string{
	units.PSI: "psi", units.KSI: "ksi", units.Mpsi: "1e6 psi", units.Pa: "Pa", units.KPa: "kPa", units.MPa: "MPa", units.GPa: "GPa",
	units.KgfPerMM2: "kgf/mm^2", units.NPerMM2: "N/mm^2", units.KgfPerCM2: "kgf/cm^2", units.KgfPerM2: "kgf/m^2", units.Bar: "bar",
	units.TonfPerIn2: "2240 lbf/in^2",
	units.PoundForce: "lbf", units.Kip: "kip", units.Newton: "N", units.KiloNewton: "kN", units.KgForce: "kgf",

	units.WPerMK: "W/(m K)", units.CalPerCMSC: "calorie_th/(cm s K)", units.BtuPerHFtF: "btu_IT/(hr ft degF)",
	units.BtuInPerHFt2F: "btu_IT in/(hr ft^2 degF)", units.BtuInPerSFt2F: "btu_IT in/(s ft^2 degF)", units.BtuPerHInF: "btu_IT/(hr in degF)",
	units.KcalPerHMC: "1000 calorie_IT/(hr m K)", units.BtuThInPerHFt2F: "btu_th in/(hr ft^2 degF)", units.BtuThInPerSFt2F: "btu_th in/(s ft^2 degF)",
	units.JPerKgK: "J/(kg K)", units.KJPerKgK: "kJ/(kg K)", units.JPerGK: "J/(g K)", units.BtuPerLbF: "btu_IT/(lb degF)",
	units.CalPerGC: "calorie_th/(g K)", units.CalITPerGC: "calorie_IT/(g K)",
	units.JPerKg: "J/kg", units.KJPerKg: "kJ/kg", units.JPerG: "J/g", units.BtuPerLb: "btu_IT/lb", units.CalPerG: "calorie_th/g",
	units.MicroinInF: "microinch/(inch degF)", units.MicromMK: "um/(m K)", units.E6PerF: "1e-6/degF", units.E6PerK: "1e-6/K",
	units.PerF: "1/degF", units.PerK: "1/K", units.DeltaF: "degF", units.DeltaC: "degC", units.DeltaK: "K",
	units.M2PerS: "m^2/s", units.MM2PerS: "mm^2/s", units.CM2PerS: "cm^2/s", units.Ft2PerH: "ft^2/hr", units.In2PerS: "in^2/s",
	units.WPerM2K: "W/(m^2 K)", units.BtuPerHFt2F: "btu_IT/(hr ft^2 degF)", units.WPerM2: "W/m^2", units.KWPerM2: "kW/m^2",
	units.WPerCM2: "W/cm^2", units.BtuPerHFt2: "btu_IT/(hr ft^2)",

	units.IACS: "580000 S/m", units.MSPerM: "MS/m", units.SPerM: "S/m", units.MSPerCM: "MS/cm",
	units.MicroOhmCM: "microohm cm", units.NanoOhmM: "nanoohm m", units.MicroOhmM: "microohm m", units.OhmM: "ohm m",
	units.E7OhmM: "1e-7 ohm m", units.E8OhmM: "1e-8 ohm m", units.MicroOhmIn: "microohm inch", units.OhmMM2PerM: "ohm mm^2/m",
	units.OhmCmilPerFt: "ohm circularmil/ft",
	units.Ampere:       "A", units.Milliampere: "mA", units.Kiloampere: "kA",
	units.Watt: "W", units.Kilowatt: "kW", units.BtuPerHour: "btu_IT/hr", units.Horsepower: "550 ft lbf/s",

	units.Inch: "inch", units.Foot: "ft", units.Mil: "mil", units.Microinch: "microinch", units.MM: "mm", units.CM: "cm", units.Meter: "m",
	units.Micrometer: "um", units.In2: "in^2", units.Ft2: "ft^2", units.Cmil: "circularmil", units.MM2: "mm^2", units.CM2: "cm^2", units.M2: "m^2",
	units.In3: "in^3", units.Ft3: "ft^3", units.MM3: "mm^3", units.CM3: "cm^3", units.M3: "m^3", units.Liter: "L", units.Gallon: "usgallon",
	units.Pound: "lb", units.Ounce: "oz", units.Ton: "2000 lb", units.Kg: "kg", units.Gram: "g", units.Tonne: "1000 kg",
	units.LbPerIn3: "lb/in^3", units.LbPerFt3: "lb/ft^3", units.GPerCM3: "g/cm^3", units.KgPerM3: "kg/m^3",
	units.Joule: "J", units.KiloJoule: "kJ", units.FootPound: "ft lbf", units.InchPound: "in lbf", units.KgfMeter: "kgf m",
	units.Btu: "btu_IT", units.BtuTh: "btu_th", units.Cal: "calorie_th", units.CalIT: "calorie_IT", units.Cal15: "calorie_15",
	units.Kcal: "1000 calorie_th", units.KWh: "kWh", units.Second: "s", units.Minute: "min", units.Hour: "hr", units.Day: "day",
	units.PerLb: "1/lb", units.PerKg: "1/kg",
	units.InPerIn: "in/in", units.InPerFt: "in/ft", units.MMPerM: "mm/m", units.PctStrain: "percent", units.MicroStrain: "1e-6",
}

// gnuSI is the SI unit of a dimension in the words of GNU units.
var gnuSI = map[units.Dimension]string{
	units.Stress: "Pa", units.Force: "N", units.ThermalConductivity: "W/(m K)", units.SpecificHeat: "J/(kg K)", units.SpecificEnergy: "J/kg",
	units.ThermalExpansion: "1/K", units.TemperatureDifference: "K", units.ThermalDiffusivity: "m^2/s", units.HeatTransfer: "W/(m^2 K)",
	units.HeatFlux: "W/m^2", units.ElectricalConductivity: "S/m", units.Current: "A", units.Power: "W", units.Length: "m", units.Area: "m^2",
	units.Volume: "m^3", units.Mass: "kg", units.Density: "kg/m^3", units.Energy: "J", units.Time: "s", units.PricePerMass: "1/kg", units.Strain: "1",
}

// Units that GNU units 2.22 does not know or cannot raise to half a power.
var gnuLacks = map[units.Unit]bool{
	units.MPaRootM: true, units.KSIRootIn: true, units.NPerMM15: true, units.E7NPerM15: true, units.CalMean: true,
	units.One: true, units.Pct: true, units.RatingNumber: true,
}

// runGNU answers conversions by the program; every line of the input asks "you
// have" and then "you want".
func runGNU(t *testing.T, pairs []string) []string {
	t.Helper()
	path, err := exec.LookPath("units")
	if err != nil {
		t.Skip("GNU units is not installed (Debian package units): its figures were not compared")
	}
	if version, _ := exec.Command(path, "--version").Output(); !strings.Contains(string(version), "GNU Units") {
		t.Skip("the program called units here is not GNU units: its figures were not compared")
	}
	cmd := exec.Command(path, "--quiet", "--strict", "--one-line", "--compact", "--output-format", "%.15g")
	cmd.Stdin = strings.NewReader(strings.Join(pairs, "\n") + "\n")
	cmd.Env = append(cmd.Environ(), "LC_ALL=C.UTF-8")
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("GNU units: %v", err)
	}
	return strings.Fields(string(out))
}

func TestAgainstGNUUnits(t *testing.T) {
	var order []units.Unit
	var pairs []string
	for d := units.NoDimension + 1; d <= units.HK; d++ {
		if d.Hardness() || d == units.Temperature {
			continue
		}
		for _, u := range units.UnitsOf(d) {
			if gnuLacks[u] {
				continue
			}
			expr := gnu[u]
			if expr == "" || gnuSI[d] == "" {
				t.Errorf("%s (%v) is not compared: add it to the list", u, d)
				continue
			}
			if u.Reciprocal() {
				expr = "1/(" + expr + ")"
			}
			order = append(order, u)
			pairs = append(pairs, expr, gnuSI[d])
		}
	}
	answers := runGNU(t, pairs)
	if len(answers) != len(order) {
		t.Fatalf("asked GNU units for %d factors, it gave %d: %v", len(order), len(answers), answers)
	}
	if len(order) < 100 {
		t.Fatalf("only %d units compared, want at least 100", len(order))
	}
	for i, u := range order {
		want, err := strconv.ParseFloat(answers[i], 64)
		if err != nil {
			t.Errorf("%s: GNU units says %q", u, answers[i])
			continue
		}
		if got := u.ToSI(1); math.Abs(got/want-1) > 1e-13 {
			t.Errorf("%s: have %.15g, GNU units has %.15g", u, got, want)
		}
	}
}

func TestTemperaturesAgainstGNUUnits(t *testing.T) {
	names := map[units.Unit]string{units.DegF: "tempF", units.DegC: "tempC", units.Kelvin: "tempK", units.Rankine: "tempR"}
	type ask struct {
		v        float64
		from, to units.Unit
	}
	var asks []ask
	var pairs []string
	for from, a := range names {
		for to, b := range names {
			for _, v := range []float64{0, 68, 212, 1035} {
				asks = append(asks, ask{v, from, to})
				pairs = append(pairs, a+"("+strconv.FormatFloat(v, 'g', -1, 64)+")", b)
			}
		}
	}
	answers := runGNU(t, pairs)
	if len(answers) != len(asks) {
		t.Fatalf("asked GNU units for %d temperatures, it gave %d", len(asks), len(answers))
	}
	for i, a := range asks {
		want, _ := strconv.ParseFloat(answers[i], 64)
		if got, err := units.Convert(a.v, a.from, a.to); err != nil || math.Abs(got-want) > 1e-9 {
			t.Errorf("%v %s: have %v %s (%v), GNU units has %v", a.v, a.from, got, a.to, err, want)
		}
	}
}
