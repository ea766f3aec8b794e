//go:build unix

package background

import (
	"io"
	"os"
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
		in := NewInput(near, near)
		if in == nil {
			t.Fatal("a pseudo-terminal is not taken")
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
	in := NewInput(near, near)
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
	in := NewInput(near, near)
	if _, err := in.Read(make([]byte, longest)); err != io.ErrShortBuffer {
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
	if NewInput(r, near) != nil || NewInput(near, w) != nil {
		t.Error("a pipe would be asked")
	}
	if Askable(environment(map[string]string{"TERM": "dumb"})) {
		t.Error("a dumb terminal would be asked")
	}
}

func TestSettleEndsAsk(t *testing.T) {
	_, near := terminal(t)
	in := NewInput(near, near)
	shade := make(chan Shade)
	go func() { shade <- in.Ask() }()
	time.Sleep(10 * time.Millisecond)
	in.Settle()
	in.Settle() // twice does no harm
	if have := <-shade; have != Unknown {
		t.Errorf("have %v, want unknown", have)
	}
}
