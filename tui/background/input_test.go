//go:build unix

package background

import (
	"io"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/creack/pty"
)

// terminal returns both ends of a raw pseudo-terminal: the far one is what a
// person and the terminal type into.
func terminal(t *testing.T) (far, near *os.File) {
	t.Helper()
	far, near, err := pty.Open()
	if err != nil {
		t.Skipf("no pseudo-terminal: %v", err)
	}
	t.Cleanup(func() { far.Close(); near.Close() })
	if _, err := term.MakeRaw(near.Fd()); err != nil {
		t.Fatal(err)
	}
	return far, near
}

var xterm = environment(map[string]string{"TERM": "xterm-256color"})

// collect reads keys until want many bytes came, and then nothing more does.
func collect(t *testing.T, in *Input, want int) string {
	t.Helper()
	var keys []byte
	data := make([]byte, 256)
	for len(keys) < want || readable(in.Fd(), 2*escapeWait) {
		if !readable(in.Fd(), 2*time.Second) {
			t.Fatalf("only %q came", keys)
		}
		n, err := in.Read(data)
		if err != nil {
			t.Fatal(err)
		}
		keys = append(keys, data[:n]...)
	}
	return string(keys)
}

func TestAnswerCutAnywhereIsNoKey(t *testing.T) {
	const answer = "\x1b]11;rgb:ffff/ffff/ffff\x1b\\"
	for _, cut := range []int{1, 2, 5, 12, len(answer) - 1} {
		far, near := terminal(t)
		in := NewInput(near, near, xterm)
		if in == nil {
			t.Fatal("a pseudo-terminal cannot be asked")
		}
		shade := make(chan Shade)
		go func() { shade <- in.Ask() }()
		asked := make([]byte, len(query))
		if _, err := io.ReadFull(far, asked); err != nil || string(asked) != query {
			t.Fatalf("asked %q, %v", asked, err)
		}
		go func() {
			far.WriteString("a" + answer[:cut])
			time.Sleep(escapeWait / 20)
			far.WriteString(answer[cut:] + "z")
		}()
		if keys := collect(t, in, 2); keys != "az" {
			t.Errorf("cut at %d: keys %q, want %q", cut, keys, "az")
		}
		if have := <-shade; have != Light {
			t.Errorf("cut at %d: %v, want light", cut, have)
		}
		far.WriteString("\x1b")
		if keys := collect(t, in, 1); keys != "\x1b" {
			t.Errorf("after the answer: %q, want escape", keys)
		}
	}
}

func TestEscapeComesThroughWhileWaiting(t *testing.T) {
	far, near := terminal(t)
	in := NewInput(near, near, xterm)
	go in.Ask()
	if _, err := io.ReadFull(far, make([]byte, len(query))); err != nil {
		t.Fatal(err)
	}
	far.WriteString("\x1b")
	if keys := collect(t, in, 1); keys != "\x1b" {
		t.Errorf("have %q, want escape", keys)
	}
	in.Settle() // ends Ask
}

func TestShortBuffer(t *testing.T) {
	_, near := terminal(t)
	in := NewInput(near, near, xterm)
	if _, err := in.Read(make([]byte, 2*longestKey)); err != io.ErrShortBuffer {
		t.Errorf("have %v, want %v", err, io.ErrShortBuffer)
	}
}

func TestOnlyTerminalsAreAsked(t *testing.T) {
	_, near := terminal(t)
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	defer w.Close()
	if NewInput(r, near, xterm) != nil || NewInput(near, w, xterm) != nil {
		t.Error("a pipe would be asked")
	}
	in := NewInput(near, near, environment(map[string]string{"TERM": "dumb"}))
	if in == nil {
		t.Fatal("a paste into a dumb terminal would not be cut")
	}
	if in.Ask() != Unknown || in.asked.Load() != 0 {
		t.Error("a dumb terminal was asked")
	}
}

func TestSettleEndsAsk(t *testing.T) {
	_, near := terminal(t)
	in := NewInput(near, near, xterm)
	shade := make(chan Shade)
	go func() { shade <- in.Ask() }()
	time.Sleep(10 * time.Millisecond)
	in.Settle()
	in.Settle() // twice does no harm
	if have := <-shade; have != Unknown {
		t.Errorf("have %v, want unknown", have)
	}
}

// A long paste with mouse events behind it: the keys come through in whatever blocks
// they are read, none cut apart.
func TestMouseBehindLongPaste(t *testing.T) {
	far, near := terminal(t)
	in := NewInput(near, near, environment(map[string]string{"TERM": "dumb"}))
	want := strings.Repeat("\x1b[<35;33;12M", 400)
	go far.WriteString(want)
	var keys []byte
	data := make([]byte, 256)
	for len(keys) < len(want) {
		n, err := in.Read(data)
		if err != nil {
			t.Fatal(err)
		}
		if n > 0 && (data[0] != '\x1b' || data[n-1] != 'M') {
			t.Fatalf("a read gave %q", data[:n])
		}
		keys = append(keys, data[:n]...)
	}
	if string(keys) != want {
		t.Errorf("%d bytes of %d came through whole", len(keys), len(want))
	}
}

// Wherever a read ends in a flood of mouse events, long after the question too, none
// is cut apart.
func TestMouseFloodCutAnywhere(t *testing.T) {
	far, near := terminal(t)
	in := NewInput(near, near, xterm)
	for lead := range 24 {
		want := strings.Repeat("a", lead) + strings.Repeat("\x1b[<35;33;12M", 60)
		go far.WriteString(want)
		var all []byte
		data := make([]byte, 256)
		for len(all) < len(want) {
			n, err := in.Read(data)
			if err != nil {
				t.Fatal(err)
			}
			if keys := strings.TrimLeft(string(data[:n]), "a"); keys != "" && (keys[0] != '\x1b' || keys[len(keys)-1] != 'M') {
				t.Fatalf("behind %d letters a read gave %q", lead, keys)
			}
			all = append(all, data[:n]...)
		}
		if string(all) != want {
			t.Errorf("behind %d letters other keys came through", lead)
		}
	}
}

// The beginning of a mouse event waits for its end, which a busy machine may send
// late, and is forgotten where none comes.
func TestMouseEventInTwoParts(t *testing.T) {
	far, near := terminal(t)
	in := NewInput(near, near, xterm)
	data := make([]byte, 256)
	begin := func() {
		far.WriteString("\x1b[<64;9")
		if n, err := in.Read(data); n != 0 || err != nil {
			t.Fatalf("%q, %v", data[:n], err)
		}
	}
	begin()
	far.WriteString(";9M")
	if keys := collect(t, in, 1); keys != "\x1b[<64;9;9M" {
		t.Errorf("have %q", keys)
	}
	begin()
	in.since = in.since.Add(-2 * answerWait)
	far.WriteString("a")
	if keys := collect(t, in, 1); keys != "a" {
		t.Errorf("have %q", keys)
	}
}

// What begins an answer and goes on no more is forgotten after a while, so that a hex
// digit typed then is a key.
func TestAnswerThatStops(t *testing.T) {
	far, near := terminal(t)
	in := NewInput(near, near, xterm)
	far.WriteString(prefix + "rgb:f")
	data := make([]byte, 256)
	if n, err := in.Read(data); n != 0 || err != nil {
		t.Fatalf("%q, %v", data[:n], err)
	}
	in.since = in.since.Add(-2 * answerWait)
	far.WriteString("a")
	if keys := collect(t, in, 1); keys != "a" {
		t.Errorf("have %q", keys)
	}
}
