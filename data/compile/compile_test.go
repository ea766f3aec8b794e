package main

import (
	"os"
	"path/filepath"
	"testing"

	"alongside/props/catalog"
)

// The Go data are made from the TOML; this holds the two equal, byte for byte.
func TestCompiledIsCurrent(t *testing.T) {
	c, err := catalog.Load(os.DirFS(".."))
	if err != nil {
		t.Fatal(err)
	}
	files, err := compile(c)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range files {
		have, err := os.ReadFile(filepath.Join("..", folder, name))
		if err != nil || string(have) != string(want) {
			t.Errorf("%s does not match the data files; run: go generate ./data", name)
		}
	}
	old, err := filepath.Glob(filepath.Join("..", folder, "*.go"))
	if err != nil || len(old) != len(files) {
		t.Errorf("%d compiled files, want %d; run: go generate ./data", len(old), len(files))
	}
}
