package record

import (
	"strings"
	"testing"
	"time"
)

func TestTooDeep(t *testing.T) {
	for _, c := range []struct {
		text string
		line int
	}{
		{"[[a]]\nb = [[1], [2]]\nc = {d = {e = 1}}", 0},
		{"[[a]]\nb = \"" + strings.Repeat("[", 100) + strings.Repeat(".a", 100) + "\"", 0},
		{"[[a]]\nb = '" + strings.Repeat("{", 100) + `\'`, 0},
		{"[[a]]\nb = \"\"\"\n" + strings.Repeat("[", 100) + "\n\"\"\"", 0},
		{"[[a]]\nb = \"\\\"" + strings.Repeat("[", 100) + "\"", 0},
		{"[[a]]\n# " + strings.Repeat("[", 100), 0},
		{"[[a]]\nb = [1.5, 2.5" + strings.Repeat(", 3.5", 100) + "]", 0},
		{"[[a]]\nb = \"1\"\nc = " + strings.Repeat("[", 100), 3},
		{"[[a]]\nb = " + strings.Repeat("{a = ", 100), 2},
		{"[[a]]\nb" + strings.Repeat(".b", 100) + " = 1", 2},
		{"[[a]]\nb" + strings.Repeat(" . \"b\"", 100) + " = 1", 2},
		{"[a" + strings.Repeat(".b", 100) + "]", 1},
		{"[[a]]\nb = {c" + strings.Repeat(".b", 100) + " = 1}", 2},
		{"[[a]]\nb = [" + strings.Repeat("\n[", 100), 18},
		{"[[a]]\nb = \"unclosed\nc = " + strings.Repeat("[", 100), 3},
	} {
		if line := tooDeep(strings.Split(c.text, "\n")); line != c.line {
			t.Errorf("%.40q…: line %d, want %d", c.text, line, c.line)
		}
	}
}

// Files that take the TOML reader minutes and gigabytes are refused at once.
func TestDeepFilesAreRefused(t *testing.T) {
	for _, text := range []string{
		"[[a]]\n" + strings.Repeat("a.", 20_000) + "a = 1",
		"[[a" + strings.Repeat(".a", 20_000) + "]]",
		"[[a]]\nb = " + strings.Repeat("{a = ", 20_000),
		"[[a]]\nb = " + strings.Repeat("[", 5_000_000),
	} {
		var errs Errors
		began := time.Now()
		if ReadRecords("x.toml", []byte(text), &errs, "a"); len(errs) != 1 || !strings.Contains(errs[0].Error(), "more than 16 deep") {
			t.Errorf("%.20q…: %.300v", text, errs)
		}
		if took := time.Since(began); took > time.Second {
			t.Errorf("%.20q… took %v", text, took)
		}
	}
}
