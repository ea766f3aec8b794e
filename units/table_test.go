package units_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"alongside/units"
)

// Every unit is read back from its own names.
func TestUnitsReadTheirNames(t *testing.T) {
	us := allUnits()
	if len(us) < 130 {
		t.Fatalf("the table holds %d units, want at least 130", len(us))
	}
	for i, u := range us { // a constant without its row would have no dimension
		if !slices.Contains(us, units.Unit(i+1)) || !(u.ToSI(1) > 0) {
			t.Errorf("unit %d has no row in the table", i+1)
		}
		if u.Symbol() == "" {
			continue
		}
		for _, name := range []string{u.Symbol(), u.ASCII(), strings.ReplaceAll(u.Symbol(), "·", "-")} {
			q, err := units.ParseAs("3 "+name, u.Dimension(), units.NoUnit)
			if err != nil || q.Unit != u || q.Lo != 3 {
				t.Errorf("3 %s: have %v in %d (%v), want unit %d", name, q, q.Unit, err, u)
			}
		}
		for _, r := range u.ASCII() {
			if r > 126 {
				t.Errorf("%s: its ASCII form %q is not ASCII", u, u.ASCII())
			}
		}
	}
}

func TestEveryDimension(t *testing.T) {
	names := make(map[string]bool)
	for d := units.NoDimension + 1; d <= units.HK; d++ {
		if d.String() == "" || names[d.String()] {
			t.Errorf("dimension %d: the name %q is missing or used twice", d, d)
		}
		names[d.String()] = true
		if len(units.UnitsOf(d)) == 0 {
			t.Errorf("%v has no unit", d)
		}
		for _, s := range []units.System{units.US, units.SI, units.CGS} {
			if u := units.Preferred(d, s); u.Dimension() != d {
				t.Errorf("%v in %v: have %v, a unit of %v", d, s, u, u.Dimension())
			}
		}
		if d.Hardness() && len(units.UnitsOf(d)) != 1 {
			t.Errorf("%v has several units: a hardness scale does not convert", d)
		}
	}
	for _, d := range []units.Dimension{units.NoDimension, units.HK + 1, 255} {
		if units.Preferred(d, units.US) != units.NoUnit || units.UnitsOf(d) != nil {
			t.Errorf("dimension %d has units", d)
		}
	}
}

func TestUnitOutsideTheTable(t *testing.T) {
	u := units.Unit(255)
	if u.Symbol() != "" || u.ASCII() != "" || u.Dimension() != units.NoDimension || u.Reciprocal() {
		t.Errorf("unit 255: have %q in %v", u, u.Dimension())
	}
}

// Units that are only read are not listed, and each is read from its own names.
func TestUnitsOnlyRead(t *testing.T) {
	for u := units.Nanometer; u <= units.PerMilleOf; u++ {
		if u.Symbol() == "" || slices.Contains(units.UnitsOf(u.Dimension()), u) {
			t.Errorf("unit %d, %q, is listed or has no row", u, u)
		}
		for _, name := range []string{u.Symbol(), u.ASCII()} {
			if q, err := units.ParseAs("3 "+name, u.Dimension(), units.NoUnit); err != nil || q.Unit != u {
				t.Errorf("3 %s: have %v (%v)", name, q, err)
			}
		}
	}
}

func TestBrinellUnit(t *testing.T) {
	for _, c := range []struct {
		load, ball float64
		unit       units.Unit
	}{{500, 10, units.HB500Number}, {3000, 10, units.HB3000Number}, {187.5, 2.5, units.HB187x2Number}, {250, 5, units.HB250x5Number}} {
		if u, ok := units.BrinellUnit(c.load, c.ball); !ok || u != c.unit || !u.Dimension().Brinell() {
			t.Errorf("%v kgf/%v mm: have %v, %v", c.load, c.ball, u, ok)
		}
	}
	if u, ok := units.BrinellUnit(10, 500); ok {
		t.Errorf("10 kgf/500 mm: have %v", u)
	}
}

func TestParseSystem(t *testing.T) {
	for _, s := range []units.System{units.US, units.SI, units.CGS} {
		if got, err := units.ParseSystem(" " + strings.ToUpper(s.String())); err != nil || got != s {
			t.Errorf("%v: have %v (%v)", s, got, err)
		}
	}
	_, err := units.ParseSystem("imperial")
	wantError(t, err, "imperial")
}

// The package stands on the standard library alone and does nothing when the
// program starts.
func TestImports(t *testing.T) {
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".go") || strings.HasSuffix(e.Name(), "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), e.Name(), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		checkNoInit(t, e.Name(), f)
		for _, i := range f.Imports {
			path, _ := strconv.Unquote(i.Path.Value)
			if strings.Contains(path, ".") || strings.HasPrefix(path, "alongside") || path == "regexp" {
				t.Errorf("%s imports %s", e.Name(), path)
			}
		}
	}
}

// checkNoInit fails where a package variable calls a function or is a map, which
// is work before main that every command pays for.
func checkNoInit(t *testing.T, name string, f *ast.File) {
	for _, d := range f.Decls {
		if fun, ok := d.(*ast.FuncDecl); ok && fun.Name.Name == "init" {
			t.Errorf("%s has an init", name)
		}
		if g, ok := d.(*ast.GenDecl); !ok || g.Tok != token.VAR {
			continue
		}
		ast.Inspect(d, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				t.Errorf("%s: a package variable calls %v", name, n.Fun)
			case *ast.CompositeLit:
				if _, isMap := n.Type.(*ast.MapType); isMap {
					t.Errorf("%s: a package variable is a map literal", name)
				}
			}
			return true
		})
	}
}

func TestConvertDoesNotAllocate(t *testing.T) {
	if n := testing.AllocsPerRun(100, func() {
		_, _ = units.Convert(37, units.KSI, units.MPa)
		_ = units.IACS.FromSI(units.MicroOhmCM.ToSI(4.3))
	}); n != 0 {
		t.Errorf("Convert, ToSI and FromSI allocate %v times", n)
	}
}
