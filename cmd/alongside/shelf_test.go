package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props/catalog"
)

// shop runs command lines on the real catalog with a data folder of its own.
func shop(t *testing.T) (home string, do func(args ...string) result) {
	t.Helper()
	home = t.TempDir()
	return home, func(args ...string) result {
		var out, errs bytes.Buffer
		p := &program{ctx: context.Background(), in: strings.NewReader(""), out: &out, err: &errs, catalog: data.Catalog,
			env: func(name string) string { return map[string]string{"XDG_DATA_HOME": home}[name] }}
		code := p.run(args)
		return result{code, out.String(), errs.String()}
	}
}

// filledIn ticks the shear strength of 6061-O and corrects its fatigue strength.
func filledIn(list, format string) string {
	set := func(property, box string) {
		at := regexp.MustCompile(`\[ \](.* 6061-O wrought, ` + property + ` .*)`)
		if format != "text" {
			by := map[string]string{"csv": ",", "tsv": "\t"}[format]
			at = regexp.MustCompile(by + by + "([^" + by + "]*)" + by + by + "(" + by + "[a-z]*" + by + "6061-O wrought" + by + property + by + ".*)")
			list = at.ReplaceAllString(list, strings.Join([]string{box, "2015", "$1", "JK", "2026-11-26$2"}, by))
			return
		}
		list = at.ReplaceAllString(list, "["+box+"]$1")
	}
	set("Shear strength", "x")
	set("Fatigue strength", "9.5 ksi")
	return strings.NewReplacer("Edition:", "Edition: 2015", "By:", "By: JK", "On:", "On: 2026-11-26").Replace(list)
}

// A list that is printed, filled in and taken back is shown everywhere as checked
// by the shop, in every form of the list.
func TestShelfRoundTrip(t *testing.T) {
	for _, format := range []string{"text", "csv", "tsv"} {
		home, do := shop(t)
		list := do("shelf", "AA-ADS", "--format", format)
		file := filepath.Join(home, "list."+format)
		if err := os.WriteFile(file, []byte(filledIn(list.out, format)), 0o600); err != nil {
			t.Fatal(err)
		}
		kept := filepath.Join(home, "alongside", "checked.toml")
		var first []byte
		for range 2 { // twice taken is once kept
			if r := do("shelf", "--take", file); r.code != exitOK || r.out != "2 figures checked by the shop, 1 of them corrected; kept in "+kept+"\n" {
				t.Fatalf("%s: %d %s%s", format, r.code, r.out, r.errors)
			}
			now, err := os.ReadFile(kept)
			if err != nil || first != nil && !bytes.Equal(first, now) {
				t.Fatalf("%s: %v, the file changed:\n%s", format, err, now)
			}
			first = now
		}
		const corrected = "shop reads 9.5 ksi, catalog had 9 ksi from memory"
		for _, x := range []struct {
			args, wants []string
		}{
			{[]string{"show", "6061-o-wrought"}, []string{"12 ksi typical; S4, checked by the shop", corrected, "checked by the shop: edition 2015, looked up by JK on 2026-11-26"}},
			{[]string{"compare", "6061-t6-wrought", "6061-o-wrought", "--rows", "fatigue,shear"}, []string{"¹ checked by the shop: " + corrected, "² checked by the shop S1"}},
			{[]string{"compare", "6061-t6-wrought", "6061-o-wrought", "--rows", "fatigue", "--format", "json"}, []string{`"known": "checked"`}},
			{[]string{"show", "6061-o-wrought", "--format", "json"}, []string{`"known": "checked"`, corrected}},
			{[]string{"show", "6061-o-wrought", "--format", "csv"}, []string{"typical,checked,", corrected}},
			{[]string{"brief", "gray-30", "6061-o-wrought", "--need", "fatigue strength >= 5 ksi"}, []string{"Aluminum standards and data, checked by the shop, " + corrected}},
			{[]string{"sources"}, []string{"all 784 8021 2 "}},
			{[]string{"sources", "--format", "json"}, []string{`"checked": 2`}},
			{[]string{"shelf", "AA-ADS"}, []string{"91 figures wait"}},
		} {
			r := do(x.args...)
			for _, want := range x.wants {
				if r.code != exitOK || !strings.Contains(strings.Join(strings.Fields(r.out), " "), want) {
					t.Errorf("%s: %v does not say %q:\n%s%s", format, x.args, want, r.out, r.errors)
				}
			}
		}
	}
}

