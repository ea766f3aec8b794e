package watch_test

import (
	"errors"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"alongside/data"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/record"
	"alongside/props/watch"
)

func load(content string) (*watch.Rules, error) {
	return watch.Load(data.Catalog(), data.Foundry(), fstest.MapFS{"bad.toml": {Data: []byte(content)}}, "*.toml")
}

const rule = `[[watch]]
id = "x"
title = "X"
severity = "check"
text = "Look."
source = "PRACTICE"
`

func TestLoadErrors(t *testing.T) {
	for name, c := range map[string]struct{ content, want string }{
		"about everything": {rule, "would be raised for everything"},
		"severity":         {strings.Replace(rule, "check", "stop", 1) + "to = [\"zinc\"]\n", "bad.toml:4: x, severity"},
		"family":           {rule + "to = [\"zink\"]\n", "did you mean zinc?"},
		"process":          {rule + "processes = [\"hpdc\"]\n", "use sand, pm, die"},
		"fact":             {rule + "with = [\"pressfit\"]\n", "did you mean press-fit?"},
		"limit":            {rule + "when = [\"elongation small\"]\n", `bad.toml:7: x, when: "elongation small" is not a limit`},
		"limit property":   {rule + "when = [\"elongatoin < 3 %\"]\n", "did you mean elongation?"},
		"limit unit":       {rule + "when = [\"elongation < 3 ksi\"]\n", "3 ksi (stress); expected % (percent)"},
		"limit ratio":      {rule + "when = [\"density < 0 × baseline\"]\n", "is not a number"},
		"limit bare":       {rule + "when = [\"tensile_strength < 30\"]\n", "30 without a unit"},
		"service":          {rule + "when = [\"service max > 250\"]\n", "250 without a unit"},
		"medium":           {rule + "medium = [\"glycole\"]\n", "did you mean glycol?"},
		"pH":               {rule + "when = [\"pH > 15\"]\n", "is not a pH"},
		"gap":              {rule + "when = [\"anodic gap > big\"]\n", "is not a voltage"},
		"content":          {rule + "when = [\"content Mg > lots\"]\n", "no number in"},
		"absent":           {rule + "when = [\"yeild_strength absent\"]\n", "did you mean yield_strength?"},
		"show":             {rule + "to = [\"zinc\"]\nshow = [\"strength\"]\n", "is not a property"},
		"new":              {rule + "new = \"yes\"\nto = [\"zinc\"]\n", "write new = true"},
		"new of what":      {rule + "new = true\nwith = [\"weld\"]\n", "needs a description of the pin"},
		"twice":            {rule + "to = [\"zinc\"]\n" + rule + "to = [\"zinc\"]\n", `"x" stands twice`},
		"unless":           {rule + "to = [\"zinc\"]\nunless = [\"y\"]\n", "is not another rule"},
		"unless itself":    {rule + "to = [\"zinc\"]\nunless = [\"x\"]\n", "is not another rule"},
		"source":           {strings.Replace(rule, "PRACTICE", "PRACTISE", 1) + "to = [\"zinc\"]\n", "did you mean PRACTICE?"},
		"fact source":      {rule + "to = [\"zinc\"]\n[[watch.fact]]\ntext = \"t\"\n", "bad.toml:8: x, source: is missing"},
		"unknown key":      {rule + "two = [\"zinc\"]\n", "two: is not a key of this record"},
		"tempers":          {rule + "tempers = '('\n", "is not a pattern"},
		"record":           {"[[rule]]\nid = \"x\"\n", "records start with [[watch]]"},
	} {
		t.Run(name, func(t *testing.T) {
			r, err := load(c.content)
			var all record.Errors
			if !errors.As(err, &all) {
				t.Fatalf("have %v, want mistakes", err)
			}
			if !strings.Contains(err.Error(), c.want) && !(name == "record" && strings.Contains(err.Error(), "is not a kind of record")) {
				t.Errorf("have:\n%v\nwant: %s", err, c.want)
			}
			for _, e := range all {
				if e.File != "bad.toml" || e.Line < 1 || e.Problem == "" || e.Remedy == "" {
					t.Errorf("incomplete: %#v", e)
				}
			}
			if len(r.List) > 1 {
				t.Errorf("%d rules kept", len(r.List))
			}
		})
	}
}

// FuzzLoad reads any text as a rule file and applies what it reads.
func FuzzLoad(f *testing.F) {
	names, err := fs.Glob(data.WatchFiles, "process/watch/*.toml")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range names {
		content, err := fs.ReadFile(data.WatchFiles, name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(content[:min(len(content), 2000)])
	}
	for _, when := range []string{"elongation < 3 %", "density > 1.2 × baseline", "thermal_expansion > 1.1 × mate", "anodic gap > 0.25 V", "content Mg > 3 %", "most Pb > 0.25 %", "yield_strength absent"} {
		f.Add([]byte(rule + "when = [\"" + when + "\"]\n"))
	}
	m := data.Catalog().Materials
	f.Fuzz(func(t *testing.T, content []byte) {
		r, err := load(string(content))
		var all record.Errors
		if err != nil && !errors.As(err, &all) {
			t.Fatalf("%T: %v", err, err)
		}
		cold, hot := -40.0, 200.0
		for i := 0; i+50 < len(m); i += 50 {
			r.Evaluate(compare.NewBench(), m[i], m[i+50], part.Given{Coldest: &cold, Hottest: &hot, Mate: m[i+7], With: 1<<23 - 1}, nil)
		}
	})
}
