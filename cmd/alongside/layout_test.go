package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// layers lists the packages from the lowest up: one may import those before
// it, and none behind it. DEVELOPERS.md draws the same.
var layers = []string{"units", "props", "data", "tui", "cmd"}

// TestLayers walks the imports of all files that are not tests.
func TestLayers(t *testing.T) {
	root := os.DirFS("../..")
	seen := 0
	err := fs.WalkDir(root, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") || strings.Contains(name, "testdata") {
			return err
		}
		content, err := fs.ReadFile(root, name)
		if err != nil {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, content, parser.ImportsOnly)
		if err != nil {
			return err
		}
		seen++
		own, _, _ := strings.Cut(name, "/")
		for _, spec := range file.Imports {
			imported, _ := strconv.Unquote(spec.Path.Value)
			rest, inside := strings.CutPrefix(imported, "alongside/")
			if !inside {
				if own == "units" && strings.Contains(imported, ".") {
					t.Errorf("%s imports %s: units stands on the standard library alone", name, imported)
				}
				if own == "props" && (strings.Contains(imported, "charmbracelet") || strings.Contains(imported, "termenv")) {
					t.Errorf("%s imports %s: props knows nothing of terminals", name, imported)
				}
				continue
			}
			top, _, _ := strings.Cut(rest, "/")
			if slices.Index(layers, top) > slices.Index(layers, own) {
				t.Errorf("%s imports %s: against the layers %s", path.Clean(name), imported, strings.Join(layers, " ← "))
			}
			if own == "tui" && top == "data" {
				t.Errorf("%s imports data: the screen is given its catalog", name)
			}
		}
		return nil
	})
	if err != nil || seen < 50 {
		t.Fatalf("looked at %d files: %v", seen, err)
	}
}
