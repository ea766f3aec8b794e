package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"alongside/data"
	"alongside/props/catalog"
)

// invented is the test catalog; its figures are made up.
var invented = catalogOf(goldenFolder + "/invented.toml")

// catalogOf is the catalog that one data file holds.
func catalogOf(path string) func() *catalog.Catalog {
	return sync.OnceValue(func() *catalog.Catalog {
		content, err := os.ReadFile(path)
		if err != nil {
			panic(err)
		}
		c, err := catalog.LoadFiles(nil, []catalog.File{{Name: "invented.toml", Content: content}})
		if err != nil {
			panic(err)
		}
		return c
	})
}

type result struct {
	code        int
	out, errors string
}

// try runs a command line on a catalog, without a terminal.
func try(catalog func() *catalog.Catalog, args ...string) result {
	return tryIn(catalog, nil, args...)
}

// tryIn is try with an environment.
func tryIn(catalog func() *catalog.Catalog, env map[string]string, args ...string) result {
	var out, errs bytes.Buffer
	p := &program{ctx: context.Background(), in: strings.NewReader(""), out: &out, err: &errs,
		env: func(name string) string { return env[name] }, catalog: catalog}
	code := p.run(args)
	return result{code, out.String(), errs.String()}
}

// Command lines whose whole output is kept in testdata/cmd, on the invented
// catalog.
func TestCommands(t *testing.T) {
	for name, line := range map[string]struct {
		args []string
		code int
	}{
		"compare-text":      {[]string{"compare", "t1-f-sand", "t1-t6-pm", "t2-die", "l30"}, exitOK},
		"compare-minimum":   {[]string{"compare", "t1-f-sand", "t1-t6-pm", "t2-die", "l30", "--basis", "minimum", "--units", "si", "--delta", "amount"}, exitOK},
		"compare-row":       {[]string{"compare", "t1-f-sand", "t2-die", "--baseline", "l30", "--rows", "yield", "--delta", "ratio"}, exitOK},
		"compare-markdown":  {[]string{"compare", "t2-die", "t1-f-sand", "l30", "--format", "markdown"}, exitOK},
		"compare-tsv":       {[]string{"compare", "t1-f-sand", "t2-die", "--format", "tsv"}, exitOK},
		"compare-csv":       {[]string{"compare", "t1-f-sand", "t2-die", "--format", "csv", "--units", "si"}, exitOK},
		"compare-html":      {[]string{"compare", "t2-die", "t1-f-sand", "l30", "--format", "html"}, exitOK},
		"compare-json":      {[]string{"compare", "l30", "t1-f-sand", "t1-t6-pm", "t2-die", "--format", "json"}, exitOK},
		"compare-expansion": {[]string{"compare", "t1-f-sand", "t1-t6-pm", "--rows", "cte", "--expansion", "68-400 °F"}, exitOK},
		"show":              {[]string{"show", "Z00001-F sand"}, exitOK},
		"show-si":           {[]string{"show", "l30", "--units", "si"}, exitOK},
		"find":              {[]string{"find", "tin"}, exitOK},
		"find-tsv":          {[]string{"find", "--format", "tsv"}, exitOK},
		"find-json":         {[]string{"find", "t1", "t6", "--format", "json", "--units", "si"}, exitOK},
		"compare-house":     {[]string{"compare", "t1-t6-pm", "t1-f-sand", "--rows", "tensile", "--house", "../../testdata/cmd/house.toml"}, exitOK},
		"find-house":        {[]string{"show", "t1-f-sand", "--house", "../../testdata/cmd/house.toml"}, exitOK},
		"house-missing":     {[]string{"find", "--house", "nowhere.toml"}, exitUsage},
		"find-needs":        {[]string{"find", "--need", "tensile >= 20 ksi", "--need", "density < 8 g/cm3; family = tin", "--near", "3"}, exitOK},
		"find-needs-json":   {[]string{"find", "--need", "tensile >= 30 ksi", "--near", "3", "--duty", "tie-strength", "--baseline", "l30", "--format", "json"}, exitOK},
		"find-needs-tsv":    {[]string{"find", "--better-than", "t1-f-sand", "--rows", "tensile,density", "--sort", "likeness", "--format", "tsv"}, exitOK},
		"find-front":        {[]string{"find", "--front", "tensile,density", "--duty", "tie-strength", "--baseline", "l30", "--sort", "tensile"}, exitOK},
		"find-sort":         {[]string{"find", "t1", "--sort", "density"}, exitOK},
		"find-corrected":    {[]string{"find", "tinn", "sand"}, exitOK},
		"find-beat-nothing": {[]string{"find", "--better-than", "l30", "--rows", "yield"}, exitUsage},
		"find-need-bad":     {[]string{"find", "--need", "yeild >= 20 ksi"}, exitUsage},
		"find-spoken":       {[]string{"find", "--need", "25 ksi tensile, under 8 g/cm3, 4.2 lb; nonsense; 20 ksi yield at 300 F", "--near", "1"}, exitFindings},
		"find-taken":        {[]string{"show", "t2di"}, exitOK},
		"find-duty-bad":     {[]string{"find", "--duty", "tie-strength"}, exitUsage},
		"compare-needs":     {[]string{"compare", "l30", "t1-f-sand", "t2-die", "--need", "tensile >= 25 ksi; process = sand or pm", "--rows", "tensile"}, exitOK},
		"compare-needs-md":  {[]string{"compare", "l30", "t1-f-sand", "--need", "tensile >= 25 ksi", "--rows", "tensile", "--format", "markdown"}, exitOK},
		"find-nothing":      {[]string{"find", "unobtainium"}, exitFindings},
		"sources":           {[]string{"sources"}, exitOK},
		"convert":           {[]string{"convert", "37 ksi", "MPa", "psi"}, exitOK},
		"convert-all":       {[]string{"convert", "39", "%IACS"}, exitOK},
		"help":              {[]string{"--help"}, exitOK},
		"compare-help":      {[]string{"compare", "--help"}, exitOK},
		"unknown-id":        {[]string{"compare", "t1-f-sand", "t1-t6-pn"}, exitUsage},
		"unknown-baseline":  {[]string{"compare", "t1-f-sand", "--baseline", "l31"}, exitUsage},
		"unknown-row":       {[]string{"compare", "t1-f-sand", "--rows", "tensile,yeild_strength"}, exitUsage},
		"unknown-format":    {[]string{"compare", "t1-f-sand", "--format", "pdf"}, exitUsage},
		"unknown-flag":      {[]string{"compare", "t1-f-sand", "--basline", "l30"}, exitUsage},
		"several":           {[]string{"show", "t1"}, exitUsage},
		"no-id":             {[]string{"compare"}, exitUsage},
		"no-terminal":       {nil, exitUsage},
		"no-terminal-ids":   {[]string{"t1-f-sand", "class l30"}, exitUsage},
		"bench-unknown-id":  {[]string{"comare", "t1-f-sand"}, exitUsage},
		"wrong-dimension":   {[]string{"convert", "37 ksi", "lb"}, exitUsage},
		"wrong-unit":        {[]string{"convert", "37 kis", "MPa"}, exitUsage},
		"no-unit":           {[]string{"convert", "37"}, exitUsage},
		"wrong-service":     {[]string{"compare", "l30", "--service", "300 ksi"}, exitUsage},
	} {
		t.Run(name, func(t *testing.T) {
			keep(t, name, try(invented, line.args...), line.code)
		})
	}
}

