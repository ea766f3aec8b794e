package sheets

import (
	"bufio"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"alongside/data"
	"alongside/props/call"
)

// writerVariable names the folder in which the test binary is to write, as a
// program of its own that can be killed.
const writerVariable = "ALONGSIDE_TEST_WRITER"

func TestMain(m *testing.M) {
	if path := os.Getenv(writerVariable); path != "" {
		if err := keepWriting(&Folder{Path: path, Catalog: data.Catalog}); err != nil {
			fmt.Println("error", err)
			os.Exit(1)
		}
		return
	}
	os.Exit(m.Run())
}

// keepWriting opens the last sheet and changes it without end, telling of each
// state before and after it is saved.
func keepWriting(f *Folder) error {
	h := f.New()
	last, err := f.Last()
	n := 0
	if err == nil && last != nil {
		h, err = f.Open(last.ID)
	}
	if err != nil {
		return err
	}
	if n = len(h.Sheet().Call.Notes); n > 60 {
		n = 0
	}
	for {
		n++
		h.Put(state(n))
		fmt.Println("put", n)
		if err := h.Save(); err != nil {
			return err
		}
		fmt.Println("saved", n)
	}
}

// state is a call of which every part says which one it is.
func state(n int) call.Call {
	c := fresh()
	c.Name = strconv.Itoa(n)
	for i := range n {
		c.Notes = append(c.Notes, call.NewNote(noon, fmt.Sprintf("%d of %d %s", i+1, n, strings.Repeat("x", 200))))
	}
	return c
}

// TestKilled kills a program at random moments while it writes a sheet, and
// looks at what is on the disk: the state that was saved last or the one being
// written, whole, with its lock given back.
//
//	go test ./props/call/sheets -run Killed -count 1 -kills 1000
func TestKilled(t *testing.T) {
	f := &Folder{Path: filepath.Join(t.TempDir(), "calls"), Catalog: data.Catalog}
	during := 0
	for i := range *kills {
		put, saved := killWriter(t, f)
		s, err := f.Last()
		if err != nil || s == nil || len(s.Mistakes) > 0 {
			t.Fatalf("kill %d: %+v, %v", i, s, err)
		}
		have := len(s.Call.Notes)
		if !s.Call.Same(state(have)) || have != saved && have != put {
			t.Fatalf("kill %d: put %d, saved %d; on the disk is %q with %d notes", i, put, saved, s.Call.Name, have)
		}
		if put != saved {
			during++
		}
	}
	entries, err := os.ReadDir(f.Path)
	if err != nil || len(entries) > 3 {
		t.Errorf("left in the folder: %v, %v", entries, err)
	}
	t.Logf("%d kills, %d of them while a sheet was written", *kills, during)
}

// killWriter starts a writer, kills it, and returns the states that it told of
// last.
func killWriter(t *testing.T, f *Folder) (put, saved int) {
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), writerVariable+"="+f.Path)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewReader(out)
	take := func() error {
		line, err := lines.ReadString('\n')
		if err != nil {
			return err
		}
		word, number, _ := strings.Cut(strings.TrimSpace(line), " ")
		n, err := strconv.Atoi(number)
		if err != nil {
			return fmt.Errorf("the writer says %q", line)
		}
		if word == "put" {
			put = n
		} else {
			saved = n
		}
		return nil
	}
	for range 2 { // the first state is on the disk
		if err := take(); err != nil {
			t.Fatal(err)
		}
	}
	time.AfterFunc(time.Duration(rand.IntN(15_000))*time.Microsecond, func() { _ = cmd.Process.Kill() })
	for {
		if err := take(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
	}
	_ = cmd.Wait()
	return put, saved
}
