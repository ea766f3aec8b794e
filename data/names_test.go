package data

import (
	"errors"
	"strings"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
)

// The most asked for come first, and a word for a family finds that family.
func TestNamesFind(t *testing.T) {
	c := Catalog()
	for _, tt := range []struct {
		typed, first string
		all          func(m *props.Material) bool // what every hit must be; nil for anything
	}{
		{"gray", "gray-20", nil},
		{"grey iron", "gray-20", nil},
		{"ductile", "ductile-60-40-18", nil},
		{"malleable", "malleable-32510", nil},
		{"die cast", "413-f-die", func(m *props.Material) bool { return m.Process == props.Die }},
		{"gravity die", "a356-t6-pm", func(m *props.Material) bool { return m.Process == props.PermanentMold }},
		{"brass", "c83600-sand", func(m *props.Material) bool { return m.Alloy.Is("brass") }},
		{"bronze", "c89836-sand", func(m *props.Material) bool { return !m.Alloy.Is("yellow brass") && !m.Alloy.Is("semi-red brass") }},
		{"aluminium bronze", "c95400-sand", func(m *props.Material) bool { return m.Alloy.Is("aluminum bronze") }},
		{"aluminum", "a356-t6-sand", func(m *props.Material) bool { return !m.Alloy.Is("bronze") }},
		{"aluminium", "a356-t6-sand", func(m *props.Material) bool { return !m.Alloy.Is("bronze") }},
		{"535", "535-f-sand", func(m *props.Material) bool { return m.Alloy.ID == "535" }},
		{"Grade 250", "cgi-250", nil},
		{"grade 450", "cgi-450", nil},
	} {
		hits := c.Search(tt.typed)
		if len(hits) == 0 || hits[0].Material.ID != tt.first {
			t.Errorf("%q: have %v first, want %s", tt.typed, hits[:min(1, len(hits))], tt.first)
		}
		for _, h := range hits {
			if tt.all != nil && !tt.all(h.Material) {
				t.Errorf("%q finds %s", tt.typed, h.Material.ID)
			}
		}
	}
	if a, b := c.Search("aluminium bronze"), c.Search("aluminum bronze"); len(a) != len(b) {
		t.Errorf("%d aluminium bronzes, %d aluminum bronzes", len(a), len(b))
	}
}

// What the finder finds a command finds: one hit is taken, of several the most
// asked for are offered.
func TestNamesResolve(t *testing.T) {
	c := Catalog()
	for typed, want := range map[string]string{"GGG40": "en-gjs-400-18", "383": "383-f-die", "grade 450": "cgi-450", "535-f-sand": "535-f-sand"} {
		if m, _, err := c.ResolveNear(typed); err != nil || m.ID != want {
			t.Errorf("%q: have %v, %v; want %s", typed, m, err, want)
		}
	}
	if _, named, _ := c.ResolveNear("GGG40"); named {
		t.Error("GGG40 is near, and is not said to be")
	}
	for typed, want := range map[string]string{"a356t6": "a356-t6-sand a356-t6-pm a356-t61-pm", "C954": "c95400-sand c95400-cont", "brass": "c83600-sand"} {
		_, err := c.Resolve(typed)
		var several *catalog.NotFound
		if !errors.As(err, &several) || !several.Several {
			t.Errorf("%q: %v", typed, err)
			continue
		}
		var ids []string
		for _, m := range several.Nearest {
			ids = append(ids, m.ID)
		}
		if have := strings.Join(ids, " "); !strings.HasPrefix(have, want) {
			t.Errorf("%q: have %s, want %s first", typed, have, want)
		}
	}
}

// Every cast and wrought copper alloy says what kind it is: a brass, a bronze or
// another metal.
func TestCopperKinds(t *testing.T) {
	for _, a := range Catalog().Alloys {
		if copper := strings.HasSuffix(a.Family.ID, "copper"); copper != (a.Kind != "") {
			t.Errorf("%s is of the kind %q", a.ID, a.Kind)
		}
	}
}
