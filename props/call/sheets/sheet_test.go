package sheets

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"alongside/data"
	"alongside/props"
	"alongside/props/call"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/part"
	"alongside/props/spoken"
	"alongside/units"
)

var noon = time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC)

// full is a call in which everything is set.
func full(t testing.TB) call.Call {
	t.Helper()
	c := call.Call{Bench: compare.NewBench().Clone(), Aside: []string{"stiffness"}, Name: "Pump bracket",
		Said:  []string{`Can this be "aluminum"?`, "It runs on a 1045 steel shaft, −40 to 250 °F."},
		Notes: []call.Note{call.NewNote(noon, "sleeve in the press fit?"), call.NewNote(noon.Add(time.Minute), "ask for the pH")}}
	b := &c.Bench
	for _, id := range []string{"gray-30", "a356-t6-pm", "319-f-sand"} {
		b.Pin(data.Catalog().Material(id))
	}
	hot, _ := part.Temperature("300 °F", units.NoUnit)
	over, _ := part.TemperatureRange("68-212 °F", units.NoUnit)
	b.Baseline, b.Basis, b.Band, b.Service, b.Range = 1, compare.MinimumOnly, 0.05, &hot, &over
	b.Only = []props.PropertyID{props.TensileStrength, props.Density}
	b.System, b.Delta, b.HideLevel, b.HideEmpty = units.SI, compare.Ratio, true, true
	b.RowUnits[props.Density] = units.LbPerIn3
	b.Senses[props.ElectricalConductivity] = compare.SenseSetting{Sense: props.Less}
	b.Senses[props.ThermalExpansion] = compare.SenseSetting{Sense: props.Near, Target: props.ThermalExpansion.Info().Units[units.US].ToSI(5.8)}
	var err error
	if c.Needs, err = spoken.Read("yield at least 20 ksi; process = pm or sand; temper = T5 or T6; family = aluminum; density < 2.8 g/cm3", data.Catalog(), units.US, nil).Limits(); err != nil {
		t.Fatal(err)
	}
	c.Needs[1].Off = true
	duty, _ := needs.DutyNamed("plate-stiffness")
	c.Duties = []*needs.Duty{duty}
	for f, text := range map[part.Field]string{
		part.FieldMass: "4.2 lb", part.FieldVolume: "16 in3", part.FieldWall: "3/8 in", part.FieldLength: "12 in", part.FieldCase: "plate",
		part.FieldKeep: "stiffness", part.FieldStrength: "yield", part.FieldService: "-40..250 F", part.FieldHours: "1000 h", part.FieldMate: "1045-cold-drawn-wrought", part.FieldStress: "5 ksi",
		part.FieldPlace: "designated", part.FieldSafety: "1.5", part.FieldCasting: "1.25", part.FieldCycles: "1e7", part.FieldMean: "2 ksi",
		part.FieldSurface: "machined", part.FieldReliability: "99", part.FieldMedium: "coolant, 110 °C",
		part.FieldPressure: "150 psi", part.FieldInside: "4 in", part.FieldFit: "1.5 in", part.FieldRole: "shaft", part.FieldInterference: "0.002 in",
		part.FieldHub: "3 in", part.FieldEngaged: "2 in", part.FieldQuality: "0.80", part.FieldTest: "225 psi",
		part.FieldThread: "1/2-13 UNC", part.FieldEngagement: "5/8 in", part.FieldBolt: "120 ksi", part.FieldClamp: "9000 lbf", part.FieldHead: "3/4 in", part.FieldHole: "17/32 in",
		part.FieldFriction: "0.12", part.FieldDimension: "4 in", part.FieldWith: "press-fit, threads", part.FieldQuantity: "2000 a year", part.FieldPrice: "a356-t6-pm=1.20 USD/lb",
	} {
		if err := c.Part.Set(data.Catalog(), f, text); err != nil {
			t.Fatal(err)
		}
	}
	return c
}

// Everything that a call can hold is set in the call that the tests keep, so
// that a new field that is not kept does not go unseen.
func TestFullIsFull(t *testing.T) {
	c := full(t)
	var walk func(v reflect.Value, path string)
	walk = func(v reflect.Value, path string) {
		for i := range v.NumField() {
			name := path + "." + v.Type().Field(i).Name
			switch f := v.Field(i); {
			case f.IsZero():
				t.Errorf("%s is not set: set it in full, and keep it in the sheet", name)
			case f.Kind() == reflect.Struct && f.Type() != reflect.TypeFor[time.Time]():
				walk(f, name)
			}
		}
	}
	walk(reflect.ValueOf(c), "call")
}

func read(t testing.TB, text string) *Sheet {
	t.Helper()
	s, err := decode("x.toml", []byte(text), data.Catalog())
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return s
}

