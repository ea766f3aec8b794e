package props

import "testing"

// The symbols of ISO 6892-1 and the usual words name their property.
func TestResolveProperty(t *testing.T) {
	for word, want := range map[string]PropertyID{
		"Rm": TensileStrength, "Rp0.2": YieldStrength, "A5": Elongation, "ultimate tensile strength": TensileStrength,
		"Young's modulus": ElasticModulus, "rho": Density, "cp": SpecificHeat, "UTS": TensileStrength, "thermal-conductivity": ThermalConductivity,
	} {
		if have, err := ResolveProperty(word); have != want || err != nil {
			t.Errorf("%s: have %v, %v, want %v", word, have, err, want)
		}
	}
}
