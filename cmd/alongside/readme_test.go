package main

import (
	"os"
	"strings"
	"testing"

	"alongside/data"
	"alongside/tui/ptytest"
)

// Every command shown in README.md prints what is shown below it. A block of
// code runs where it begins with "$ alongside"; -update writes what is printed
// now. "…" on a line of its own stands for any lines that are left out.
func TestReadme(t *testing.T) {
	const file = "../../README.md"
	content, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	blocks := strings.Split(strings.ReplaceAll(string(content), "\r\n", "\n"), "```")
	ran := 0
	for i := 1; i < len(blocks); i += 2 {
		if shown, ok := strings.CutPrefix(blocks[i], "keys\n"); ok {
			if have := helpPage(t); *update {
				blocks[i] = "keys\n" + have
			} else if line, same := firstDifference(shown, have); !same {
				t.Errorf("the keys are not those of the help page:\n%s", line)
			}
			continue
		}
		lines := strings.SplitAfter(blocks[i], "\n")
		var out strings.Builder
		for at := 0; at < len(lines); {
			command, shown := strings.CutPrefix(lines[at], "$ alongside ")
			out.WriteString(lines[at])
			at++
			if !shown {
				continue
			}
			from := at
			for at < len(lines) && !strings.HasPrefix(lines[at], "$ ") {
				at++
			}
			ran++
			want := strings.Join(lines[from:at], "")
			have := printed(t, words(strings.TrimSpace(command)))
			switch {
			case matches(want, have):
			case *update:
				want = renew(want, have)
			default:
				line, _ := firstDifference(want, have)
				t.Errorf("$ alongside %s%s\nif it is meant: go test ./cmd/alongside -run Readme -update", command, line)
			}
			out.WriteString(want)
		}
		blocks[i] = out.String()
	}
	if ran == 0 {
		t.Error("README.md shows no command")
	}
	if *update {
		if err := os.WriteFile(file, []byte(strings.Join(blocks, "```")), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// printed is what a command prints, or the screen of 80×24 that a bench shows.
func printed(t *testing.T, args []string) string {
	p := &program{catalog: data.Catalog}
	if cmd, _, err := p.root(nil).Find(args); err == nil && cmd.HasParent() {
		r := try(data.Catalog, args...)
		return r.out + r.errors
	}
	s := ptytest.Start(t, ptytest.Options{}, binary(t), args...)
	s.WaitFor("? keys")
	screen := s.Screen() + "\n"
	s.Type("q")
	s.Exit()
	return screen
}

// helpPage is the list of keys that the bench shows for "?".
func helpPage(t *testing.T) string {
	s := ptytest.Start(t, ptytest.Options{Width: 80, Height: 78}, binary(t), "gray-30", "a356-t6-pm")
	s.WaitFor("? keys")
	s.Type("?")
	s.WaitFor("esc back")
	_, page, _ := strings.Cut(s.Screen(), "─ Keys ")
	_, page, _ = strings.Cut(page, "\n")
	page, _, _ = strings.Cut(page, "\n\n  Paste")
	s.Type(ptytest.CtrlC)
	s.Exit()
	return strings.ReplaceAll("\n"+page, "\n ", "\n")[1:] + "\n"
}

// matches compares an output with the one shown, in which "…" lines stand for
// anything.
func matches(shown, have string) bool {
	parts := strings.Split("\n"+shown, "\n…\n")
	have = "\n" + have
	for i, part := range parts {
		if i > 0 {
			part = "\n" + part
		}
		if i == len(parts)-1 && i > 0 {
			return strings.HasSuffix(have, part) || part == "\n"
		}
		if i < len(parts)-1 {
			part += "\n"
		} else {
			return have == part
		}
		at := strings.Index(have, part)
		if at < 0 || i == 0 && at != 0 {
			return false
		}
		have = have[at+len(part)-1:]
	}
	return false
}

// renew is the new output in the shape of the one shown: where lines were left
// out, as many stand before and after the "…" as before.
func renew(shown, have string) string {
	head, tail, cut := strings.Cut("\n"+shown, "\n…\n")
	lines := strings.SplitAfter(have, "\n")
	before, after := strings.Count(head, "\n"), strings.Count(tail, "\n")
	if !cut || before+after+1 >= len(lines) {
		return have
	}
	end := len(lines) - 1 // behind the last line break is nothing
	return strings.Join(lines[:before], "") + "…\n" + strings.Join(lines[end-after:end], "")
}

// words splits a command line as a shell does, as far as blanks and double
// quotes go.
func words(line string) []string {
	var out []string
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			out = append(out, part)
		} else {
			out = append(out, strings.Fields(part)...)
		}
	}
	return out
}

func TestMatches(t *testing.T) {
	for _, c := range []struct {
		shown, have string
		want        bool
	}{
		{"a\nb\n", "a\nb\n", true},
		{"a\nb\n", "a\nc\n", false},
		{"a\n", "a\nb\n", false},
		{"a\n…\nd\n", "a\nb\nc\nd\n", true},
		{"a\n…\n", "a\nb\n", true},
		{"a\n…\n", "b\nb\n", false},
		{"…\nd\n", "a\nd\n", true},
		{"…\nd\n", "a\nd\ne\n", false},
		{"a\n…\nc\n…\ne\n", "a\nb\nc\nd\ne\n", true},
		{"a\n…\nc\n…\ne\n", "a\nb\nd\ne\n", false},
	} {
		if have := matches(c.shown, c.have); have != c.want {
			t.Errorf("matches(%q, %q) is %v", c.shown, c.have, have)
		}
	}
}
