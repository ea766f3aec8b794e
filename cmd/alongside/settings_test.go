package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props/settings"
	"alongside/tui/ptytest"
)

// withSettings is an environment with a settings file of this content.
func withSettings(t *testing.T, content string) map[string]string {
	t.Helper()
	home := t.TempDir()
	if err := os.MkdirAll(filepath.Join(home, "alongside"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(home, "alongside", "settings.toml"), []byte(content), 0o600); err != nil {
		t.Fatal(err)
	}
	return map[string]string{"XDG_CONFIG_HOME": home}
}

// Flags go before settings, settings before defaults, in every command that has
// the flag.
func TestSettingsUnderFlags(t *testing.T) {
	env := withSettings(t, "units = [\"si\", \"density us\"]\nbasis = \"minimum\"\ndelta = \"amount\"\nrows = [\"density\", \"yield\"]\n")
	for _, c := range []struct{ set, same string }{
		{"compare gray-30 a356-t6-pm --units us", "compare gray-30 a356-t6-pm --units us --basis minimum --delta amount --rows density,yield"},
		{"compare gray-30 a356-t6-pm --rows tensile,density --basis typical --delta off --units si", "compare gray-30 a356-t6-pm --rows tensile,density --delta off --units si"},
		{"swap gray-30 a356-t6-pm --mass 4lb", "swap gray-30 a356-t6-pm --mass 4lb --units si --basis minimum"},
		{"swap gray-30 a356-t6-pm --mass 4lb --units us --basis typical", "swap gray-30 a356-t6-pm --mass 4lb"},
		{"process a356-t6-pm", "process a356-t6-pm --units si"},
		{"process a356-t6-pm --units us", "process a356-t6-pm"},
		{"show a356-t6-pm", "show a356-t6-pm"},
		{"find 356", "find 356 --units si"},
		{"convert 37ksi", "convert 37ksi"},
	} {
		have, want := tryIn(data.Catalog, env, strings.Fields(c.set)...), try(data.Catalog, strings.Fields(c.same)...)
		if have != want || have.out == "" {
			line, _ := firstDifference(want.out, have.out)
			t.Errorf("%s is not %s\n%s\n%s", c.set, c.same, line, have.errors)
		}
	}
	r := tryIn(data.Catalog, env, "compare", "gray-30", "a356-t6-pm")
	rows := strings.Split(r.out, "\n")
	if !strings.Contains(r.out, "Density        lb/in³") || !strings.Contains(r.out, "MPa") || strings.Contains(r.out, "Tensile") {
		t.Errorf("%d lines\n%s", len(rows), r.out)
	}
}

// A line that cannot be used is told of on stderr, and the rest is used; the
// command settings tells of the keys too.
func TestWrongSettings(t *testing.T) {
	env := withSettings(t, "units = \"si\"\nbasis = \"both\"\n[keys]\nu = \"b\"\n")
	r := tryIn(data.Catalog, env, "compare", "gray-30", "a356-t6-pm")
	if r.code != exitOK || !strings.Contains(r.out, "MPa") || !strings.Contains(r.errors, "settings.toml:2: basis: \"both\" is not known") || !strings.Contains(r.errors, "use one of: minimum, typical") {
		t.Errorf("%d\n%s\n%s", r.code, r.out, r.errors)
	}
	r = tryIn(data.Catalog, env, "settings")
	if r.code != exitFindings || !strings.Contains(r.errors, "settings.toml:2: basis: ") || !strings.Contains(r.errors, "settings.toml:4: keys, u: \"b\" is the key of: ") || strings.Count(r.errors, "both") != 1 {
		t.Errorf("%d\n%s", r.code, r.errors)
	}
	r = tryIn(data.Catalog, env, "doctor")
	if text := strings.Join(strings.Fields(r.out), " "); !strings.Contains(text, "2 of its lines cannot be used") {
		t.Error(r.out)
	}
}

// The printed file is where --create writes it, and changes nothing; one that is
// there stays.
func TestCreateSettings(t *testing.T) {
	home := t.TempDir()
	env := map[string]string{"XDG_CONFIG_HOME": home}
	path := filepath.Join(home, "alongside", "settings.toml")
	text := tryIn(data.Catalog, env, "settings")
	if text.code != exitOK || !strings.HasPrefix(text.out, "# Settings of Alongside, looked for in\n# "+path+"\n") {
		t.Fatalf("%d %s\n%s", text.code, text.errors, text.out)
	}
	if r := tryIn(data.Catalog, env, "settings", "--create"); r.code != exitOK || r.out != path+"\n" {
		t.Errorf("%+v", r)
	}
	if have, err := os.ReadFile(path); string(have) != text.out || err != nil {
		t.Errorf("%v\n%s", err, have)
	}
	if have, want := tryIn(data.Catalog, env, "compare", "gray-30", "a356-t6-pm"), try(data.Catalog, "compare", "gray-30", "a356-t6-pm"); have != want {
		t.Errorf("the printed file changes what is printed\n%s", have.errors)
	}
	if err := os.WriteFile(path, []byte("units = \"si\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if r := tryIn(data.Catalog, env, "settings", "--create"); r.code != exitFindings || !strings.Contains(r.errors, "is there already") {
		t.Errorf("%+v", r)
	}
	if have, _ := os.ReadFile(path); string(have) != "units = \"si\"\n" {
		t.Errorf("the file was written over:\n%s", have)
	}
	if r := tryIn(data.Catalog, nil, "settings", "--create"); r.code != exitFindings || !strings.Contains(r.errors, "XDG_CONFIG_HOME") {
		t.Errorf("%+v", r)
	}
}

// The variables of the environment go before the settings, which stand in where
// they are not set.
func TestSettingsUnderVariables(t *testing.T) {
	env := withSettings(t, "background = \"light\"\nclipboard = \"file\"\n")
	p := &program{env: func(name string) string { return env[name] }}
	p.readSettings(p.root([]string{"doctor"}))
	if p.env("ALONGSIDE_BACKGROUND") != "light" || p.env("ALONGSIDE_CLIPBOARD") != "file" {
		t.Errorf("%q %q", p.env("ALONGSIDE_BACKGROUND"), p.env("ALONGSIDE_CLIPBOARD"))
	}
	env["ALONGSIDE_BACKGROUND"] = "dark"
	if p.env("ALONGSIDE_BACKGROUND") != "dark" {
		t.Error("the variable does not go first")
	}
}

// The README lists every setting.
func TestReadmeListsSettings(t *testing.T) {
	content, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	names := settings.Names()
	last := len(names) - 1
	want := "`" + strings.Join(names[:last], "`, `") + "`, `" + names[last] + "` and `[keys]`"
	if !strings.Contains(strings.Join(strings.Fields(string(content)), " "), want) {
		t.Errorf("README.md does not say %s", want)
	}
}

// The program that people run opens with the settings, in colors of high contrast
// and with keys of their own; NO_COLOR goes before the theme.
func TestBenchWithSettings(t *testing.T) {
	t.Parallel()
	env := withSettings(t, "units = \"si\"\ntheme = \"high contrast\"\n[keys]\nu = \"z\"\nx = \"b\"\n")
	var colors []string
	for _, more := range [][]string{nil, {"NO_COLOR=1"}} {
		s := ptytest.Start(t, ptytest.Options{Env: append([]string{"XDG_CONFIG_HOME=" + env["XDG_CONFIG_HOME"]}, more...)}, binary(t), "gray-30", "a356-t6-pm")
		s.WaitFor("settings.toml:5: keys, x: \"b\" is the key of")
		s.WaitFor("SI units")
		s.Type(ptytest.Tab, "x", "z")
		s.WaitFor("undone; ctrl+r brings it back")
		colors = append(colors, map[bool]string{true: "color"}[strings.Contains(s.Output(), "38;5;123m")])
		s.Type("q")
		if code := s.Exit(); code != 0 {
			t.Errorf("exit code %d", code)
		}
	}
	if colors[0] != "color" || colors[1] != "" {
		t.Errorf("colors of high contrast, then with NO_COLOR: %q", colors)
	}
}
