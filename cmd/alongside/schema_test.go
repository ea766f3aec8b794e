package main

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"alongside/data"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/report"
	"alongside/props/spoken"
	"alongside/units"
)

const schemaFile = "../../data/output.schema.json"

// answer is one JSON document, what it must be by the schema, and where it is from.
type answer struct{ kind, from, text string }

// answers are JSON documents of every kind.
func answers(t *testing.T) []answer {
	t.Helper()
	var out []answer
	add := func(kind string, r result, args ...string) {
		if r.out == "" {
			t.Fatalf("%v: exit code %d, %s", args, r.code, r.errors)
		}
		out = append(out, answer{kind, strings.Join(args, " "), r.out})
	}
	for _, e := range every {
		args := append(slices.Clone(e.args), "--format", "json")
		add(e.kind, try(data.Catalog, args...), args...)
	}
	add("doctor", try(data.Catalog, "doctor", "--format", "json"), "doctor")
	add("check", try(data.Catalog, "check", "--explained", "--format", "json"), "check")
	add("check", try(data.Catalog, "check", goldenFolder+"/bad.toml", "--format", "json"), "check", "bad.toml")
	add("rules", try(data.Catalog, "check", "--rules", "--format", "json"), "check", "--rules")
	add("version", try(data.Catalog, "version", "--format", "json"), "version")
	_, call := keptCalls(t)
	add("calls", call("--format", "json"), "call")
	add("call", call("pump bracket", "--format", "json"), "call", "pump bracket")
	add("call", call("housing", "--format", "json"), "call", "housing")
	b := compare.NewBench()
	b.Pin(data.Catalog().Material("gray-30"))
	b.Pin(data.Catalog().Material("a356-t6-pm"))
	list, err := spoken.Read("yield >= 20 ksi", data.Catalog(), units.US, nil).Limits()
	if err != nil {
		t.Fatal(err)
	}
	duty, _ := needs.DutyNamed("plate-strength")
	for kind, d := range map[string]*report.Doc{"need": report.NeedDoc(b.Pins, &list[0]), "merit": report.MeritDoc(&b, duty)} {
		text, _ := d.Render("json", 0)
		add(kind, result{out: text}, "screen", kind)
	}
	return out
}

