package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"alongside/data"
)

// Without a terminal, doctor says so, names the ways to copy and the folder, and
// what to do where one is missing.
func TestDoctor(t *testing.T) {
	home := t.TempDir()
	closed := filepath.Join(home, "closed")
	if err := os.WriteFile(closed, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		env  map[string]string
		want []string
	}{
		{"home", map[string]string{"XDG_DATA_HOME": home}, []string{"run alongside in a terminal window", "copies go to", "a file in", filepath.Join(home, "alongside", "calls")}},
		{"no home", nil, []string{"nowhere to keep them", "XDG_DATA_HOME"}},
		{"in the way", map[string]string{"XDG_DATA_HOME": closed}, []string{closed, "move it away"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := tryIn(data.Catalog, c.env, "doctor")
			if r.code != exitFindings {
				t.Errorf("exit code %d, want %d", r.code, exitFindings)
			}
			text := strings.Join(strings.Fields(r.out), " ")
			for _, want := range c.want {
				if !strings.Contains(strings.ReplaceAll(text, " ", ""), strings.ReplaceAll(want, " ", "")) {
					t.Errorf("not said: %s\n%s", want, r.out)
				}
			}
		})
	}
}