func TestRoundTrip(t *testing.T) {
	s := &Sheet{Begun: noon, Call: full(t)}
	text := string(encode(s))
	have := read(t, text)
	if len(have.Mistakes) > 0 || !have.Begun.Equal(noon) {
		t.Errorf("begun %v; %v\n%s", have.Begun, have.Mistakes, text)
	}
	if !have.Call.Same(s.Call) {
		t.Errorf("have %+v\nwant %+v\n%s", have.Call, s.Call, text)
	}
	if again := string(encode(have)); again != text {
		t.Errorf("written again:\n%s\nbefore:\n%s", again, text)
	}
	fresh := &Sheet{Call: call.Call{Bench: compare.NewBench()}}
	if have := read(t, string(encode(fresh))); !have.Call.Same(fresh.Call) || len(have.Mistakes) > 0 {
		t.Errorf("an empty call is read as %+v, %v", have.Call, have.Mistakes)
	}
	for _, words := range []string{`name = "Pump bracket"`, `service = "300 °F"`, `expansion = "68..212 °F"`, `target = "5.8 `, `mass = "4.2 lb"`, `typed = "yield at least 20 ksi"`} {
		if !strings.Contains(text, words) {
			t.Errorf("no %s in\n%s", words, text)
		}
	}
}

// Every unit that a row can have is read as it is written.
func TestRowUnits(t *testing.T) {
	for _, p := range props.Properties() {
		for _, u := range units.UnitsOf(p.Info().Dimension) {
			if u == p.Info().Units[units.US] {
				continue
			}
			s := &Sheet{Call: call.Call{Bench: compare.NewBench().Clone()}}
			s.Call.Bench.RowUnits[p] = u
			if have := read(t, string(encode(s))); !have.Call.Same(s.Call) {
				t.Errorf("%s in %s: %v %v", p, u, have.Call.Bench.RowUnits, have.Mistakes)
			}
		}
	}
}

// A sheet of another version, with materials that are gone and words that are
// not known, is opened with all the rest, and written again with everything.
func TestNothingIsLost(t *testing.T) {
	const text = `[[call]]
version = 7
name = "Bracket"
mood = "good"
begun = 2026-11-26T11:46:53Z
pins = ["gray-30", "gone-t6-pm", "a356-t6-pm"]
baseline = "gone-t6-pm"
basis = "house first"
units = "mks"
delta = "percent"
only = ["density", "springback"]
merits = ["plate-stiffness", "spring"]
hide = ["level", "ugly"]
aside = ["stiffness", "no-longer"]

[[row]]
property = "springback"
unit = "mm"

[[row]]
property = "density"
unit = "furlong"
color = {light = "red", dark = ["blue", 3]}

[[need]]
limit = "springback >= 3 mm"

[[need]]
limit = "yield strength ≥ 20 ksi"
weight = 2.5

[[part]]
mass = "heavy"
wall = "3/8 in"
mate = "gone-wrought"
with = ["threads", "glitter"]
price = {gray-30 = "0.60 USD/lb", gone-t6-pm = "1 USD/lb"}

[[note]]
at = 2026-11-26T11:52:10Z
text = "kept"
by = "me"

[[photo]]
file = "bracket.png"
size = [640, 480]
`
	s := read(t, text)
	c := &s.Call
	if c.Name != "Bracket" || len(c.Bench.Pins) != 3 || c.Bench.Pins[c.Bench.Baseline].ID != "gone-t6-pm" || len(c.Needs) != 1 || c.Part.Wall != "3/8 in" || len(c.Notes) != 1 ||
		len(c.Bench.Only) != 1 || len(c.Duties) != 1 || !c.Bench.HideLevel || c.Part.With != part.Threads || c.Part.Price["gray-30"] != "0.60 USD/lb" {
		t.Errorf("have %+v", c)
	}
	if missing := s.Missing(); len(missing) != 1 || missing[0] != "gone-t6-pm" {
		t.Errorf("missing: %v", missing)
	}
	told := s.Mistakes.Error()
	for _, words := range []string{
		"x.toml:2: call, version: is 7", "x.toml:4: call, mood: is not a key", `x.toml:6: call, pins: "gone-t6-pm" is not in the catalog`, `"house first"`, `"mks"`,
		`"springback"`, `"spring"`, `"ugly"`, "furlong", "color", "x.toml:26: need, limit:", "weight", "x.toml:33: part, mass:", "part, mate:", `"glitter"`, "part, price:", "note, by:", "x.toml:44: photo:",
	} {
		if !strings.Contains(told, words) {
			t.Errorf("nothing is said of %s in\n%s", words, told)
		}
	}
	if n := strings.Count(told, "remedy:"); n != len(s.Mistakes) {
		t.Log(told)
		t.Errorf("%d remedies for %d mistakes", n, len(s.Mistakes))
	}

	again := string(encode(s))
	for _, line := range strings.Split(text, "\n") {
		key, value, ok := strings.Cut(line, " = ")
		for _, word := range strings.FieldsFunc(value, func(r rune) bool { return strings.ContainsRune(`[]{},= "`, r) }) {
			if ok && !strings.Contains(again, word) && key != "version" {
				t.Errorf("%s: %s is lost in\n%s", key, word, again)
			}
		}
	}
	if third := string(encode(read(t, again))); third != again {
		t.Errorf("a second time:\n%s\nbefore:\n%s", third, again)
	}

	// What the user sets goes before what was kept.
	c.Bench.System, c.Part.Mass = units.CGS, "2 kg"
	changed := string(encode(s))
	if !strings.Contains(changed, `units = "cgs"`) || !strings.Contains(changed, `mass = "2 kg"`) || strings.Contains(changed, "heavy") {
		t.Errorf("have\n%s", changed)
	}
}

