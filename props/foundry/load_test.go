package foundry_test

import (
	"errors"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"alongside/data"
	"alongside/props/catalog"
	"alongside/props/foundry"
	"alongside/props/record"
)

func load(content string) (*foundry.Book, error) {
	return foundry.Load(data.Catalog(), fstest.MapFS{"bad.toml": {Data: []byte(content)}}, "*.toml")
}

const cite = "source = \"ASTM-A48\"\nknown = \"read\"\n"

// Each mistake that a hand makes in a process file gets file, line, field and
// remedy.
func TestLoadErrors(t *testing.T) {
	const item = "[[item]]\nkind = \"minimum-wall\"\nfamilies = [\"aluminum\"]\n"
	const dctg = "[[dctg]]\nover = \"10 mm\"\nto = \"16 mm\"\n"
	for name, c := range map[string]struct{ content, want string }{
		"no unit":         {item + "value = \"0.125\"\n" + cite, `bad.toml:4: minimum-wall, value: "0.125": understood 0.125 without a unit`},
		"decimal comma":   {item + "value = \"0,125 in\"\n" + cite, "bad.toml:4: minimum-wall, value"},
		"bare number":     {item + "value = 0.125\n" + cite, "put it in quotes"},
		"wrong kind":      {item + "value = \"2 lb\"\n" + cite, "expected a unit of length"},
		"swapped range":   {item + "value = \"0.2–0.1 in\"\n" + cite, "bad.toml:4: minimum-wall, value"},
		"negative":        {item + "value = \"-0.1 in\"\n" + cite, "cannot be negative"},
		"no value":        {item + cite, "is missing, and there is no text"},
		"unknown line":    {strings.Replace(item, "minimum-wall", "minimum-wal", 1) + "value = \"1 mm\"\n" + cite, "did you mean minimum-wall?"},
		"words only":      {"[[item]]\nkind = \"tooling\"\nvalue = \"3\"\n" + cite, "is told in words"},
		"unknown family":  {strings.Replace(item, "aluminum", "aluminium", 1) + "value = \"1 mm\"\n" + cite, "did you mean aluminum?"},
		"unknown process": {item + "processes = [\"sands\"]\nvalue = \"1 mm\"\n" + cite, "use sand, pm, die"},
		"unknown source":  {item + "value = \"1 mm\"\nsource = \"ASTM-A49\"\nknown = \"read\"\n", "did you mean ASTM-A4"},
		"no source":       {item + "value = \"1 mm\"\nknown = \"read\"\n", "minimum-wall, source: is missing"},
		"known":           {item + "value = \"1 mm\"\nsource = \"ASTM-A48\"\nknown = \"seen\"\n", "write read or memory"},
		"unknown key":     {item + "valeu = \"1 mm\"\nvalue = \"1 mm\"\n" + cite, "bad.toml:4: minimum-wall, valeu: is not a key of this record\n    remedy: did you mean value?"},
		"bad pattern":     {item + "alloys = '35('\nvalue = \"1 mm\"\n" + cite, "is not a pattern"},
		"unknown record":  {"[[itme]]\nkind = \"draft\"\n", "bad.toml:1: itme: is not a kind of record\n    remedy: did you mean item?"},
		"syntax":          {item + "value = \"1 mm\n" + cite, "close the quotes"},
		"not UTF-8":       {item + "text = \"\xff\"\nvalue = \"1 mm\"\n" + cite, "the file is not UTF-8 text"},
		"source twice":    {"[[source]]\nid = \"ASTM-A48\"\ntitle = \"x\"\nkind = \"standard\"\n", "is already in the source list"},
		"count":           {dctg + "grades = \"1–3\"\nfull = \"0.1 0.2\"\n" + cite, "holds 2 figures for 3 grades"},
		"grades":          {dctg + "grades = \"3–1\"\nfull = \"0.1 0.2 0.3\"\n" + cite, "is not a range of grades"},
		"grade letter":    {"[[allowance]]\ngrades = \"F–I\"\n" + cite, "is not a range of grades"},
		"coarser finer":   {dctg + "grades = \"1–3\"\nfull = \"0.1 0.3 0.2\"\n" + cite, "bad.toml:5: over 10 mm, full: 0.2 mm stands after 0.3 mm"},
		"cell twice":      {dctg + "grades = \"1\"\nfull = \"0.1\"\n" + cite + dctg + "grades = \"1\"\nfull = \"0.1\"\n" + cite, "stands twice"},
		"larger finer":    {dctg + "grades = \"1\"\nfull = \"0.2\"\n" + cite + "[[dctg]]\nover = \"16 mm\"\nto = \"25 mm\"\ngrades = \"1\"\nfull = \"0.1\"\n" + cite, "is less than the 0.2 mm of a smaller size"},
		"size order":      {strings.Replace(dctg, "16", "6", 1) + "grades = \"1\"\nfull = \"0.1\"\n" + cite, "is not above \"over\""},
		"step":            {"[[linear]]\nplus_minus = [\"0.010 in\"]\n" + cite, "does not say up to which size"},
		"step order":      {"[[linear]]\nplus_minus = [\"0.03 in to 3 in\", \"0.02 in to 6 in\"]\n" + cite, "does not follow the step before"},
		"step unit":       {"[[linear]]\nplus_minus = [\"1 mm to 3 mm\"]\n" + cite, "is not in inches"},
		"no step":         {"[[linear]]\nprecision = \"standard\"\n" + cite, "is missing, and there is no \"each\""},
		"hole":            {"[[temper]]\nmatch = 'T(\\d)'\ntext = \"{2}\"\n" + cite, "names a part that the pattern does not capture"},
		"stage":           {"[[schedule]]\nalloys = '356'\ntemper = \"T6\"\nsteps = [\"cook: 1000 °F\"]\n" + cite, "does not begin with a stage"},
		"stage time":      {"[[schedule]]\nalloys = '356'\ntemper = \"T6\"\nsteps = [\"age: 310 °F; long\"]\n" + cite, "356 T6, steps"},
		"any alloy":       {"[[schedule]]\ntemper = \"T6\"\nsteps = [\"age: 310 °F\"]\n" + cite, "holds for named alloys or families only"},
		"normally":        {"[[treatable]]\nnormally = \"maybe\"\ntext = \"x\"\n" + cite, "use one of: yes, no, depends"},
		"on":              {"[[designation]]\non = \"alias\"\nmatch = 'x'\npart = \"p\"\ntext = \"x\"\n" + cite, "use one of: name, uns"},
		"volts":           {"[[anodic]]\ngroup = \"x\"\nindex = \"-0.9 V\"\n" + cite, "write it without its sign"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := load(c.content)
			if err == nil {
				t.Fatal("no mistake was found")
			}
			if !strings.Contains(err.Error(), c.want) {
				t.Errorf("have:\n%v\nwant: %s", err, c.want)
			}
			var all record.Errors
			if !errors.As(err, &all) {
				t.Fatalf("%T", err)
			}
			for _, e := range all {
				if e.File != "bad.toml" || e.Line < 1 || e.Problem == "" || e.Remedy == "" {
					t.Errorf("incomplete: %#v", e)
				}
			}
		})
	}
}