// A list that is not whole changes nothing and says where.
func TestShelfRefuses(t *testing.T) {
	home, do := shop(t)
	file := filepath.Join(home, "list.txt")
	if err := os.WriteFile(file, []byte(strings.Replace(filledIn(do("shelf", "AA-ADS").out, "text"), "By: JK", "By:", 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	r := do("shelf", "--take", file)
	if r.code != exitFindings || strings.Count(r.errors, "by: is missing") != 2 || !strings.Contains(r.errors, "remedy: write who looked it up") || !regexp.MustCompile(`list\.txt:\d+: by`).MatchString(r.errors) {
		t.Errorf("%d %s", r.code, r.errors)
	}
	if _, err := os.Stat(filepath.Join(home, "alongside")); err == nil {
		t.Error("something was kept")
	}
	for args, want := range map[string]string{
		"shelf NONSENSE": `"NONSENSE" is not a source`, "shelf AA-ADS --take x": "leave AA-ADS out", "shelf --take nowhere": "does not exist",
		"shelf --take x --house bars.csv": "ends in .toml",
	} {
		if r := do(strings.Fields(args)...); r.code == exitOK || !strings.Contains(r.errors, want) {
			t.Errorf("%s: %d %s", args, r.code, r.errors)
		}
	}
}

// --house names another file, which may hold more, or not be there yet.
func TestShelfHouse(t *testing.T) {
	home, do := shop(t)
	file, house := filepath.Join(home, "list.txt"), filepath.Join(home, "house.toml")
	if err := os.WriteFile(file, []byte(filledIn(do("shelf", "AA-ADS").out, "text")), 0o600); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		if r := do("shelf", "--take", file, "--house", house); r.code != exitOK {
			t.Fatal(r.errors)
		}
	}
	if r := do("show", "6061-o-wrought", "--house", house); !strings.Contains(r.out, "shop reads 9.5 ksi") {
		t.Errorf("%s%s", r.out, r.errors)
	}
	if r := do("show", "6061-o-wrought"); strings.Contains(r.out, "checked by the shop") {
		t.Error("checked without the file")
	}
}

// What no longer fits is told of and not applied; a file that cannot be read is
// told of, and the commands go on.
func TestShelfFileOfAnotherDay(t *testing.T) {
	home, do := shop(t)
	dir := filepath.Join(home, "alongside")
	if err := os.MkdirAll(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	for text, want := range map[string]string{
		"[[checked]]\nof = \"6061-o-wrought\"\nproperty = \"shear_strength\"\nbasis = \"typical\"\nsource = \"AA-ADS\"\ncatalog = \"13 ksi\"\nedition = \"2015\"\ntable = \"T\"\nby = \"JK\"\non = \"2026-11-26\"\n": "the catalog has 12 ksi now; look it up again",
		"[[checked]]\nof = \"6061-o-wrought\"\n": "the figures checked by the shop are left out:",
		"\x00\xff":                               "the figures checked by the shop are left out:",
	} {
		if err := os.WriteFile(filepath.Join(dir, "checked.toml"), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if r := do("show", "6061-o-wrought"); r.code != exitOK || strings.Contains(r.out, "checked by the shop") || !strings.Contains(r.errors, want) {
			t.Errorf("%q: %d %s", text, r.code, r.errors)
		}
	}
}

// What stands in the way of the file is told of, never followed or replaced.
func TestShelfFileInTheWay(t *testing.T) {
	for kind, put := range map[string]func(path string) error{
		"a folder":        func(path string) error { return os.MkdirAll(path, 0o700) },
		"a symbolic link": func(path string) error { return os.Symlink(os.DevNull, path) },
	} {
		home, do := shop(t)
		file, dir := filepath.Join(home, "list.txt"), filepath.Join(home, "alongside")
		if err := os.WriteFile(file, []byte(filledIn(do("shelf", "AA-ADS").out, "text")), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := os.MkdirAll(dir, 0o700); err != nil {
			t.Fatal(err)
		}
		if err := put(filepath.Join(dir, "checked.toml")); err != nil {
			t.Skip(err)
		}
		if r := do("shelf", "--take", file); r.code != exitFindings || r.out != "" || !strings.Contains(r.errors, "is "+kind) {
			t.Errorf("%s: %d %s%s", kind, r.code, r.out, r.errors)
		}
		if entries, _ := os.ReadDir(dir); len(entries) != 1 {
			t.Errorf("%s: the folder holds %v", kind, entries)
		}
	}
}

// A figure that is marked on the bench is kept like one from a list.
func TestKeepAndLoad(t *testing.T) {
	home, do := shop(t)
	var errs bytes.Buffer
	p := &program{err: &errs, catalog: data.Catalog, env: func(string) string { return home }}
	if err := p.addHouse(nil); err != nil {
		t.Fatal(err)
	}
	check := catalog.Check{Place: catalog.Place{Of: "6061-o-wrought", Property: "shear_strength", Basis: "typical", Source: "AA-ADS", Catalog: "12 ksi"}, Edition: "2015", Table: "T", By: "JK", On: "2026-11-26"}
	path, err := p.checkedFile()
	if err != nil {
		t.Fatal(err)
	}
	c, err := p.keepAndLoad(path, check)
	if err != nil || c != p.catalog() || len(c.Dropped) > 0 {
		t.Fatal(err, errs.String())
	}
	if r := do("show", "6061-o-wrought"); !strings.Contains(r.out, "checked by the shop") {
		t.Errorf("%s%s", r.out, r.errors)
	}
}
