package background

import (
	"bytes"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// sift passes data through a new sieve in pieces cut at the given places.
func sift(data []byte, cuts []int) (keys []byte, body string, found bool) {
	var s sieve
	from := 0
	for _, cut := range append(cuts, len(data)) {
		var b string
		var f bool
		keys, b, f = s.strip(keys, data[from:cut])
		if f {
			body, found = b, true
		}
		from = cut
	}
	return s.release(keys), body, found
}

func TestStrip(t *testing.T) {
	const answer = "\x1b]11;rgb:ffff/ffff/ffff"
	tests := []struct {
		name, in, keys, body string
		found                bool
	}{
		{"keys only", "jk\x1b[A", "jk\x1b[A", "", false},
		{"ended by bell", answer + "\a", "", "rgb:ffff/ffff/ffff", true},
		{"ended by string terminator", answer + "\x1b\\", "", "rgb:ffff/ffff/ffff", true},
		{"between keys", "a" + answer + "\ab", "ab", "rgb:ffff/ffff/ffff", true},
		{"after escape", "\x1b" + answer + "\a", "\x1b", "rgb:ffff/ffff/ffff", true},
		{"before escape", answer + "\a\x1b", "\x1b", "rgb:ffff/ffff/ffff", true},
		{"unfinished", "a" + answer, "a", "", false},
		{"escape alone", "\x1b", "\x1b", "", false},
		{"alt and bracket", "\x1b]", "\x1b]", "", false},
		{"alt, bracket, letter", "\x1b]x", "\x1b]x", "", false},
		{"another color's answer", "\x1b]10;rgb:0/0/0\a", "\x1b]10;rgb:0/0/0\a", "", false},
		{"only the first is taken", answer + "\a" + answer + "\a", answer + "\a", "rgb:ffff/ffff/ffff", true},
	}
	for _, test := range tests {
		keys, body, found := sift([]byte(test.in), nil)
		if string(keys) != test.keys || body != test.body || found != test.found {
			t.Errorf("%s:\nhave: %q %q %v\nwant: %q %q %v", test.name, keys, body, found, test.keys, test.body, test.found)
		}
	}
}

// However an answer is placed among keys and cut into reads, the keys come
// through whole and the answer does not.
func TestStripAnyCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		key := rapid.SampledFrom([]string{"a", "q", " ", "\r", "\t", "µ", "\x1b", "\x1b[A", "\x1b[<0;3;4M", "\x1b]", "\x1bx", "\x1b[200~two words\x1b[201~"})
		before := strings.Join(rapid.SliceOfN(key, 0, 5).Draw(t, "before"), "")
		after := strings.Join(rapid.SliceOfN(key, 0, 5).Draw(t, "after"), "")
		body := rapid.StringMatching(`(rgba?:)?[0-9a-f/#]{0,40}`).Draw(t, "body")
		end := rapid.SampledFrom([]string{"\a", "\x1b\\"}).Draw(t, "end")
		data := []byte(before + prefix + body + end + after)
		var cuts []int
		for at := range data {
			if rapid.Bool().Draw(t, "cut") {
				cuts = append(cuts, at)
			}
		}
		keys, got, found := sift(data, cuts)
		if string(keys) != before+after {
			t.Fatalf("keys %q, want %q", keys, before+after)
		}
		if !found || got != body {
			t.Fatalf("answer %q %v, want %q", got, found, body)
		}
	})
}

func TestEndlessAnswerIsSwallowedAndForgotten(t *testing.T) {
	var s sieve
	s.strip(nil, []byte(prefix))
	for range 1000 {
		keys, _, _ := s.strip(nil, bytes.Repeat([]byte("f"), 100))
		if len(keys) > 0 || len(s.held) > longest {
			t.Fatalf("holds %d bytes, let %q through", len(s.held), keys)
		}
	}
	s.strip(nil, []byte("\x1b")) // the terminator, cut in two
	keys, body, found := s.strip(nil, []byte("\\x"))
	if string(keys) != "x" || !found || shadeOf(body) != Unknown {
		t.Errorf("keys %q, answer %q %v; want x and no color", keys, body, found)
	}
}

func FuzzStrip(f *testing.F) {
	f.Add([]byte("j\x1b]11;rgb:1e1e/1e1e/1e1e\x1b\\k"), 7)
	f.Add([]byte("\x1b\x1b]11;#ffffff\a\x1b"), 1)
	f.Fuzz(func(t *testing.T, data []byte, cut int) {
		whole, body, found := sift(data, nil)
		if !found && !bytes.Contains(data, []byte(prefix)) && !bytes.Equal(whole, data) {
			t.Fatalf("no answer in %q, but the keys are %q", data, whole)
		}
		if len(data) > 0 && len(body) <= longest-len(prefix) {
			cut = int(uint(cut) % uint(len(data)))
			keys, again, _ := sift(data, []int{cut})
			if !bytes.Equal(keys, whole) || (again != body && len(data) <= longest) {
				t.Fatalf("cut at %d: keys %q and answer %q; whole: %q and %q", cut, keys, again, whole, body)
			}
		}
		shadeOf(body)
		shadeOf(string(data))
	})
}

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
