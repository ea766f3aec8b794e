package settings

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/record"
	"alongside/props/report"
	"alongside/units"
)

// setting is one line of the file.
type setting struct {
	name    string
	usual   []string // the words it has without a file
	several bool     // takes a list of words
	meaning string
	// choices are the words it takes; nil where there are too many to list.
	choices []string
	set     func(s *Settings, word string) error
}

const keysSection = "keys"

// Names lists the settings.
func Names() []string {
	var out []string
	for i := range table {
		out = append(out, table[i].name)
	}
	return out
}

// table is every setting, in the order of the printed file.
var table = []setting{
	{"units", []string{"us"}, true, `a list sets kinds of rows apart: ["us", "density si"]`, []string{"us", "si", "cgs"}, setUnits},
	{"basis", []string{"typical"}, false, "typical figures first, or specified minimums only", []string{"typical", "minimum"}, func(s *Settings, word string) error {
		s.Bench.Basis = compare.TypicalFirst
		if word == compare.MinimumOnly.String() {
			s.Bench.Basis = compare.MinimumOnly
		}
		return nil
	}},
	{"level_within", []string{"2 %"}, false, "so close to the baseline counts as level, 0 to 25 %", nil, func(s *Settings, word string) error {
		band, err := report.ParseBand(word)
		if err == nil {
			s.Bench.Band = band
		}
		return err
	}},
	{"delta", []string{"percent"}, false, "how differences are shown", []string{"percent", "amount", "ratio", "off"}, func(s *Settings, word string) error {
		s.Bench.Delta, _ = compare.ParseDelta(word)
		return nil
	}},
	{"rows", nil, true, `only these properties in this order: ["yield", "density"]; [] is all`, nil, func(s *Settings, word string) error {
		p, err := props.ResolveProperty(word)
		if err == nil && !slices.Contains(s.Bench.Only, p) {
			s.Bench.Only = append(s.Bench.Only, p)
		}
		return err
	}},
	{"theme", []string{"standard"}, false, "colors of the bench", []string{"standard", "high contrast"}, func(s *Settings, word string) error {
		s.Contrast = word != "standard"
		return nil
	}},
	{"background", []string{"auto"}, false, "what the terminal has", []string{"auto", "light", "dark"}, func(s *Settings, word string) error {
		s.Background = word
		return nil
	}},
	{"mouse", []string{"on"}, false, "off leaves it to the terminal", []string{"on", "off"}, func(s *Settings, word string) error {
		s.NoMouse = word == "off"
		return nil
	}},
	{"copy", []string{"text"}, false, "form of what y copies", []string{"text", "markdown", "tsv", "html"}, func(s *Settings, word string) error {
		s.Copy = word
		return nil
	}},
	{"clipboard", []string{"auto"}, false, "where copies go", []string{"auto", "system", "terminal", "file"}, func(s *Settings, word string) error {
		s.Clipboard = word
		return nil
	}},
}

// setUnits reads the system of all figures, or that of a kind: "density si".
func setUnits(s *Settings, word string) error {
	at := strings.LastIndex(word, " ") + 1
	system, err := units.ParseSystem(word[at:])
	if err != nil {
		return fmt.Errorf("%q: expected us, si or cgs", word)
	}
	kind := strings.TrimSpace(word[:at])
	if kind == "" {
		s.Bench.System = system
		return nil
	}
	found := false
	for _, p := range props.Properties() {
		if info := p.Info(); info.Dimension.String() == kind {
			found = true
			s.Bench.RowUnits[p] = info.Units[system]
		}
	}
	if !found {
		return fmt.Errorf("%q: no row has a %q; %s", word, kind, record.DidYouMean(kind, kinds()))
	}
	return nil
}

// kinds are the dimensions of rows that have more than one unit.
func kinds() []string {
	var out []string
	for _, p := range props.Properties() {
		info := p.Info()
		if d := info.Dimension.String(); info.Units[units.US] != info.Units[units.SI] && !slices.Contains(out, d) {
			out = append(out, d)
		}
	}
	return out
}

// read reads the setting where the file has it. A word that cannot be used is
// reported and left out.
func (t *setting) read(s *Settings, in *record.Record) {
	words := in.Texts(t.name)
	if len(words) > 1 && !t.several {
		in.Fail(t.name, "takes one word, not several", t.remedy())
		return
	}
	for _, w := range words {
		if t.choices != nil && !t.several && !slices.Contains(t.choices, w) {
			in.Fail(t.name, fmt.Sprintf("%q is not known", w), record.DidYouMean(w, slices.Clone(t.choices)))
		} else if err := t.set(s, w); err != nil {
			problem, remedy := err.Error(), t.remedy()
			if before, after, ok := strings.Cut(problem, "; "); ok {
				problem, remedy = before, after
			}
			var wrong *units.Error
			if errors.As(err, &wrong) && wrong.Hint != "" {
				remedy = wrong.Hint
			}
			in.Fail(t.name, problem, remedy)
		}
	}
}

func (t *setting) remedy() string {
	return "write it like " + t.line()
}

// line is the setting as it stands in the file without a choice of the user's.
func (t *setting) line() string { return t.name + " = " + value(t.usual, t.several) }

// value is words as TOML, in brackets where they may be several and are not one.
func value(words []string, several bool) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = quote(w)
	}
	if several && len(words) != 1 {
		return "[" + strings.Join(quoted, ", ") + "]"
	}
	return strings.Join(quoted, "")
}

// quote is a word as TOML has it.
func quote(word string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(word) + `"`
}
