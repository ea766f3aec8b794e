package main

import (
	"encoding/json"
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props/report"
)

// every is a command line of each command that prints an answer, without its
// format.
var every = [][]string{
	{"compare", "gray-30", "a356-t6-pm", "319-f-sand", "--need", "yield >= 20 ksi", "--need", "family = aluminum"},
	{"compare", "gray-30", "a356-t6-pm", "--service", "300 °F", "--delta", "amount", "--units", "si"},
	{"show", "a356-t6-pm"},
	{"show", "gray-30", "--units", "si"},
	{"find", "a356", "t6"},
	{"find", "aluminum", "--need", "yield >= 26 ksi; elongation >= 3 %", "--near", "3"},
	{"find", "--need", "family = aluminum", "--duty", "plate-stiffness", "--baseline", "gray-30", "--front", "yield,density"},
	{"swap", "gray-30", "a356-t6-pm", "--mass", "4.2 lb", "--wall", "3/8 in", "--case", "plate", "--length", "12 in", "--service", "70..250 F"},
	{"cost", "gray-30", "a356-t6-pm", "a380-f-die", "--mass", "4.2 lb", "--quantity", "2345", "--demo"},
	{"brief", "gray-30", "a356-t6-pm", "a380-f-die", "--mass", "4.2 lb", "--need", "yield >= 20 ksi", "--service", "70..250 F"},
	{"process", "a356-t6-pm", "gray-30", "--dimension", "4 in"},
	{"watch", "gray-30", "a356-t6-pm", "a380-f-die", "--service", "250 F", "--with", "press-fit,threads", "--dismiss", "stiffness"},
	{"convert", "37-40 ksi"},
	{"convert", ">= 37 ksi", "MPa"},
	{"sources"},
	{"sources", "--process"},
	{"sources", "--waiting"},
	{"shelf"},
	{"shelf", "AA-ADS", "--agreed"},
}

// Every command prints every format, and its help names them.
func TestEveryCommandInEveryFormat(t *testing.T) {
	for _, args := range every {
		for _, format := range report.Formats() {
			if r := try(data.Catalog, append(slices.Clone(args), "--format", format)...); r.code != exitOK || r.out == "" {
				t.Errorf("%v as %s: exit code %d, %s", args, format, r.code, r.errors)
			}
		}
		if r := try(data.Catalog, args[0], "--help"); !strings.Contains(r.out, "form of the output: "+strings.Join(report.Formats(), ", ")) {
			t.Errorf("%s --help does not name the formats", args[0])
		}
	}
}

// walker checks a JSON document against the vocabulary in the package comment
// of report.
type walker struct {
	t                                 *testing.T
	values, deltas, counts, citations int
}

var (
	valueKeys  = []string{"hi", "lo", "printed", "unit"}
	resultKeys = []string{"hi", "lo", "mid", "printed", "unit"}
	boundKeys  = []string{"least", "most"}
	deltaKeys  = []string{"hi", "lo", "mid", "percent", "unit"}
	sourceKeys = []string{"id", "known", "table", "title"}
)

func (w *walker) walk(path string, v any) {
	switch x := v.(type) {
	case json.Number:
		w.t.Errorf("%s: the number %s stands outside a value, a delta and a count", path, x)
	case []any:
		for i, e := range x {
			w.walk(path+"["+strconv.Itoa(i)+"]", e)
		}
	case map[string]any:
		w.object(path, x)
	}
}

