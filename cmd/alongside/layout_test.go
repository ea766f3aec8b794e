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

// inner lists the packages inside a layer that have an order of their own, from
// the lowest up. The folder itself is above what is in it.
var inner = map[string][]string{"tui": {"background", "clip", "ui", "bench", "."}}

// place is where a package stands in the order of its layer; -1 where it has
// none.
func place(layer, pkg string) int {
	rest := strings.TrimPrefix(strings.TrimPrefix(pkg, layer), "/")
	return slices.Index(inner[layer], path.Clean(rest))
}

// goesUp says what is wrong with an import between two packages of a layer.
func goesUp(layer, pkg, imported string) string {
	from, to := place(layer, pkg), place(layer, imported)
	if from >= 0 && to > from {
		return "against the order " + strings.Join(inner[layer], " ← ") + " in " + layer
	}
	return ""
}

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
			if own == top {
				if wrong := goesUp(own, path.Dir(name), rest); wrong != "" {
					t.Errorf("%s imports %s: %s", name, imported, wrong)
				}
			}
			if path.Dir(name) == "tui/ui" && top == "props" && rest != "props/report" {
				t.Errorf("%s imports %s: ui knows nothing of metals", name, imported)
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

// The order inside a layer refuses what goes back up.
func TestOrderInsideALayer(t *testing.T) {
	for _, test := range []struct {
		pkg, imported string
		wrong         bool
	}{
		{"tui/ui", "tui", true}, {"tui", "tui/ui", false}, {"tui/clip", "tui/ui", true}, {"tui/ui", "tui/ui", false}, {"tui/ptytest", "tui", false},
	} {
		if have := goesUp("tui", test.pkg, test.imported); (have != "") != test.wrong {
			t.Errorf("%s imports %s: %q", test.pkg, test.imported, have)
		}
	}
}
