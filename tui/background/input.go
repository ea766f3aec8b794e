package background

import (
	"bytes"
	"io"
	"os"
	"sync"
	"sync/atomic"
	"time"

	"github.com/charmbracelet/x/term"
)

const (
	// escapeWait is how long an Escape at the end of a read is kept back to
	// see whether the rest of the answer follows. Nobody notices it, and a
	// slow line seldom parts the bytes of one answer by more.
	escapeWait = 50 * time.Millisecond
	// escapePatience is how long after the question Escape is kept back where
	// nothing follows at once. Later, an answer is still swallowed unless it is
	// cut right there.
	escapePatience = 5 * time.Second
	// settleTime is how long after the question Settle waits for an answer
	// that has not come: longer than a line across the world takes.
	settleTime = 500 * time.Millisecond
	// answerWait is how long the rest of an answer or of a key may be on its way. Then
	// what came of it is dropped, so that what is typed next is not taken for the rest.
	answerWait = time.Second
	// longestKey is more than the bytes of any key or mouse event.
	longestKey = 32
)

// Input is the terminal's input with answers to color queries taken out, whenever
// they come, and pastes cut at LongestPaste. It stands in for os.Stdin in tea.WithInput and is a
// file to Bubble Tea in every other respect, so raw mode and canceling work
// as before.
type Input struct {
	*os.File
	out     *os.File
	asks    bool         // the terminal can be asked for its background
	asked   atomic.Int64 // Unix nanoseconds; 0 until Ask
	answer  chan Shade   // holds one
	settled chan struct{}
	once    sync.Once

	reading sync.Mutex // guards what follows
	sieve   sieve
	ready   []byte    // keys that did not fit the read before
	cut     []byte    // the beginning of a key that the end of a read cut off
	since   time.Time // when the last bytes came
}

// NewInput returns an Input over a terminal, and nil where in or out is none, or
// where the system does not pass keys as bytes (Windows). With nil, let Bubble Tea
// read os.Stdin itself.
func NewInput(in, out *os.File, getenv func(string) string) *Input {
	if !canAsk || !term.IsTerminal(in.Fd()) || !term.IsTerminal(out.Fd()) {
		return nil
	}
	return &Input{File: in, out: out, asks: askable(getenv), answer: make(chan Shade, 1), settled: make(chan struct{})}
}

// Ask sends the query and waits for the answer, for as long as it takes; call
// it in a command, once, from the model's Init: by then the terminal no longer
// echoes, and the first frame does not wait. It returns Unknown when the
// answer is no color, or when Settle ends the wait.
//
// The query is written to out in one piece, so it cannot land inside a frame
// as long as Bubble Tea writes to the same *os.File. A kind of terminal that must not
// be asked (dumb, the kernel's console, a multiplexer) is Unknown at once.
func (i *Input) Ask() Shade {
	if !i.asks {
		return Unknown
	}
	i.asked.Store(time.Now().UnixNano())
	if _, err := i.out.WriteString(query); err != nil {
		return Unknown
	}
	select {
	case shade := <-i.answer:
		return shade
	case <-i.settled:
		return Unknown
	}
}

// Read gives Bubble Tea the key presses. It may return 0 bytes and no error
// when all that was read belongs to an answer. p must hold more than a few
// bytes, or it returns io.ErrShortBuffer.
func (i *Input) Read(p []byte) (int, error) {
	i.reading.Lock()
	defer i.reading.Unlock()
	if len(p) <= 2*longestKey {
		return 0, io.ErrShortBuffer
	}
	if len(i.ready) > 0 {
		n := copy(p, i.ready)
		i.ready = i.ready[n:]
		return n, nil
	}
	// Held bytes may turn out to be keys after all, and marks are put in: leave room.
	room := len(p) - longestKey - len(i.cut)
	n, err := i.File.Read(p[:room])
	i.forget()
	keys := i.strip(i.cut, p[:n])
	i.cut = nil
	for i.sieve.ambiguous() {
		room, wait := len(p)-len(keys)-longestKey, escapeWait
		if i.age() > escapePatience {
			wait = 0
		}
		if err != nil || room <= 0 || !readable(i.Fd(), wait) {
			keys = i.sieve.release(keys)
			break
		}
		n, err = i.File.Read(p[:room])
		keys = i.strip(keys, p[:n])
	}
	// Escape and a bracket may be Alt and a bracket; with more behind it is no key.
	if whole, cut := wholeKeys(keys); err == nil && (len(cut) > 2 || len(cut) > 0 && readable(i.Fd(), escapeWait)) {
		keys, i.cut = whole, cut
	}
	if len(keys) > len(p) {
		keys, i.ready = keys[:len(p)], bytes.Clone(keys[len(p):])
	}
	if len(keys) > 0 {
		err = nil // a lasting error comes back with the next read
	}
	return copy(p, keys), err
}

// forget drops the beginning of an answer or of a key whose rest does not come.
func (i *Input) forget() {
	if time.Since(i.since) > answerWait {
		i.cut = nil
		if i.sieve.begun() {
			i.sieve.held = nil
		}
	}
	i.since = time.Now()
}

// wholeKeys cuts off the beginning of a control sequence that more bytes end.
func wholeKeys(keys []byte) (whole, cut []byte) {
	at := bytes.LastIndexByte(keys, '\x1b')
	if at < 0 || len(keys)-at > longestKey || at+1 == len(keys) || keys[at+1] != '[' {
		return keys, nil
	}
	for _, c := range keys[at+2:] {
		if c >= '@' && c <= '~' { // ECMA-48, 5.4: the final byte of a control sequence
			return keys, nil
		}
	}
	return keys[:at], bytes.Clone(keys[at:])
}

// Settle is called after Bubble Tea has ended. If the program was so short
// that an answer may still be on its way, Settle waits for it, at most half a
// second from the question, so that it is not typed at the shell's prompt.
// Keys pressed in that time are lost. It also ends a waiting Ask.
func (i *Input) Settle() {
	i.once.Do(func() { close(i.settled) })
	if !i.reading.TryLock() { // a read that could not be canceled: do not hang on it
		return
	}
	defer i.reading.Unlock()
	if i.asked.Load() == 0 || i.sieve.answered || i.age() >= settleTime {
		return
	}
	state, err := term.MakeRaw(i.Fd())
	if err != nil {
		return
	}
	defer term.Restore(i.Fd(), state) //nolint:errcheck // nothing is left to do
	var data [256]byte
	for !i.sieve.answered && readable(i.Fd(), settleTime-i.age()) {
		n, err := i.File.Read(data[:])
		if err != nil {
			return
		}
		i.strip(nil, data[:n])
	}
}

func (i *Input) strip(keys, data []byte) []byte {
	keys, body, found := i.sieve.strip(keys, data)
	if found {
		i.answer <- shadeOf(body)
	}
	return keys
}

// age is the time since the question, and endless before it.
func (i *Input) age() time.Duration {
	asked := i.asked.Load()
	if asked == 0 {
		return 1<<63 - 1
	}
	return time.Since(time.Unix(0, asked))
}
