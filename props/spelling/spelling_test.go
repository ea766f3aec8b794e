package spelling

import "testing"

func TestEdits(t *testing.T) {
	for _, tt := range []struct {
		a, b string
		want int
	}{
		{"", "", 0},
		{"", "sand", 4},
		{"sand", "", 4},
		{"sand", "sand", 0},
		{"snad", "sand", 1}, // swapped
		{"sad", "sand", 1},  // left out
		{"saand", "sand", 1},
		{"sund", "sand", 1},
		{"ca", "abc", 3}, // 2 if the swapped letters could be edited again
		{"kitten", "sitting", 3},
		{"dnas", "sand", 3},
		{"Sand", "sand", 1},
	} {
		if have := Edits(tt.a, tt.b, 10); have != tt.want {
			t.Errorf("%q to %q: %d edits, want %d", tt.a, tt.b, have, tt.want)
		}
		for limit := range tt.want {
			if have := Edits(tt.a, tt.b, limit); have <= limit {
				t.Errorf("%q to %q: %d edits within %d, want more", tt.a, tt.b, have, limit)
			}
		}
	}
}

func TestNearest(t *testing.T) {
	known := []string{"sand", "Die", "permanent mold", "investment", "hand", "band"}
	for typed, want := range map[string]string{
		"sand":          "sand",
		"SAND":          "sand",
		"die":           "Die",
		"dye":           "Die",
		"pand":          "band", // of three that are equally near the first in the alphabet
		"investmnet":    "investment",
		"permanentmold": "permanent mold",
		"snd":           "sand",
		"xyzzy":         "",
		"nosand":        "sand", // two of six letters, not three
		"nosunk":        "",
		"sieve":         "",
		"":              "",
	} {
		if have := Nearest(typed, known); have != want {
			t.Errorf("%q: have %q, want %q", typed, have, want)
		}
	}
	if have := Nearest("sand", nil); have != "" {
		t.Errorf("nothing known: have %q", have)
	}
}
