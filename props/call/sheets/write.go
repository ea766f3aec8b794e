package sheets

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/BurntSushi/toml"

	"alongside/props"
	"alongside/props/call"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/sheet"
	"alongside/units"
)

// field is a key of a record with what the call holds for it. A nil or empty
// value is not written.
type field struct {
	key   string
	value any
	usual bool // what one has who sets nothing; a value kept from the file goes before it
}

// encode writes a sheet as decode reads it.
func encode(s *Sheet) []byte {
	w := &writer{kept: &s.kept}
	w.text("# Call sheet of Alongside. Change it by hand only while no program has it open.\n")
	w.call(s)
	w.rows(&s.Call.Bench)
	for i := range s.Call.Needs {
		n := &s.Call.Needs[i]
		w.record("need", n.String(), field{key: "limit", value: n.String()}, field{key: "typed", value: other(n.Text, n.String())}, field{key: "off", value: n.Off})
	}
	w.part(&s.Call.Part)
	for _, n := range s.Call.Notes {
		w.record("note", noteName(n), field{key: "at", value: n.At}, field{key: "text", value: sheet.Clean(n.Text)})
	}
	for _, r := range s.kept.whole {
		w.fields(r.kind, sorted(r.keys))
	}
	return []byte(w.out.String())
}

func noteName(n call.Note) string { return n.At.Format(time.RFC3339) + n.Text }

// other is a text where it differs from the one already written.
func other(text, written string) string {
	if text == written {
		return ""
	}
	return sheet.Clean(text)
}

type writer struct {
	out  strings.Builder
	kept *kept
}

func (w *writer) text(s string) { w.out.WriteString(s) }

func (w *writer) call(s *Sheet) {
	c, b := &s.Call, &s.Call.Bench
	var pins, merits, said []string
	for _, m := range b.Pins {
		pins = append(pins, m.ID)
	}
	for _, d := range c.Duties {
		merits = append(merits, d.ID)
	}
	for _, line := range c.Said {
		said = append(said, sheet.Clean(line))
	}
	baseline := ""
	if len(pins) > 0 {
		baseline = pins[b.Baseline]
	}
	w.record("call", "", []field{
		{key: "version", value: int64(version), usual: true},
		{key: "name", value: sheet.Clean(c.Name)},
		{key: "begun", value: s.Begun},
		{key: "said", value: said},
		{key: "pins", value: pins},
		{key: "baseline", value: baseline, usual: b.Baseline == 0},
		{key: "basis", value: b.Basis.String(), usual: b.Basis == compare.TypicalFirst},
		{key: "level_within", value: b.Band, usual: b.Band == compare.DefaultBand},
		{key: "service", value: serviceText(b.Service)},
		{key: "expansion", value: rangeText(b.Range)},
		{key: "only", value: ids(b.Only)},
		{key: "units", value: b.System.String(), usual: b.System == units.US},
		{key: "delta", value: b.Delta.String(), usual: b.Delta == compare.Percent},
		{key: "hide", value: hidden(b)},
		{key: "merits", value: merits},
		{key: "aside", value: c.Aside},
	}...)
}

func hidden(b *compare.Bench) []string {
	var words []string
	if b.HideLevel {
		words = append(words, hideLevel)
	}
	if b.HideEmpty {
		words = append(words, hideEmpty)
	}
	return words
}

func ids(list []props.PropertyID) []string {
	var out []string
	for _, p := range list {
		out = append(out, p.String())
	}
	return out
}

// rows are the properties with a unit or a sense of their own.
func (w *writer) rows(b *compare.Bench) {
	for _, p := range props.Properties() {
		u, hasUnit := b.RowUnits[p]
		s, hasSense := b.Senses[p]
		if !hasUnit && !hasSense && w.kept.keys["row "+p.String()] == nil {
			continue
		}
		fields := []field{{key: "property", value: p.String()}}
		if hasUnit {
			fields = append(fields, field{key: "unit", value: u.ASCII()})
		}
		if hasSense {
			fields = append(fields, field{key: "sense", value: s.Sense.String()})
			if s.Sense == props.Near {
				fields = append(fields, field{key: "target", value: targetText(p, s.Target)})
			}
		}
		w.record("row", p.String(), fields...)
	}
}

func (w *writer) part(p *part.Part) {
	var fields []field
	for _, f := range part.Fields() {
		switch f {
		case part.FieldWith:
			fields = append(fields, field{key: f.String(), value: p.With.IDs()})
		case part.FieldPrice:
			prices := map[string]any{}
			for id, v := range p.Price {
				prices[id] = v
			}
			fields = append(fields, field{key: f.String(), value: prices})
		default:
			fields = append(fields, field{key: f.String(), value: p.Get(f)})
		}
	}
	w.record("part", "", fields...)
}

