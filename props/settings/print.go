package settings

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"alongside/props"
	"alongside/props/report"
	"alongside/props/sheet"
)

// KeyLine is a key of the program as the printed file tells of it.
type KeyLine struct {
	Group string
	Name  string
	Names []string // every key that does it and that can be another
	Words string   // what it does; "" where another line says so
}

// Text is the file with every default, and what each line means. path is where
// the file is looked for; "" where there is no folder for it.
func Text(path string, keys []KeyLine) string {
	var b strings.Builder
	b.WriteString("# Settings of Alongside")
	if path != "" {
		b.WriteString(", looked for in\n# " + sheet.Clean(path))
	}
	b.WriteString("\n# A line left out has the value that it has here. A flag goes before a line.\n\n")
	for i := range table {
		t := &table[i]
		words := t.meaning
		if t.choices != nil {
			words = strings.Join(t.choices, ", ") + "; " + words
		}
		commented(&b, t.line(), words)
	}
	wrapped(&b, "rows: "+strings.Join(props.PropertyIDs(), ", "))
	wrapped(&b, "kinds of units: "+strings.Join(kinds(), ", "))
	b.WriteString(`
# Left of = is a key of the bench, right of it what takes its place: a letter, a
# sign, "f2", "ctrl+g", "alt+g", or several in brackets. Enter, Esc, Tab, arrows
# and what text fields need stay as they are.
[` + keysSection + "]\n")
	group := ""
	for _, k := range keys {
		if k.Group != group {
			group = k.Group
			fmt.Fprintf(&b, "# %s\n", group)
		}
		commented(&b, keyName(k.Name)+" = "+value(k.Names, true), k.Words)
	}
	return b.String()
}

const column = 23 // of the comments

func commented(b *strings.Builder, line, words string) {
	b.WriteString(line)
	if words != "" {
		b.WriteString(strings.Repeat(" ", max(column-utf8.RuneCountInString(line), 1)) + " # " + words)
	}
	b.WriteByte('\n')
}

// wrapped writes a comment of several lines.
func wrapped(b *strings.Builder, text string) {
	line := "#"
	for word := range strings.FieldsSeq(text) {
		if len(line)+1+len(word) > report.MailWidth {
			b.WriteString(line + "\n")
			line = "#  "
		}
		line += " " + word
	}
	b.WriteString(line + "\n")
}

// keyName is a key as it stands left of the equals sign.
func keyName(name string) string {
	if strings.Trim(name, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-") == "" {
		return name
	}
	return quote(name)
}
