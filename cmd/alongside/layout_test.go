package main

import (
	"go/ast"
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

// layers lists the packages from the lowest up: one may import those on lines
// before its own, and none on its own line or behind it. DEVELOPERS.md draws the
// same.
var layers = []string{
	"units props/spelling props/disk",
	"props props/record props/sheet",
	"props/cost",
	"data/compiled props/catalog props/compare",
	"props/part props/foundry props/audit props/bars props/shelf",
	"props/needs",
	"props/spoken props/swap props/watch props/call",
	"props/call/sheets",
	"props/report data data/compile data/intake",
	"props/settings tui/ui tui/background tui/clip tui/ptytest",
	"tui/bench",
	"tui/desk",
	"tui/panel",
	"tui",
	"cmd/alongside cmd/picture cmd/release",
}

// layerOf is the line of a package; -1 when it has none.
func layerOf(pkg string) int {
	return slices.IndexFunc(layers, func(line string) bool { return slices.Contains(strings.Fields(line), pkg) })
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
		pkg := path.Dir(name)
		own, _, _ := strings.Cut(name, "/")
		if layerOf(pkg) < 0 {
			t.Errorf("%s: the package stands on no layer; add it", name)
		}
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
			if layerOf(rest) >= layerOf(pkg) {
				t.Errorf("%s imports %s: against the layers\n%s", name, imported, strings.Join(layers, "\n"))
			}
			if pkg == "tui/ui" && strings.HasPrefix(rest, "props") && rest != "props/sheet" {
				t.Errorf("%s imports %s: ui knows nothing of metals", name, imported)
			}
			if own == "tui" && strings.HasPrefix(rest, "data") {
				t.Errorf("%s imports data: the screen is given its catalog", name)
			}
		}
		return nil
	})
	if err != nil || seen < 50 {
		t.Fatalf("looked at %d files: %v", seen, err)
	}
}

// The most lines of a file and of a function, and the most branches of a function whose
// comment does not say what they are.
const fileLines, funcLines, funcBranches = 400, 60, 15

// TestSizes reads all code that people write, tests aside.
func TestSizes(t *testing.T) {
	root, seen := os.DirFS("../.."), 0
	err := fs.WalkDir(root, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") || strings.HasPrefix(name, "data/compiled") {
			return err
		}
		content, err := fs.ReadFile(root, name)
		if err != nil {
			return err
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, name, content, parser.ParseComments)
		if err != nil {
			return err
		}
		seen++
		if n := strings.Count(string(content), "\n"); n > fileLines {
			t.Errorf("%s has %d lines; at most %d", name, n, fileLines)
		}
		for _, decl := range file.Decls {
			f, ok := decl.(*ast.FuncDecl)
			if !ok {
				continue
			}
			if n := set.Position(f.End()).Line - set.Position(f.Pos()).Line + 1; n > funcLines {
				t.Errorf("%s: %s has %d lines; at most %d", name, f.Name, n, funcLines)
			}
			if n := branches(f); n > funcBranches && !strings.Contains(f.Doc.Text(), "branch") {
				t.Errorf("%s: %s has %d branches; split it, or say in its comment what the branches are", name, f.Name, n)
			}
		}
		return nil
	})
	if err != nil || seen < 200 {
		t.Fatalf("looked at %d files: %v", seen, err)
	}
}

// branches counts the ways through a function: one, and one more for each condition.
func branches(f *ast.FuncDecl) int {
	n := 1
	ast.Inspect(f, func(x ast.Node) bool {
		switch y := x.(type) {
		case *ast.IfStmt, *ast.ForStmt, *ast.RangeStmt, *ast.CaseClause, *ast.CommClause:
			n++
		case *ast.BinaryExpr:
			if y.Op == token.LAND || y.Op == token.LOR {
				n++
			}
		}
		return true
	})
	return n
}