// record writes a record with the keys kept for it; of its own fields those that hold
// something.
func (w *writer) record(kind, name string, own ...field) {
	was := maps.Clone(w.kept.keys[kind+" "+name])
	var fields []field
	for _, f := range own {
		if old, has := was[f.key]; has {
			f.value = together(f.value, old, f.usual)
			delete(was, f.key)
		}
		if !empty(f.value) {
			fields = append(fields, f)
		}
	}
	w.fields(kind, append(fields, sorted(was)...))
}

// fields writes a record; none without a field.
func (w *writer) fields(kind string, fields []field) {
	if len(fields) == 0 {
		return
	}
	w.text("\n[[" + keyText(kind) + "]]\n")
	for _, f := range fields {
		w.text(keyText(f.key) + " = " + valueText(f.value) + "\n")
	}
}

// together is what the call holds with what was kept under the same key.
func together(own, old any, usual bool) any {
	switch o := old.(type) {
	case []any:
		if list, ok := own.([]string); ok {
			var all []any
			for _, own := range list {
				all = append(all, own)
			}
			for _, old := range o {
				if text, ok := old.(string); !ok || !slices.Contains(list, text) {
					all = append(all, old)
				}
			}
			return all
		}
	case map[string]any:
		if m, ok := own.(map[string]any); ok {
			all := maps.Clone(o)
			maps.Copy(all, m)
			return all
		}
	}
	if usual || empty(own) {
		return old
	}
	return own
}

func empty(v any) bool {
	switch v := v.(type) {
	case nil:
		return true
	case string:
		return v == ""
	case bool:
		return !v
	case time.Time:
		return v.IsZero()
	case []string:
		return len(v) == 0
	case map[string]any:
		return len(v) == 0
	}
	return false
}

func sorted(m map[string]any) []field {
	var out []field
	for _, key := range slices.Sorted(maps.Keys(m)) {
		out = append(out, field{key: key, value: m[key]})
	}
	return out
}

func keyText(key string) string {
	if key == "" || strings.Trim(key, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-") != "" {
		return valueText(key)
	}
	return key
}

// valueText is a value as it stands behind the equals sign, in one line.
func valueText(v any) string {
	var parts []string
	switch v := v.(type) {
	case []any:
		for _, s := range v {
			parts = append(parts, valueText(s))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case []map[string]any:
		for _, m := range v {
			parts = append(parts, valueText(m))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case map[string]any:
		for _, f := range sorted(v) {
			parts = append(parts, keyText(f.key)+" = "+valueText(f.value))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	}
	line, err := toml.Marshal(map[string]any{"v": v})
	if err != nil { // nothing else comes out of a TOML file
		panic(fmt.Sprintf("sheets: %T: %v", v, err))
	}
	return strings.TrimSpace(strings.TrimPrefix(string(line), "v = "))
}

// serviceText is a temperature in °C as a person writes it.
func serviceText(at *float64) string {
	if at == nil {
		return ""
	}
	return readBack(func(s string) bool { v, err := part.Temperature(s, units.NoUnit); return err == nil && v == *at },
		degrees(units.DegF, *at), degrees(units.DegC, *at))
}

func rangeText(over *[2]float64) string {
	if over == nil {
		return ""
	}
	text := func(u units.Unit) string {
		return number(u.FromSI(units.DegC.ToSI(over[0]))) + ".." + degrees(u, over[1])
	}
	return readBack(func(s string) bool {
		v, err := part.TemperatureRange(s, units.NoUnit)
		return err == nil && v == *over
	}, text(units.DegF), text(units.DegC))
}

func degrees(u units.Unit, celsius float64) string {
	return number(u.FromSI(units.DegC.ToSI(celsius))) + " " + u.Symbol()
}

// targetText is a value in SI in a unit that a row of the property is shown in.
func targetText(p props.PropertyID, si float64) string {
	var texts []string
	for _, u := range p.Info().Units {
		texts = append(texts, strings.TrimSpace(number(u.FromSI(si))+" "+u.Symbol()))
	}
	return readBack(func(s string) bool { v, err := target(p, s); return err == nil && v == si }, texts...)
}

// target reads what targetText writes.
func target(p props.PropertyID, text string) (float64, error) {
	u := p.Info().Units[units.US]
	q, err := units.ParseAs(text, u.Dimension(), u)
	return q.Unit.ToSI(q.Mid()), err
}

// number is a value to six digits, which is what people type.
func number(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }

// readBack is the first text that is read as what it was written for; else the
// last, which is that to six digits.
func readBack(exact func(string) bool, texts ...string) string {
	for _, s := range texts {
		if exact(s) {
			return s
		}
	}
	return texts[len(texts)-1]
}
