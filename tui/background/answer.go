package background

import (
	"bytes"
	"strconv"
	"strings"
)

// query is OSC 11 with "?", which asks for the background color (xterm
// control sequences, "Operating System Commands").
const query = "\x1b]11;?\x07"

// prefix starts every answer to query.
const prefix = "\x1b]11;"

// longest is the most bytes an answer is given to end; the longest in use,
// "rgba:" with four four-digit parts, takes 32. What runs on longer is
// swallowed up to its end but no longer kept.
const longest = 64

// sieve takes the answer to one color query out of a stream of key presses,
// however the stream is cut into reads.
type sieve struct {
	held     []byte // bytes that may be, or are, the beginning of the answer
	answered bool   // nothing more to take out
}

// strip appends to keys what of data is certainly not part of an answer, and
// returns it with the answer's body (between prefix and terminator) once that
// is complete. Bytes that could begin an answer are kept for the next call.
func (s *sieve) strip(keys, data []byte) (out []byte, body string, found bool) {
	if s.answered {
		return append(keys, data...), "", false
	}
	data = append(s.held, data...)
	s.held = nil
	for len(data) > 0 {
		start := bytes.IndexByte(data, '\x1b')
		if start < 0 {
			return append(keys, data...), "", false
		}
		keys, data = append(keys, data[:start]...), data[start:]
		if len(data) < len(prefix) && strings.HasPrefix(prefix, string(data)) {
			s.held = bytes.Clone(data)
			return keys, "", false
		}
		if !bytes.HasPrefix(data, []byte(prefix)) {
			keys, data = append(keys, data[0]), data[1:]
			continue
		}
		end, next := terminator(data[len(prefix):])
		if next == 0 {
			s.held = shorten(data)
			return keys, "", false
		}
		s.answered = true
		return append(keys, data[len(prefix)+next:]...), string(data[len(prefix) : len(prefix)+end]), true
	}
	return keys, "", false
}

// release gives up what is held when it could as well be keys: Escape alone,
// or Alt and a bracket. The beginning of an answer proper stays held: no
// keyboard sends it.
func (s *sieve) release(keys []byte) []byte {
	if s.ambiguous() {
		keys = append(keys, s.held...)
		s.held = nil
	}
	return keys
}

// ambiguous reports whether what is held might be a key press.
func (s *sieve) ambiguous() bool {
	return len(s.held) > 0 && len(s.held) < len(prefix)
}

// terminator finds the end of an answer's body, at BEL or at ESC \, and where
// the bytes after it begin; next is 0 where the body is not complete.
func terminator(body []byte) (end, next int) {
	for i, c := range body {
		switch {
		case c == '\a':
			return i, i + 1
		case c == '\x1b' && i+1 < len(body) && body[i+1] == '\\':
			return i, i + 2
		}
	}
	return 0, 0
}

// shorten keeps an endless answer from growing: the body it cuts is then no
// color, and is swallowed.
func shorten(data []byte) []byte {
	if len(data) <= longest {
		return bytes.Clone(data)
	}
	kept := append([]byte(prefix), "too long"...)
	if data[len(data)-1] == '\x1b' { // may be the first half of the terminator
		kept = append(kept, '\x1b')
	}
	return kept
}

// shadeOf reads the color in an answer: "rgb:1e1e/1e1e/1e1e" with one to four
// hexadecimal digits a part, "rgba:" with a fourth part, or "#1e1e1e" (X11
// color specifications). A color is light from half of full luma on, by the
// weights of Recommendation ITU-R BT.709.
func shadeOf(color string) Shade {
	parts, ok := strings.CutPrefix(color, "rgb:")
	want := 3
	if !ok {
		if parts, ok = strings.CutPrefix(color, "rgba:"); ok {
			want = 4
		}
	}
	var fields []string
	if ok {
		fields = strings.Split(parts, "/")
	} else if digits, hash := strings.CutPrefix(color, "#"); hash && digits != "" && len(digits)%3 == 0 {
		n := len(digits) / 3
		fields = []string{digits[:n], digits[n : 2*n], digits[2*n:]}
	}
	if len(fields) != want {
		return Unknown
	}
	luma := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		value, err := strconv.ParseUint(fields[i], 16, 16)
		if err != nil || len(fields[i]) > 4 {
			return Unknown
		}
		luma += weight * float64(value) / float64(uint64(1)<<(4*len(fields[i]))-1)
	}
	if luma >= 0.5 {
		return Light
	}
	return Dark
}