// One bad record does not hide the mistakes of the others, and what is right
// is read.
func TestLoadAll(t *testing.T) {
	b, err := load("[[item]]\nkind = \"draft\"\nvalue = \"x\"\n" + cite + "[[anodic]]\ngroup = \"bad\"\nindex = \"y\"\n" + cite + "[[anodic]]\ngroup = \"good\"\nindex = \"0.5 V\"\n" + cite)
	var all record.Errors
	if !errors.As(err, &all) || len(all) != 2 || all[0].Line != 3 || all[1].Line != 8 {
		t.Errorf("%v", err)
	}
	if a, ok := b.Anodic(material(t, "gray-30")); !ok || a.Group != "good" {
		t.Error("the good record is lost, or a bad one kept")
	}
	if _, err := foundry.Load(data.Catalog(), fstest.MapFS{}, "*.toml"); err == nil {
		t.Error("no file, no error")
	}
}

// A family that says it belongs to a group is met by what names the group.
func TestGroup(t *testing.T) {
	const family = "[[family]]\nid = \"white-iron\"\nname = \"white iron\"\n"
	const alloy = "[[alloy]]\nid = \"w1\"\nname = \"W1\"\nfamily = \"white-iron\"\n[[alloy.material]]\nprocess = \"sand\"\n"
	for group, want := range map[string]bool{"group = \"iron\"\n": true, "group = \"white-metal\"\n": false, "": false} {
		c, err := catalog.LoadFiles(data.Catalog(), []catalog.File{{Name: "f.toml", Content: []byte(family + group + alloy)}})
		if err != nil {
			t.Fatal(err)
		}
		b, err := load("[[anodic]]\nfamilies = [\"iron\"]\ngroup = \"x\"\nindex = \"0.5 V\"\n" + cite)
		if err != nil {
			t.Fatal(err)
		}
		if _, have := b.Anodic(c.Material("w1-sand")); have != want {
			t.Errorf("%q: counted as iron: %v", group, have)
		}
	}
	if _, err := load("[[anodic]]\nfamilies = [\"irn\"]\ngroup = \"x\"\nindex = \"0.5 V\"\n" + cite); err == nil || !strings.Contains(err.Error(), "did you mean iron?") {
		t.Errorf("have %v", err)
	}
}

// FuzzLoad reads any text as a process file: it never panics, and every
// mistake says where it stands.
func FuzzLoad(f *testing.F) {
	names, err := fs.Glob(data.ProcessFiles, "process/*.toml")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range names {
		content, err := fs.ReadFile(data.ProcessFiles, name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(content[:min(len(content), 1500)])
	}
	f.Add([]byte("[[dctg]]\nover=\"0 mm\"\nto=\"1 mm\"\ngrades=\"1–16\"\nfull=\"\"\n"))
	m, size := data.Catalog().Materials, length(f, "4 in")
	f.Fuzz(func(t *testing.T, content []byte) {
		b, err := load(string(content))
		if err != nil {
			var all record.Errors
			if !errors.As(err, &all) {
				t.Fatalf("%T: %v", err, err)
			}
			for _, e := range all {
				if e.Line < 1 || e.Problem == "" {
					t.Fatalf("incomplete: %#v", e)
				}
			}
		}
		// What was read must not panic either.
		for i := 0; i < len(m); i += 37 {
			b.Page(data.Catalog(), m[i], &size)
		}
	})
}