// Files that are no sheets are refused, with the line and what to do.
func TestNoSheets(t *testing.T) {
	for text, words := range map[string]string{
		"":                              "x.toml:1: is no call sheet",
		"[[alloy]]\nid = \"x\"":         "is no call sheet",
		"[call]\nname = \"x\"":          "double brackets: [[call]]",
		"[[call]]\nname = \"x":          "x.toml:2: name",
		"[[call]]\nname = x":            "put the value in quotes",
		"[[call]]\nname = \"\xff\"":     "is not UTF-8",
		"\x7fELF\x00\x01":               "x.toml:1:",
		"[[call]]\nname = \"a\\u001b\"": "",
	} {
		_, err := decode("x.toml", []byte(text), data.Catalog())
		if words == "" && err == nil {
			continue
		}
		if err == nil || !strings.Contains(err.Error(), words) || !strings.Contains(err.Error(), "remedy:") {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// Control characters do not come out of a sheet into the call, nor from the
// call into a sheet.
func TestControlCharacters(t *testing.T) {
	const bad = `\u001b]52;c;aGk=\u0007`
	s := read(t, `[[call]]
name = "a`+bad+`"
said = ["b`+bad+`", "fine"]
pins = ["gray`+bad+`"]
baseline = "c`+bad+`"
aside = ["d`+bad+`"]
"k`+bad+`" = 1
[[need]]
limit = "yield >= 20 ksi"
typed = "e`+bad+`"
[[part]]
mass = "4 lb`+bad+`"
[[note]]
text = "f`+bad+`"
`)
	if text := reflect.ValueOf(s.Call); strings.ContainsAny(printed(text), "\x1b\x07") {
		t.Errorf("a control character came into the call: %q", printed(text))
	}
	if len(s.Call.Said) != 1 || len(s.Call.Needs) != 1 || len(s.Call.Bench.Pins) != 0 {
		t.Errorf("have %+v", s.Call)
	}
	if again := string(encode(s)); strings.ContainsAny(again, "\x1b\x07\x7f") || strings.Count(again, "aGk=") != 8 {
		t.Errorf("have\n%q", again)
	}
	c := full(t)
	c.Name, c.Said, c.Notes = "a\x1b[2Jb\u202e", []string{"c\td\x7f\xff"}, []call.Note{{Text: "e\r\nf"}}
	c.Needs[0].Text = "g\x1bh"
	text := string(encode(&Sheet{Call: c}))
	if have := read(t, text); strings.ContainsAny(text, "\x1b\x7f\r\t\u202e") || len(have.Mistakes) > 0 || have.Call.Name != "a [2Jb" {
		t.Errorf("%v\n%q", have.Mistakes, text)
	}
}

// printed is a call as text with all that hangs on it but materials.
func printed(v reflect.Value) string {
	c := v.Interface().(call.Call)
	return strings.Join(append([]string{c.Name, c.Part.Summary(), strings.Join(c.Aside, " "), strings.Join(c.Said, " ")}, needTexts(c)...), " ")
}

func needTexts(c call.Call) []string {
	var out []string
	for _, n := range c.Needs {
		out = append(out, n.Text)
	}
	for _, n := range c.Notes {
		out = append(out, n.Text)
	}
	for _, m := range c.Bench.Pins {
		out = append(out, m.ID, m.Name())
	}
	return out
}

func FuzzDecode(f *testing.F) {
	f.Add(string(encode(&Sheet{Begun: noon, Call: full(f)})))
	f.Add("[[call]]\npins = [\"gone\"]\n[[x]]\ny = [[1, {a = 2}], 1979-05-27, inf]\n")
	f.Fuzz(func(t *testing.T, text string) {
		s, err := decode("x.toml", []byte(text), data.Catalog())
		if err != nil {
			return
		}
		first := encode(s)
		again, err := decode("x.toml", first, data.Catalog())
		if err != nil {
			t.Fatalf("what was written is not read: %v\n%s", err, first)
		}
		if second := encode(again); string(second) != string(first) {
			t.Fatalf("first\n%s\nsecond\n%s", first, second)
		}
	})
}
