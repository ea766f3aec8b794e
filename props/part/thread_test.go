package part

import (
	"math"
	"testing"
)

func TestReadThread(t *testing.T) {
	for typed, want := range map[string][2]float64{ // mm
		"1/2-13 UNC": {12.7, 25.4 / 13}, "1/2-13 UNC-2B": {12.7, 25.4 / 13}, "1/2 - 13": {12.7, 25.4 / 13}, ".25-28 unf": {6.35, 25.4 / 28},
		"#10-24 UNC": {4.826, 25.4 / 24}, "10-32": {4.826, 25.4 / 32}, "No. 6-32": {3.5052, 25.4 / 32}, "1-8 UNC": {25.4, 25.4 / 8},
		"1 1/8-7": {28.575, 25.4 / 7}, "1-1/8-7 UNC": {28.575, 25.4 / 7}, "2-4.5 UNC": {50.8, 25.4 / 4.5},
		"M12x1.75": {12, 1.75}, "m 12 × 1.75 - 6H": {12, 1.75},
	} {
		have, err := ReadThread(typed)
		if err != nil || math.Abs(have.Major*1e3-want[0]) > 1e-9 || math.Abs(have.Pitch*1e3-want[1]) > 1e-9 {
			t.Errorf("%s: have %v, %v, want %v", typed, have, err, want)
		}
	}
	for _, typed := range []string{"", "M12", "1/2", "1/2-13 NPT", "1/2-13 UNC-3B", "1/0-13", "1/2-0", "M0x1", "M12x12", "M12x0.001", "M999999x1", "0.5-0.1", "#99-24", "1/2-13-13"} {
		if have, err := ReadThread(typed); err == nil {
			t.Errorf("%q is read as %v", typed, have)
		} else if e := err.(*Error); e.Problem == "" || e.Remedy == "" {
			t.Errorf("%q: %v", typed, err)
		}
	}
}
