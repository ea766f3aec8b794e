package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files and the outputs in README.md again")

const goldenFolder = "../../testdata/cmd"

// golden compares a text with its golden file; -update writes the file. A file
// that is missing fails the test.
func golden(t *testing.T, name string, have []byte) {
	t.Helper()
	path := filepath.Join(goldenFolder, name)
	if *update {
		if err := os.WriteFile(path, have, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v; write it with: go test ./cmd/alongside -update", err)
	}
	want = bytes.ReplaceAll(want, []byte("\r\n"), []byte("\n"))
	if line, ok := firstDifference(string(want), string(have)); !ok {
		t.Errorf("%s, first difference:\n%s\nif it is meant: go test ./cmd/alongside -update", path, line)
	}
}

// keep holds what a command printed to its golden files, and its exit code.
func keep(t *testing.T, name string, r result, code int) {
	t.Helper()
	if r.code != code {
		t.Errorf("exit code %d, want %d\n%s", r.code, code, r.errors)
	}
	if r.code == exitUsage && r.out != "" {
		t.Errorf("a wrong command line printed on stdout:\n%s", r.out)
	}
	if r.out != "" {
		golden(t, name+".stdout", []byte(r.out))
	}
	if r.errors != "" {
		golden(t, name+".stderr", []byte(r.errors))
	}
	if r.out+r.errors == "" {
		t.Error("nothing was printed")
	}
}

func firstDifference(want, have string) (string, bool) {
	if want == have {
		return "", true
	}
	w, h := strings.Split(want, "\n"), strings.Split(have, "\n")
	for i := 0; ; i++ {
		a, b := "(end)", "(end)"
		if i < len(w) {
			a = w[i]
		}
		if i < len(h) {
			b = h[i]
		}
		if a != b || i >= len(w) && i >= len(h) {
			return "want: " + a + "\nhave: " + b, false
		}
	}
}
