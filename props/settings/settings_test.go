package settings

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"alongside/props"
	"alongside/props/compare"
	"alongside/units"
)

// written is the settings that a file with this content gives.
func written(t *testing.T, content string) *Settings {
	t.Helper()
	path := filepath.Join(t.TempDir(), "settings.toml")
	if err := os.WriteFile(path, []byte(content), 0o600); err != nil {
		t.Fatal(err)
	}
	return Load(path)
}

var someKeys = []KeyLine{{"Pins", "/", []string{"/", "+"}, "pin"}, {"Pins", "T", []string{"T"}, ""}, {"Move", `\`, []string{`\`, `"`}, "signs"}}

// The file that is printed, read again, is the defaults, and has a line for every
// setting and key.
func TestPrintedFileIsTheDefaults(t *testing.T) {
	text := Text("/h/.config/alongside/settings.toml", someKeys)
	s, def := written(t, text), Default()
	if len(s.Mistakes) > 0 {
		t.Fatalf("%v\n%s", s.Mistakes, text)
	}
	want := []Key{{"/", []string{"/", "+"}}, {"T", []string{"T"}}, {`\`, []string{`\`, `"`}}}
	if !reflect.DeepEqual(s.Keys, want) {
		t.Errorf("keys %v, want %v", s.Keys, want)
	}
	s.Keys, s.keys = nil, nil
	if !reflect.DeepEqual(s, def) {
		t.Errorf("read %+v\nwant %+v", s, def)
	}
	if b := compare.NewBench().Clone(); !reflect.DeepEqual(def.Bench, b) {
		t.Errorf("the default bench is %+v", def.Bench)
	}
	for _, name := range append(Names(), "# Pins\n\"/\"", "# Move", "[keys]") {
		if !strings.Contains(text, "\n"+name) {
			t.Errorf("no line %q in\n%s", name, text)
		}
	}
}

// Every setting that can be said is taken.
func TestSettingsAreRead(t *testing.T) {
	s := written(t, `# of mine
units = ["si", "density us", "thermal expansion us"]
basis = "minimum"
level_within = "5"
delta = "ratio"
rows = [
  "density", # first
  "UTS",
  "density",
]
theme = "high contrast"
background = "light"
mouse = "off"
copy = "markdown"
clipboard = "file"
[keys]   # mine
u = "z"
"ctrl+r" = ["alt+r", "Z"]
`)
	if len(s.Mistakes) > 0 {
		t.Fatal(s.Mistakes)
	}
	b := s.Bench
	if b.System != units.SI || b.Basis != compare.MinimumOnly || b.Band != 0.05 || b.Delta != compare.Ratio {
		t.Errorf("bench %+v", b)
	}
	if b.UnitOf(props.Density) != units.LbPerIn3 || b.UnitOf(props.ThermalExpansion) != units.MicroinInF || b.UnitOf(props.YieldStrength) != units.MPa {
		t.Errorf("units %v", b.RowUnits)
	}
	if !reflect.DeepEqual(b.Only, []props.PropertyID{props.Density, props.TensileStrength}) {
		t.Errorf("rows %v", b.Only)
	}
	if !s.Contrast || s.Background != "light" || !s.NoMouse || s.Copy != "markdown" || s.Clipboard != "file" {
		t.Errorf("%+v", s)
	}
	if want := []Key{{"u", []string{"z"}}, {"ctrl+r", []string{"alt+r", "Z"}}}; !reflect.DeepEqual(s.Keys, want) {
		t.Errorf("keys %v", s.Keys)
	}
}

// Each line that cannot be used is named with its place and a remedy, and the
// lines around it are used.
func TestWrongLines(t *testing.T) {
	for _, c := range []struct{ line, problem, remedy string }{
		{`units = "imperial"`, `units: "imperial": expected us, si or cgs`, `write it like units = "us"`},
		{`units = ["density metric"]`, `units: "density metric": expected us, si or cgs`, "write it like"},
		{`units = ["densty si"]`, `units: "densty si": no row has a "densty"`, "did you mean density?"},
		{`units = ["mass si"]`, `no row has a "mass"`, "use one of: "},
		{`units = 1`, `units: is 1, not text`, `put it in quotes: units = "1"`},
		{`units = us`, `units: `, "put the value in quotes"},
		{`basis = "minimums"`, `basis: "minimums" is not known`, "did you mean minimum?"},
		{`basis = ["typical", "minimum"]`, `basis: takes one word, not several`, `write it like basis = "typical"`},
		{`level_within = "40 %"`, `level_within: "40 %": expected one percentage from 0 to 25`, `write it like level_within = "2 %"`},
		{`level_within = "2 ksi"`, `level_within: `, "remedy: "},
		{`level_within = 2`, `level_within: is 2, not text`, `level_within = "2"`},
		{`rows = ["yeild"]`, `rows: no property "yeild"`, "nearest: yield_strength"},
		{`rows = [""]`, `rows: is empty`, "write a value"},
		{`theme = "dark"`, `theme: "dark" is not known`, "use one of: high contrast, standard"},
		{`copy = "html "` + "\x00", `control characters`, ""},
		{`colors = "loud"`, `colors: is not a setting`, "use one of: background, basis"},
		{`unit = "si"`, `unit: is not a setting`, "did you mean units?"},
		{`delta = "amount`, `delta: `, "close the quotes"},
		{`nonsense`, `is no line of the form key = "value"`, `write key = "value"`},
		{`rows = ["density"`, ``, "remedy: "},
		{`mouse = "off"`, `mouse: stands twice, first in line 1`, "delete one of the two"},
		{"[key]", `key: is not a section of this file`, "did you mean keys?"},
		{"[keys", ``, "remedy: "},
		{"[[keys]]", `keys: is in double brackets`, "write [keys]"},
		{"[keys]\nu = []", `keys, u: names no key`, "name one, or delete the line"},
		{"[keys]\nu = 1", `keys, u: is 1, not text`, `u = "1"`},
		{`a.b.c = "d"`, `a: is not a setting`, ""},
	} {
		s := written(t, "mouse = \"off\"\n"+c.line+"\nmouse_ = \"x\"\n")
		text := s.Mistakes.Error()
		line := 2 + strings.Count(c.line, "\n")
		if !strings.Contains(text, fmt.Sprintf("settings.toml:%d: ", line)) || !strings.Contains(text, c.problem) || !strings.Contains(text, c.remedy) {
			t.Errorf("%q:\n%s\nwant line %d: %s … %s", c.line, text, line, c.problem, c.remedy)
		}
		if !s.NoMouse {
			t.Errorf("%q: the line before it is not used", c.line)
		}
	}
	s := written(t, "basis = \"minimum\"\nthis is wrong\nunits = [\"si\", \"parsec\"]\n rows = [\"density\", \"x\"]\n\ndelta = off\ncopy = \"tsv\"\n")
	if s.Bench.Basis != compare.MinimumOnly || s.Bench.System != units.SI || len(s.Bench.Only) != 1 || s.Copy != "tsv" || s.Bench.Delta != compare.Percent || len(s.Mistakes) != 4 {
		t.Errorf("%+v\n%v", s, s.Mistakes)
	}
	for i, line := range []int{2, 3, 4, 6} {
		if s.Mistakes[i].Line != line {
			t.Errorf("mistake %d in line %d, want %d", i, s.Mistakes[i].Line, line)
		}
	}
}

// A file that is too large, deep, binary or no file costs no time and leaves the
// defaults; none at all is no mistake.
func TestHostileFiles(t *testing.T) {
	dir := t.TempDir()
	real := filepath.Join(dir, "real.toml")
	if err := os.WriteFile(real, []byte(`units = "si"`), 0o600); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(dir, "link.toml")
	if err := os.Symlink(real, link); err != nil {
		t.Skip(err)
	}
	unreadable := filepath.Join(real, "settings.toml")
	for path, want := range map[string]string{dir: "is a folder", link: "is a symbolic link", unreadable: "no folder"} {
		if s := Load(path); len(s.Mistakes) != 1 || !strings.Contains(s.Mistakes.Error(), want) || s.Bench.System != units.US || s.Copy != "text" {
			t.Errorf("%s: %v, %+v", path, s.Mistakes, s)
		}
	}
	for _, path := range []string{"", filepath.Join(dir, "none.toml"), filepath.Join(dir, "none", "none.toml")} {
		if s := Load(path); !reflect.DeepEqual(s, Default()) {
			t.Errorf("%q: %+v", path, s)
		}
	}
	for name, content := range map[string]string{
		"too large": "units = \"si\"\n" + strings.Repeat("# x\n", largest/4),
		"deep":      "rows = " + strings.Repeat("[", 10_000),
		"binary":    "\xff\xfe\x00u = 1",
		"many":      strings.Repeat("units = 1\n", 10_000),
		"tables":    strings.Repeat("[[keys]]\n", 10_000),
	} {
		if s := written(t, content); len(s.Mistakes) == 0 || len(s.Mistakes.Error()) > 1<<20 || s.Bench.System != units.US {
			t.Errorf("%s: %.300v", name, s.Mistakes)
		}
	}
}

func TestPath(t *testing.T) {
	for want, env := range map[string]map[string]string{
		"/c/alongside/settings.toml":         {"XDG_CONFIG_HOME": "/c", "HOME": "/h"},
		"/h/.config/alongside/settings.toml": {"XDG_CONFIG_HOME": "c", "HOME": "/h"},
		"":                                   nil,
	} {
		if have := filepath.ToSlash(Path("linux", func(name string) string { return env[name] })); have != want {
			t.Errorf("%v: %q, want %q", env, have, want)
		}
	}
}

// What a start without a file costs.
func BenchmarkNoFile(b *testing.B) {
	path := filepath.Join(b.TempDir(), "none.toml")
	for b.Loop() {
		Load(path)
	}
}

// No file makes the reader panic, hang or take what it did not name.
func FuzzRead(f *testing.F) {
	f.Add(Text("", someKeys))
	f.Add("units = [\"si\",\n\"x\"]\n[keys]\n\"\\\" = 'a'\n[[keys]]\nkeys.u = {a = 1}\n")
	f.Fuzz(func(t *testing.T, text string) {
		s := Default()
		s.read("f.toml", []byte(text))
		if s.Bench.Band < 0 || s.Bench.Band > 0.25 || s.Copy == "" || s.Background == "" {
			t.Errorf("%+v", s)
		}
		for _, k := range s.Keys {
			s.Refuse(k.Name, "x", "y")
		}
		if len(s.Keys) > 0 {
			t.Error("a refused key stays")
		}
	})
}
