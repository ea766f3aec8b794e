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

// longest is the most bytes of an answer's body; the longest in use, "rgba:" with
// four four-digit parts, takes 24.
const longest = 64

// shadeBytes are those that the body of an answer is made of. The first of another
// kind ends what looked like one: a line that was cut short must not swallow keys.
const shadeBytes = "0123456789abcdefABCDEF:/#rg"

// The marks around a paste (xterm control sequences, "Bracketed Paste Mode").
const (
	pasteStart = "\x1b[200~"
	pasteEnd   = "\x1b[201~"
)

// LongestPaste is how many bytes of one paste are let through: longer than any mail
// about a part. What reads the keys takes a time for a paste that grows with the
// square of its length.
const LongestPaste = 16 << 10

// sieve takes the answers to color queries out of a stream of key presses, however
// the stream is cut into reads, and cuts a paste that is too long. Control-C in a
// paste ends it, so that one whose end never comes does not swallow all keys.
type sieve struct {
	held     []byte // bytes that may be, or are, the beginning of an answer or a mark
	answered bool   // the first answer came
	pasting  bool
	pasted   int // bytes of the paste let through
}

// strip appends to keys what of data is certainly not part of an answer, and
// returns it with the first answer's body (between prefix and terminator) once that
// is complete. Bytes that could begin an answer or a mark are kept for the next call.
func (s *sieve) strip(keys, data []byte) (out []byte, body string, found bool) {
	data = append(s.held, data...)
	s.held = nil
	for len(data) > 0 {
		at := bytes.IndexAny(data, "\x1b\x03")
		if at < 0 {
			return s.let(keys, data), body, found
		}
		keys, data = s.let(keys, data[:at]), data[at:]
		switch {
		case data[0] == 3 && s.pasting:
			keys, data, s.pasting = append(keys, pasteEnd...), data[1:], false
		case s.begins(data):
			s.held = bytes.Clone(data)
			return keys, body, found
		case bytes.HasPrefix(data, []byte(pasteStart)) && !s.pasting:
			keys, data, s.pasting, s.pasted = append(keys, pasteStart...), data[len(pasteStart):], true, 0
		case bytes.HasPrefix(data, []byte(pasteEnd)) && s.pasting:
			keys, data, s.pasting = append(keys, pasteEnd...), data[len(pasteEnd):], false
		case bytes.HasPrefix(data, []byte(prefix)):
			end, next := terminator(data[len(prefix):])
			switch {
			case next < 0:
				s.held = bytes.Clone(data)
				return keys, body, found
			case next > end && !s.answered:
				s.answered, body, found = true, string(data[len(prefix):len(prefix)+end]), true
			}
			data = data[len(prefix)+next:]
		default:
			keys, data = s.let(keys, data[:1]), data[1:]
		}
	}
	return keys, body, found
}

// let lets keys through, of a paste as many as may be.
func (s *sieve) let(keys, data []byte) []byte {
	if s.pasting {
		data = data[:min(len(data), LongestPaste-s.pasted)]
		s.pasted += len(data)
	}
	return append(keys, data...)
}

// begins reports whether data is the beginning of an answer's prefix or of a mark.
func (s *sieve) begins(data []byte) bool {
	mark := pasteStart
	if s.pasting {
		mark = pasteEnd
	}
	return len(data) < len(prefix) && strings.HasPrefix(prefix, string(data)) || len(data) < len(mark) && strings.HasPrefix(mark, string(data))
}

// release gives up what is held when it could as well be keys: Escape alone, or Alt
// and a bracket.
func (s *sieve) release(keys []byte) []byte {
	if s.ambiguous() {
		keys = append(keys, s.held...)
		s.held = nil
	}
	return keys
}

// ambiguous reports whether what is held might be a key press: in a paste nothing is.
func (s *sieve) ambiguous() bool { return len(s.held) > 0 && !s.begun() && !s.pasting }

// begun reports whether the beginning of an answer proper is held.
func (s *sieve) begun() bool { return bytes.HasPrefix(s.held, []byte(prefix)) }

// terminator finds where an answer's body ends and where the bytes behind it begin:
// behind BEL or ESC \, at once where no answer goes on so. next is -1 where the body
// is not complete.
func terminator(body []byte) (end, next int) {
	for i, c := range body {
		switch {
		case c == '\a':
			return i, i + 1
		case c == '\x1b' && i+1 == len(body):
			return i, -1
		case c == '\x1b' && body[i+1] == '\\':
			return i, i + 2
		case i >= longest || strings.IndexByte(shadeBytes, c) < 0:
			return i, i
		}
	}
	return len(body), -1
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