// schemaOf is the schema of one kind of document, of all for "".
func schemaOf(t *testing.T, c *jsonschema.Compiler, kind string) *jsonschema.Schema {
	t.Helper()
	if kind != "" {
		kind = "#/$defs/" + kind
	}
	s, err := c.Compile(schemaFile + kind)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func decoded(t *testing.T, text string) any {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
	if err != nil {
		t.Fatalf("%v in\n%.300s", err, text)
	}
	return v
}

// Every document is what the schema says it is, and nothing else that it tells of.
func TestSchema(t *testing.T) {
	c, seen := jsonschema.NewCompiler(), map[string]bool{}
	all := schemaOf(t, c, "")
	for _, a := range answers(t) {
		v := decoded(t, a.text)
		seen[a.kind] = true
		if err := schemaOf(t, c, a.kind).Validate(v); err != nil {
			t.Errorf("%s: %v", a.from, err)
		} else if err := all.Validate(v); err != nil {
			t.Errorf("%s is more than one kind of document: %v", a.from, err)
		}
		walk("", v, func(path string, x map[string]any) {
			lo, _ := x["lo"].(json.Number)
			hi, _ := x["hi"].(json.Number)
			if l, h := float(lo), float(hi); x["printed"] != nil && l > h {
				t.Errorf("%s, %s: %g to %g", a.from, path, l, h)
			}
		})
		if !slices.Contains([]string{"bars", "calls", "convert", "doctor", "check", "rules", "version"}, a.kind) && !strings.Contains(a.text, `"source": {`) {
			t.Errorf("%s: no source", a.from)
		}
	}
	for _, s := range all.OneOf {
		if kind := s.Ref.Location[strings.LastIndex(s.Ref.Location, "/")+1:]; !seen[kind] {
			t.Errorf("no document of the kind %s", kind)
		}
	}
}

// A number has its unit or its count beside it: the schema has numbers in few kinds
// of object, and in none of its own a bare one.
func TestSchemaNumbers(t *testing.T) {
	text, err := os.ReadFile(schemaFile)
	if err != nil {
		t.Fatal(err)
	}
	defs := decoded(t, string(text)).(map[string]any)["$defs"].(map[string]any)
	may := []string{"value", "result", "open", "delta", "bound", "tally", "number", "whole"}
	for kind, def := range defs {
		walk(kind, def, func(path string, x map[string]any) {
			ref, typ := fmt.Sprint(x["$ref"]), fmt.Sprint(x["type"])
			number := strings.HasSuffix(ref, "/number") || strings.HasSuffix(ref, "/whole") || strings.Contains(typ, "number") || typ == "integer"
			counted := strings.Contains(path, ".count.") || strings.HasSuffix(path, ".line")
			if number && !counted && !slices.Contains(may, kind) {
				t.Errorf("%s is a number", path)
			}
		})
	}
}

// Every command prints JSON, and its documents are looked at; what settings prints is
// a file to keep.
func TestSchemaOfEveryCommand(t *testing.T) {
	looked := map[string]bool{"call": true, "doctor": true, "check": true, "version": true}
	for _, e := range every {
		looked[e.args[0]] = true
	}
	var visit func(cmd *cobra.Command)
	visit = func(cmd *cobra.Command) {
		if cmd.HasParent() && !cmd.HasSubCommands() && cmd.Flags().Lookup("format") == nil && cmd.Name() != "settings" {
			t.Errorf("%s has no --format", cmd.Name())
		}
		cmd.LocalFlags().VisitAll(func(f *pflag.Flag) {
			if f.Name == "format" && !looked[cmd.Name()] {
				t.Errorf("no document of %s is looked at", cmd.Name())
			}
		})
		for _, sub := range cmd.Commands() {
			visit(sub)
		}
	}
	visit((&program{catalog: data.Catalog}).root(nil))
}

func float(n json.Number) float64 {
	v, _ := n.Float64()
	return v
}

// walk calls fn for each object in a document; the path has no indices.
func walk(path string, v any, fn func(path string, x map[string]any)) {
	switch x := v.(type) {
	case []any:
		for _, e := range x {
			walk(path+"[]", e, fn)
		}
	case map[string]any:
		fn(path, x)
		for _, k := range slices.Sorted(maps.Keys(x)) {
			walk(path+"."+k, x[k], fn)
		}
	}
}

// optional are the members that an object may lack.
var optional = []string{"against", "bound", "crossings", "crossings_tool_paid", "duty", "merit", "needs"}

// The schema refuses a member too many, one too few and one of another type,
// wherever it stands in a document.
func TestSchemaRefuses(t *testing.T) {
	c, done, tried := jsonschema.NewCompiler(), map[string]bool{}, 0
	for _, a := range answers(t) {
		if a.kind == "report" { // made of the others
			continue
		}
		s, v := schemaOf(t, c, a.kind), shortened(decoded(t, a.text))
		refused := func(path, what string) {
			t.Helper()
			if tried++; s.Validate(v) == nil {
				t.Errorf("%s%s: passes with %s", a.kind, path, what)
			}
		}
		if err := s.Validate(v); err != nil {
			t.Fatalf("%s: %v", a.from, err)
		}
		walk("", v, func(path string, x map[string]any) {
			key := a.kind + path
			if done[key] || strings.HasSuffix(path, ".part") || strings.HasSuffix(path, ".price") { // what is known of the part grows
				return
			}
			done[key] = true
			x["other"] = []any{}
			refused(path, "a member more")
			delete(x, "other")
			for _, k := range slices.Sorted(maps.Keys(x)) {
				was := x[k]
				x[k] = map[string]any{"other": true}
				refused(path+"."+k, "an object that is none of ours")
				if x[k] = json.Number("0.5"); !isNumber(was) {
					refused(path+"."+k, "a number")
				}
				if delete(x, k); !slices.Contains(optional, k) {
					refused(path, k+" left out")
				}
				x[k] = was
			}
		})
	}
	if tried < 1000 {
		t.Errorf("only %d changes were tried", tried)
	}
}

func isNumber(v any) bool {
	_, ok := v.(json.Number)
	return ok
}

// shortened is a document with at most three elements in each list.
func shortened(v any) any {
	switch x := v.(type) {
	case []any:
		x = x[:min(3, len(x))]
		for i := range x {
			x[i] = shortened(x[i])
		}
		return x
	case map[string]any:
		for k := range x {
			x[k] = shortened(x[k])
		}
	}
	return v
}
