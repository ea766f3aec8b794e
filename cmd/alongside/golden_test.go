package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files and the outputs in README.md anew")

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