func (w *walker) object(path string, x map[string]any) {
	keys := slices.Sorted(maps.Keys(x))
	last := path[strings.LastIndex(path, ".")+1:] // the key that leads here
	number := func(key string) {
		if _, ok := x[key].(json.Number); !ok && x[key] != nil {
			w.t.Errorf("%s.%s: %v is no number", path, key, x[key])
		}
	}
	text := func(key string) {
		if _, ok := x[key].(string); !ok {
			w.t.Errorf("%s.%s: %v is no text", path, key, x[key])
		}
	}
	switch {
	case last == "count":
		w.counts++
		for _, k := range keys {
			if n, ok := x[k].(json.Number); !ok || strings.ContainsAny(n.String(), ".e") {
				w.t.Errorf("%s.%s: %v is no whole number", path, k, x[k])
			}
		}
	case slices.Equal(keys, valueKeys) || slices.Equal(keys, resultKeys):
		w.values++
		number("lo")
		number("hi")
		number("mid")
		text("unit")
		text("printed")
	case slices.Equal(keys, boundKeys):
		number("least")
		number("most")
	case slices.Equal(keys, deltaKeys):
		w.deltas++
		for _, k := range []string{"lo", "mid", "hi", "percent"} {
			number(k)
		}
		text("unit")
	case last == "source" || last == "by" || slices.Contains(keys, "known"):
		w.citations++
		if !slices.Equal(keys, sourceKeys) {
			w.t.Errorf("%s is no source: %v", path, keys)
		}
		for _, k := range keys {
			text(k)
		}
		if x["title"] == "" {
			w.t.Errorf("%s: a source without a title", path)
		}
	default:
		for _, k := range keys {
			if _, ok := x[k].(string); ok && (k == "source" || k == "by") {
				w.t.Errorf("%s.%s: a source is an object, not a sentence", path, k)
			}
			w.walk(path+"."+k, x[k])
		}
	}
}

func TestOneVocabulary(t *testing.T) {
	all := walker{t: t}
	for _, args := range every {
		r := try(data.Catalog, append(slices.Clone(args), "--format", "json")...)
		d := json.NewDecoder(strings.NewReader(r.out))
		d.UseNumber()
		var v any
		if err := d.Decode(&v); err != nil {
			t.Fatalf("%v: %v", args, err)
		}
		if _, ok := v.(map[string]any); !ok {
			t.Errorf("%v: the document is no object", args)
		}
		w := walker{t: t}
		w.walk(strings.Join(args, " "), v)
		if w.values+w.counts == 0 || w.citations == 0 && args[0] != "convert" {
			t.Errorf("%v: %d values, %d counts, %d sources", args, w.values, w.counts, w.citations)
		}
		all.deltas += w.deltas
	}
	if all.deltas == 0 {
		t.Error("no delta in any output")
	}
}

// The walker fails on what it is there to find.
func TestWalkerFinds(t *testing.T) {
	for _, bad := range []string{`{"lo": 1, "hi": 2}`, `{"a": {"lo": 1, "hi": 2, "unit": "ksi"}}`, `{"source": "a sentence"}`, `{"source": {"id": "A", "title": "T"}}`,
		`{"known": "read"}`, `{"count": {"beats": 1.5}}`, `[3]`, `{"a": {"lo": "1", "hi": 2, "unit": "ksi", "printed": "1"}}`} {
		d := json.NewDecoder(strings.NewReader(bad))
		d.UseNumber()
		var v any
		if err := d.Decode(&v); err != nil {
			t.Fatal(err)
		}
		probe := &testing.T{}
		(&walker{t: probe}).walk("document", v)
		if !probe.Failed() {
			t.Errorf("%s passes", bad)
		}
	}
}

// What is known from memory alone is offered when asked for, and counted until then.
func TestFindOffersMemoryWhenAsked(t *testing.T) {
	count := func(args ...string) (met, left int) {
		var have struct {
			Met     []struct{ Material string }
			LeftOut []string `json:"left_out"`
		}
		r := try(data.Catalog, append([]string{"find", "aluminum", "--need", "yield >= 20 ksi", "--near", "0", "--format", "json"}, args...)...)
		if err := json.Unmarshal([]byte(r.out), &have); err != nil {
			t.Fatal(err, r.errors)
		}
		return len(have.Met), len(have.LeftOut)
	}
	met, left := count()
	all, none := count("--memory")
	if left == 0 || none != 0 || all != met+left {
		t.Errorf("%d met and %d left out; with --memory %d and %d", met, left, all, none)
	}
	if r := try(data.Catalog, "find", "aluminum", "--need", "yield >= 20 ksi"); !strings.Contains(r.out, "Left out, known from memory alone: "+strconv.Itoa(left)+"; --memory offers") {
		t.Errorf("nothing says what is left out:\n%s", r.out)
	}
}
