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
		{"the second is no text", answer + "\a" + prefix + "rgb:0/0/0\aq", "q", "rgb:ffff/ffff/ffff", true},
		{"cut short on the line", prefix + "rgb:ffquit", "quit", "", false},
		{"cut short before a key", prefix + "\x1b[A", "\x1b[A", "", false},
		{"too long for a color", prefix + strings.Repeat("f", longest+1), "f", "", false},
		{"inside a paste", pasteStart + "log: " + prefix + " and so on" + pasteEnd + "j", pasteStart + "log:  and so on" + pasteEnd + "j", "", false},
		{"a paste that never ends", pasteStart + "two words\x03q", pasteStart + "two words" + pasteEnd + "q", "", false},
		{"control-C outside of one", "a\x03", "a\x03", "", false},
		{"a mark in a paste", pasteStart + pasteStart + pasteEnd, pasteStart + pasteStart + pasteEnd, "", false},
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

// What begins like an answer and never ends is given up at the first key, and what is
// held of it stays small.
func TestEndlessAnswer(t *testing.T) {
	for _, key := range []string{"q", "\x03", "\r", "j", "\x1b[A", "µ"} {
		var s sieve
		keys, _, _ := s.strip(nil, []byte(prefix))
		if keys, _, _ = s.strip(keys, []byte(key)); string(keys) != key || len(s.held) > 0 {
			t.Errorf("%q came through as %q", key, keys)
		}
	}
	var s sieve
	for range 1000 {
		if s.strip(nil, []byte(prefix+"ff")); len(s.held) > longest+len(prefix) {
			t.Fatalf("holds %d bytes", len(s.held))
		}
	}
}

// A paste is let through as far as LongestPaste, with its end; the keys behind it
// come through, and the time it takes grows with its length.
func TestLongPaste(t *testing.T) {
	var s sieve
	keys, _, _ := s.strip(nil, []byte(pasteStart))
	for range 10_000 {
		keys, _, _ = s.strip(keys, bytes.Repeat([]byte("x"), 250))
	}
	keys, _, _ = s.strip(keys, []byte(pasteEnd+"q"))
	if want := pasteStart + strings.Repeat("x", LongestPaste) + pasteEnd + "q"; string(keys) != want {
		t.Errorf("%d bytes came through, want %d", len(keys), len(want))
	}
	if keys, _, _ = s.strip(nil, []byte(pasteStart+"again"+pasteEnd)); string(keys) != pasteStart+"again"+pasteEnd {
		t.Errorf("the next paste: %q", keys)
	}
}

func TestWholeKeys(t *testing.T) {
	for keys, cut := range map[string]string{"ab": "", "a\x1b[<0;33;12": "\x1b[<0;33;12", "a\x1b[<0;33;12M": "", "\x1b": "", "a\x1b[": "\x1b[", "\x1b[A\x1b[200": "\x1b[200", "\x1bO": ""} {
		whole, got := wholeKeys([]byte(keys))
		if string(got) != cut || string(whole)+cut != keys {
			t.Errorf("%q: %q and %q", keys, whole, got)
		}
	}
}

func FuzzStrip(f *testing.F) {
	f.Add([]byte("j\x1b]11;rgb:1e1e/1e1e/1e1e\x1b\\k"), 7)
	f.Add([]byte("\x1b\x1b]11;#ffffff\a\x1b"), 1)
	f.Fuzz(func(t *testing.T, data []byte, cut int) {
		whole, body, found := sift(data, nil)
		if !found && !bytes.Contains(data, []byte(prefix)) && !bytes.Contains(data, []byte(pasteStart)) && !bytes.Equal(whole, data) {
			t.Fatalf("no answer in %q, but the keys are %q", data, whole)
		}
		if len(data) > 0 {
			cut = int(uint(cut) % uint(len(data)))
			keys, again, _ := sift(data, []int{cut})
			if !bytes.Equal(keys, whole) || again != body {
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
