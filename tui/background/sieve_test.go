package background

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// sift passes data through a new sieve in pieces cut at the given places.
func sift(data []byte, cuts []int) (keys []byte, body string, found bool) {
	var s sieve
	s.answer = func(b string) {
		if !found {
			body, found = b, true
		}
	}
	from := 0
	for _, cut := range append(cuts, len(data)) {
		keys = s.strip(keys, data[from:cut])
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
		{"a second is no text", answer + "\a" + "\x1b]11;rgb:0/0/0\a", "", "rgb:ffff/ffff/ffff", true},
		{"cut short by a letter", "\x1b]11;rgb:ffffq", "q", "", false},
		{"cut short by ctrl+c", "\x1b]11;\x03", "\x03", "", false},
		{"cut short by an arrow", answer + "\x1b[A", "\x1b[A", "", false},
		{"cut short by escape", answer + "\x1b", "\x1b", "", false},
		{"cut short by another", answer + answer + "\a", "", "rgb:ffff/ffff/ffff", true},
		{"in a paste", "\x1b[200~" + answer + "\x1b[201~j", "\x1b[200~" + answer + "\x1b[201~j", "", false},
		{"arrow not complete", "\x1b[1;", "\x1b[1;", "", false},
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

func TestEndlessAnswerEnds(t *testing.T) {
	var s sieve
	keys := s.strip(nil, []byte(prefix+strings.Repeat("f", 1000)+"q"))
	if want := strings.Repeat("f", 1000+len(prefix)-longest) + "q"; string(keys) != want {
		t.Errorf("keys %q, want all behind the first %d bytes", keys, longest)
	}
	s.strip(nil, []byte(prefix+"rgb:"))
	keys = s.wake(nil, []byte("a"), answerWait/2)
	if keys = s.strip(keys, []byte("a")); len(keys) > 0 {
		t.Errorf("a slow answer is typed: %q", keys)
	}
	keys = s.wake(nil, []byte("a"), 2*answerWait)
	if keys = s.strip(keys, []byte("a")); string(keys) != "a" {
		t.Errorf("keys %q after an answer that was cut short, want a", keys)
	}
}

func TestLongPasteIsCut(t *testing.T) {
	in := pasteStart + strings.Repeat("ab\x1b[2", PasteMost) + "end" + pasteEnd + "j"
	for _, size := range []int{1, 5, 250, len(in)} {
		var s sieve
		var keys []byte
		for rest := []byte(in); len(rest) > 0; {
			n := min(size, len(rest))
			keys, rest = s.strip(keys, rest[:n]), rest[n:]
		}
		if want := in[:len(pasteStart)+PasteMost] + pasteEnd + "j"; string(keys) != want {
			t.Errorf("read by %d bytes: %d bytes go on and end in %q; want %d", size, len(keys), keys[max(len(keys)-10, 0):], len(want))
		}
	}
}

func TestPasteWithoutEnd(t *testing.T) {
	for _, test := range []struct {
		name, read string
		silence    time.Duration
		ends       bool
	}{
		{"ctrl+c", ctrlC, 0, true},
		{"ctrl+c in the text", "a\x03b", 0, false},
		{"a key after a silence", "j", 2 * pasteWait, true},
		{"an arrow after a silence", "\x1b[A", 2 * pasteWait, true},
		{"a key at once", "j", pasteWait / 2, false},
		{"the rest of a slow paste", "and so it goes on", 2 * pasteWait, false},
	} {
		var s sieve
		begun := s.strip(nil, []byte(pasteStart+"gray-30\x1b"))
		keys := s.strip(s.wake(nil, []byte(test.read), test.silence), []byte(test.read))
		want := test.read
		if test.ends {
			want = pasteEnd + test.read
		} else {
			want = "\x1b" + want
		}
		if string(begun) != pasteStart+"gray-30" || string(keys) != want {
			t.Errorf("%s: %q, then %q; want %q", test.name, begun, keys, want)
		}
	}
}

func FuzzStrip(f *testing.F) {
	f.Add([]byte("j\x1b]11;rgb:1e1e/1e1e/1e1e\x1b\\k"), 7)
	f.Add([]byte("\x1b\x1b]11;#ffffff\a\x1b"), 1)
	f.Fuzz(func(t *testing.T, data []byte, cut int) {
		whole, body, found := sift(data, nil)
		lost := len(data) - len(whole) // the beginning of the end mark of a paste may be held
		if !bytes.Contains(data, []byte(prefix)) && len(data) < PasteMost &&
			(found || !bytes.HasPrefix(data, whole) || lost > 0 && !bytes.Contains(data, []byte(pasteStart)) || lost >= len(pasteEnd)) {
			t.Fatalf("no answer in %q, but the keys are %q", data, whole)
		}
		if len(data) > 0 {
			cut = int(uint(cut) % uint(len(data)))
			if keys, again, _ := sift(data, []int{cut}); !bytes.Equal(keys, whole) || again != body {
				t.Fatalf("cut at %d: keys %q and answer %q; whole: %q and %q", cut, keys, again, whole, body)
			}
		}
		shadeOf(body)
		shadeOf(string(data))
	})
}
