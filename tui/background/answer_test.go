package background

import "testing"

func TestShadeOf(t *testing.T) {
	tests := []struct {
		color string
		want  Shade
	}{
		{"rgb:0000/0000/0000", Dark},
		{"rgb:ffff/ffff/ffff", Light},
		{"rgb:1e1e/1e1e/1e1e", Dark},
		{"rgb:fd/f6/e3", Light},
		{"rgb:f/f/f", Light},
		{"rgb:0/0/f", Dark},     // blue has the least luma of the three
		{"rgb:0/f/0", Light},    // green the most
		{"rgb:7f/7f/7f", Dark},  // just below half
		{"rgb:80/80/80", Light}, // just above
		{"rgba:ffff/ffff/ffff/0000", Light},
		{"#ffffff", Light},
		{"#000", Dark},
		{"", Unknown},
		{"?", Unknown},
		{"rgb:", Unknown},
		{"rgb:ff/ff", Unknown},
		{"rgb:ff/ff/ff/ff", Unknown},
		{"rgb:fffff/0/0", Unknown},
		{"rgb:gg/00/00", Unknown},
		{"rgb:-1/00/00", Unknown},
		{"#", Unknown},
		{"#ffff", Unknown},
		{"white", Unknown},
	}
	for _, test := range tests {
		if have := shadeOf(test.color); have != test.want {
			t.Errorf("shadeOf(%q) = %v, want %v", test.color, have, test.want)
		}
	}
}
