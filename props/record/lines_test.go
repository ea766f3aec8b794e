package record

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
)

// Each key of a file of lines is read for itself: what is wrong with one is told
// with its line, and the others are read.
func TestReadLines(t *testing.T) {
	for _, c := range []struct {
		text  string
		read  string // top | section, as keys with their lines
		wrong string // lines and problems
	}{
		{"a = \"1\"\n\n# b = \"2\"\nc = [\n  \"x\", # = [\n  \"y\",\n]\n[s] # section\nd = \"4\"\n", "a@1 c@4 | d@9", ""},
		{"a = \"1\"\nb = \nc = \"3\"\n", "a@1 c@3 | ", "2"},
		{"a = \"1\"\njunk\nc = \"3\"\n", "a@1 c@3 | ", "2 is no line of the form"},
		{"junk\nc = \"3\"\n", "c@2 | ", "1"},
		{"a = [\"1\",\nc = \"3\"\n", "c@2 | ", "1"},
		{"a = \"1\"\na = \"2\"\n[s]\na = \"3\"\n", "a@1 | a@4", "2 stands twice, first in line 1"},
		{"[t]\na = \"1\"\n[s]\nb = \"2\"\n", " | b@4", "1 is not a section"},
		{"[[s]]\nb = \"2\"\n", " | b@2", "1 is in double brackets"},
		{"[s\nb = \"2\"\n", "b@2 | ", "1"},
		{"\"x y\" = \"1\"\n'z' = \"2\"\n[s]\n\"\\\\\" = \"3\"\n\"\\\"\" = \"4\"\n", `x y@1 z@2 | \@4 "@5`, ""},
		{"s.a = \"1\"\nb = \"2\"\n", "s@1 b@2 | ", ""},
		{"\xef\xbb\xbfa = \"1\"\r\nb = \"2\"\r\n", "a@1 b@2 | ", ""},
		{"a = \"1\"\nb = \"\xff\"\n", "a@1 b@2 | ", "2 the file is not UTF-8 text"},
		{"a = " + strings.Repeat("[", 99) + "\nb = \"2\"\n", "b@2 | ", "1 brackets or dotted keys stand more than 16 deep"},
		{"", " | ", ""},
	} {
		var errs Errors
		in := ReadLines("f.toml", []byte(c.text), &errs, "s")
		if have := slices.Sorted(maps.Keys(in)); !slices.Equal(have, []string{"", "s"}) {
			t.Errorf("%q: sections %q", c.text, have)
		}
		var read []string
		for _, section := range []string{"", "s"} {
			var keys []string
			for _, k := range in[section].Keys() {
				keys = append(keys, fmt.Sprintf("%s@%d", k, in[section].LineOf(k)))
			}
			read = append(read, strings.Join(keys, " "))
		}
		if have := strings.Join(read, " | "); have != c.read {
			t.Errorf("%q: read %q, want %q", c.text, have, c.read)
		}
		line, problem, _ := strings.Cut(c.wrong, " ")
		switch {
		case c.wrong == "" && len(errs) > 0, c.wrong != "" && len(errs) != 1:
			t.Errorf("%q: %v", c.text, errs)
		case c.wrong != "" && (fmt.Sprint(errs[0].Line) != line || !strings.Contains(errs[0].Problem, problem)):
			t.Errorf("%q: %v, want %s", c.text, errs[0], c.wrong)
		}
	}
}
