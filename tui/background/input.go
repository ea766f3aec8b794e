package background

import (
	"io"
	"os"
	"sync"
	"sync/atomic"
	"time"

	"github.com/charmbracelet/x/term"
)

const (
	// escapeWait is how long an Escape at the end of a read is kept back to
	// see whether the rest of an answer or a key follows. Nobody notices it, and a
	// slow line seldom parts its bytes by more.
	escapeWait = 50 * time.Millisecond
	// escapePatience is how long after the question Escape alone is kept back
	// at all. Later, an answer is still swallowed unless it is cut right there.
	escapePatience = 5 * time.Second
	// settleTime is how long after the question Settle waits for an answer
	// that has not come: longer than a line across the world takes.
	settleTime = 500 * time.Millisecond
)

// Input is the terminal's input with answers to color queries taken out,
// whenever they come, and pastes held to PasteMost bytes. It stands in for
// os.Stdin in tea.WithInput and is a file to Bubble Tea in every other respect,
// so raw mode and canceling work as before.
type Input struct {
	*os.File
	out     *os.File
	asked   atomic.Int64 // Unix nanoseconds; 0 until Ask
	answer  chan Shade   // holds one
	settled chan struct{}
	once    sync.Once

	reading  sync.Mutex // guards what follows
	sieve    sieve
	answered bool
	last     time.Time // of the read before
}

// NewInput returns an Input over a terminal, and nil where in or out is none or
// the system gives no bytes to look through (Windows): then let Bubble Tea read
// os.Stdin itself.
func NewInput(in, out *os.File) *Input {
	if !readsBytes || !term.IsTerminal(in.Fd()) || !term.IsTerminal(out.Fd()) {
		return nil
	}
	i := &Input{File: in, out: out, answer: make(chan Shade, 1), settled: make(chan struct{})}
	i.sieve.answer = func(body string) {
		i.answered = true
		select {
		case i.answer <- shadeOf(body):
		default: // a second answer
		}
	}
	return i
}

// Ask sends the query and waits for the answer, for as long as it takes. Call
// it only where Askable says so, in a command, once, from the model's Init: by then the terminal no longer
// echoes, and the first frame does not wait. It returns Unknown when the
// answer is no color, or when Settle ends the wait.
//
// The query is written to out in one piece, so it cannot land inside a frame
// as long as Bubble Tea writes to the same *os.File.
func (i *Input) Ask() Shade {
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
// when nothing that was read goes on. It fills p as long as there is more to
// read, since Bubble Tea takes the end of a shorter read for the end of a key. p
// must hold more than a few bytes, or it returns io.ErrShortBuffer.
func (i *Input) Read(p []byte) (int, error) {
	i.reading.Lock()
	defer i.reading.Unlock()
	if len(p) < 2*longest {
		return 0, io.ErrShortBuffer
	}
	keys, err := i.more(nil, p)
	for err == nil && i.room(keys, p) > 0 && readable(i.Fd(), i.patience()) {
		keys, err = i.more(keys, p)
	}
	if err != nil || i.room(keys, p) > 0 || !readable(i.Fd(), 0) {
		keys = i.sieve.release(keys)
	}
	if len(keys) > 0 {
		err = nil // a lasting error comes back with the next read
	}
	return copy(p, keys), err
}

// more reads once, with p as the buffer, and appends to keys what goes on.
func (i *Input) more(keys, p []byte) ([]byte, error) {
	n, err := i.File.Read(p[:i.room(keys, p)])
	now := time.Now()
	keys = i.sieve.wake(keys, p[:n], now.Sub(i.last))
	i.last = now
	return i.sieve.strip(keys, p[:n]), err
}

// room is how many bytes may be read so that p holds all that may come of them:
// what is held may turn out to be keys, and a paste may have to be ended.
func (i *Input) room(keys, p []byte) int {
	room := len(p) - len(keys) - len(i.sieve.held)
	if i.sieve.pasting {
		room -= len(pasteEnd)
	}
	return room
}

// patience is how long to wait for the rest of what is held.
func (i *Input) patience() time.Duration {
	if i.sieve.undecided() && (i.sieve.control() || i.age() <= escapePatience) {
		return escapeWait
	}
	return 0
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
	if i.asked.Load() == 0 || i.answered || i.age() >= settleTime {
		return
	}
	state, err := term.MakeRaw(i.Fd())
	if err != nil {
		return
	}
	defer term.Restore(i.Fd(), state) //nolint:errcheck // nothing is left to do
	var data [256]byte
	for !i.answered && readable(i.Fd(), settleTime-i.age()) {
		n, err := i.File.Read(data[:])
		if err != nil {
			return
		}
		i.sieve.strip(nil, data[:n])
	}
}

// age is the time since the question, and endless before it.
func (i *Input) age() time.Duration {
	asked := i.asked.Load()
	if asked == 0 {
		return 1<<63 - 1
	}
	return time.Since(time.Unix(0, asked))
}