// Data files of the user are checked on top of the built-in catalog, and every
// mistake is told.
func TestCheckFile(t *testing.T) {
	r := try(data.Catalog, "check", goldenFolder+"/bad.toml")
	if r.code != exitFindings {
		t.Errorf("exit code %d, want %d", r.code, exitFindings)
	}
	mistakes, _, _ := strings.Cut(r.out, "\n\n")
	golden(t, "check-bad.stdout", []byte(strings.ReplaceAll(mistakes, goldenFolder+"/", "")+"\n"))
	if r := try(data.Catalog, "check", "no-such-file.toml"); r.code != exitFindings || !strings.Contains(r.errors, "no-such-file.toml") {
		t.Errorf("missing file: exit code %d, %q", r.code, r.errors)
	}
	r = try(invented, "check", goldenFolder+"/invented.toml")
	if r.code != exitFindings || !strings.Contains(r.out, "is already in the built-in catalog") {
		t.Errorf("ids given twice: exit code %d\n%s", r.code, r.out)
	}
}

// The last lines of check are an interface.
func TestCheckBuiltIn(t *testing.T) {
	r := try(data.Catalog, "check")
	lines := strings.Split(strings.TrimSpace(r.out), "\n")
	if len(lines) < 4 {
		t.Fatalf("exit code %d, output:\n%s%s", r.code, r.out, r.errors)
	}
	for i, words := range []string{" materials", " figures", " findings explained", " findings open"} {
		if l := lines[len(lines)-4+i]; !strings.HasSuffix(l, words) {
			t.Errorf("line %q does not end in %q", l, words)
		}
	}
}

// A figure that physics questions is a finding; with a reason it is explained.
func TestCheckFindings(t *testing.T) {
	const record = `
[[alloy]]
id = "odd"
name = "Odd"
family = "zinc"

[[alloy.material]]
process = "sand"
%EXPLAINED%
[[alloy.material.figures]]
basis = "typical"
source = "NADCA-PSS"
known = "memory"
tensile_strength = "30 ksi"
yield_strength = "40 ksi"
`
	const reason = `
[[alloy.material.explained]]
rule = "yield-tensile"
property = "yield_strength"
why = "invented so"
`
	for _, c := range []struct {
		explained string
		code      int
		last      string
	}{
		{"", exitFindings, "1 materials\n2 figures\n0 findings explained\n1 findings open\n"},
		{reason, exitOK, "1 materials\n2 figures\n1 findings explained\n0 findings open\n"},
	} {
		file := filepath.Join(t.TempDir(), "odd.toml")
		if err := os.WriteFile(file, []byte(strings.Replace(record, "%EXPLAINED%", c.explained, 1)), 0o644); err != nil {
			t.Fatal(err)
		}
		r := try(data.Catalog, "check", file)
		if r.code != c.code || !strings.HasSuffix(r.out, c.last) {
			t.Errorf("exit code %d, want %d; output:\n%s%s", r.code, c.code, r.out, r.errors)
		}
	}
	file := filepath.Join(t.TempDir(), "family.toml")
	if err := os.WriteFile(file, []byte("[[family]]\nid = \"tin\"\nname = \"tin\"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if r := try(data.Catalog, "check", file); r.code != exitOK || !strings.HasPrefix(r.out, "families without bands, or without a base element that the rules know: tin\n\n0 materials\n") {
		t.Errorf("check of a family without bands: exit code %d\n%s", r.code, r.out)
	}
	if r := try(data.Catalog, "check", "--rules"); r.code != exitOK || !strings.Contains(r.out, "yield-tensile: ") || !strings.Contains(r.out, "\ngray iron: elastic_modulus 9.0–24.0 Mpsi; density ") {
		t.Errorf("check --rules: exit code %d\n%s", r.code, r.out)
	}
}
