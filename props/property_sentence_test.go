package props

import "testing"

// Names of people and scales keep their capitals inside a sentence.
func TestInSentence(t *testing.T) {
	for name, want := range map[string]string{
		"": "", "Tensile strength": "tensile strength", "Brinell hardness": "Brinell hardness", "Charpy V-notch impact": "Charpy V-notch impact",
		"Poisson's ratio": "Poisson's ratio", "Izod impact": "Izod impact", "Rockwell B": "Rockwell B", "HRB": "HRB", "KIc": "KIc", "Elong": "elong",
	} {
		if have := InSentence(name); have != want {
			t.Errorf("InSentence(%q) = %q, want %q", name, have, want)
		}
	}
}
