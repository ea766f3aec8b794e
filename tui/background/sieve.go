package background

import (
	"strings"
	"time"
)

const (
	escape = '\x1b'
	ctrlC  = "\x03"
	// query is OSC 11 with "?", which asks for the background color (xterm
	// control sequences, "Operating System Commands").
	query = "\x1b]11;?\x07"
	// prefix starts every answer to query, which BEL or ESC \ ends.
	prefix   = "\x1b]11;"
	alphabet = "0123456789abcdefABCDEF:/#rg" // of the body of an answer
	// pasteStart and pasteEnd stand around a paste (xterm control sequences,
	// "Bracketed Paste Mode").
	pasteStart = "\x1b[200~"
	pasteEnd   = "\x1b[201~"
	// longest is the most bytes of an answer or of a key; the longest answer in
	// use, "rgba:" with four four-digit parts, takes 32.
	longest = 64
	// answerWait is how long the rest of an answer may let wait for itself.
	answerWait = 300 * time.Millisecond
	// pasteWait is the silence in a paste after which so few bytes as
	// longestKey are a key press: the end of the paste was lost.
	pasteWait  = time.Second
	longestKey = 8
)

// PasteMost is the most bytes that are handed on of one paste.
const PasteMost = 16 << 10

// sieve takes the answers to a color query out of a stream of key presses, ends
// pastes that are too long or never end, and never lets go of the beginning of a
// key without its rest, however the stream is cut into reads. The zero value is
// ready for use.
type sieve struct {
	held    []byte // an escape sequence, or in a paste its end mark, not yet complete
	pasting bool
	pasted  int          // bytes of the paste so far
	answer  func(string) // gets the body of each answer; nil: nobody asked
}

// strip appends to keys what of data goes on to the program.
func (s *sieve) strip(keys, data []byte) []byte {
	for _, c := range data {
		keys = s.take(keys, c)
	}
	return keys
}

// wake is called before strip with what one read brought, and the silence before
// it. It gives up an answer, and ends a paste, whose end does not come.
func (s *sieve) wake(keys, data []byte, silence time.Duration) []byte {
	switch {
	case s.pasting && (string(data) == ctrlC || silence > pasteWait && len(data) <= longestKey):
		s.pasting, s.held = false, s.held[:0]
		return append(keys, pasteEnd...)
	case s.answering() && silence > answerWait:
		s.held = s.held[:0]
	}
	return keys
}

func (s *sieve) take(keys []byte, c byte) []byte {
	s.held = append(s.held, c)
	if s.pasting {
		return s.takePasted(keys, c)
	}
	held := s.held
	switch {
	case s.incomplete():
		return keys
	case s.answering():
		s.held = nil
		body := string(held[len(prefix) : len(held)-1])
		cut, escaped := strings.CutSuffix(body, "\x1b")
		switch {
		case c == '\a' || c == '\\' && escaped:
			if s.answer != nil {
				s.answer(cut)
			}
			return keys
		case escaped:
			keys = s.take(keys, escape)
		}
		return s.take(keys, c) // no answer after all: what no answer holds is a key
	case c == escape && len(held) > 1:
		s.held = []byte{escape}
		return append(keys, held[:len(held)-1]...)
	}
	s.pasting, s.pasted = string(held) == pasteStart, 0
	keys = append(keys, held...)
	s.held = held[:0]
	return keys
}

// takePasted hands a byte of a paste on, up to PasteMost of them.
func (s *sieve) takePasted(keys []byte, c byte) []byte {
	held := s.held
	switch {
	case string(held) == pasteEnd:
		s.pasting, s.held = false, held[:0]
		return append(keys, pasteEnd...)
	case strings.HasPrefix(pasteEnd, string(held)):
		return keys
	}
	text := held
	if c == escape { // the end mark may begin here
		text = held[:len(held)-1]
	}
	keys = append(keys, text[:min(len(text), max(PasteMost-s.pasted, 0))]...)
	s.pasted += len(text)
	s.held = append(held[:0], held[len(text):]...)
	return keys
}

// incomplete reports whether more bytes are needed to tell what is held.
func (s *sieve) incomplete() bool {
	held := s.held
	last := held[len(held)-1]
	switch {
	case held[0] != escape || len(held) > longest:
		return false
	case len(held) > len(prefix):
		if s.answering() {
			return held[len(held)-2] != escape && (last == escape || strings.IndexByte(alphabet, last) >= 0)
		}
	case strings.HasPrefix(prefix, string(held)):
		return true
	}
	return s.control() && (len(held) == 2 || last >= ' ' && last <= '?') // ECMA-48, 5.4
}

// answering reports whether an answer has begun for sure.
func (s *sieve) answering() bool { return !s.pasting && strings.HasPrefix(string(s.held), prefix) }

// control reports whether a key or a report of the mouse has begun, and not just
// Escape.
func (s *sieve) control() bool { return len(s.held) > 1 && s.held[1] == '[' }

// undecided reports whether what is held might be all of a key press.
func (s *sieve) undecided() bool {
	return len(s.held) > 0 && !s.pasting && (!s.answering() || s.held[len(s.held)-1] == escape)
}

// release gives up what is held when it could as well be keys: Escape alone, or
// Alt and a bracket. The beginning of an answer proper stays held: no keyboard
// sends it.
func (s *sieve) release(keys []byte) []byte {
	switch {
	case !s.undecided():
		return keys
	case s.answering():
		keys = append(keys, escape)
	default:
		keys = append(keys, s.held...)
	}
	s.held = s.held[:0]
	return keys
}
