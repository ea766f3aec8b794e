package tui

import (
	"slices"
	"strings"
	"testing"
)

// In every panel a key has one meaning, the keys line says how to get all of
// them, and that page begins with the panel's own.
func TestKeysOfEveryPanel(t *testing.T) {
	for name, open := range map[string][]string{
		"finder": {"/"}, "needs": {"2", "esc", "B", "2"}, "needs typed": {"2"}, "candidates": {"B", "3"}, "swap": {"4"}, "process": {"5"}, "watch": {"6"},
		"part": {"D"}, "part words": {"D", "down", "down", "down", "down"}, "facts": {"F"}, "duties": {"M"}, "copy": {"c"},
		"sense": {"w"}, "target": {"w", "t"}, "band": {"e"}, "card": {"enter"}, "legend": {"L"}, "brief": {"7"},
	} {
		t.Run(name, func(t *testing.T) {
			d := watchDesk(t, 80, 40)
			d.press(open...)
			s := d.m.OnTop()
			if s == nil {
				t.Fatalf("%v opens nothing", open)
			}
			var seen []string
			told := 0
			for _, k := range s.Keys() {
				if k.Words != "" {
					told++
				}
				for _, n := range k.Names {
					if k.Do != nil && slices.Contains(seen, n) {
						t.Errorf("key %q has two meanings", n)
					}
					if k.Do != nil {
						seen = append(seen, n)
					}
				}
			}
			if told == 0 {
				t.Error("no key is on the help page")
			}
			lines := strings.Split(d.m.View(), "\n")
			last, help := lines[len(lines)-1], "?"
			if s.Typing() {
				help = "f1"
			}
			if !strings.HasSuffix(strings.TrimRight(last, " "), "esc back  "+help+" keys") {
				t.Errorf("keys line %q", last)
			}
			d.press(help)
			d.want("─ Keys")
			if s.About() == "" {
				t.Error("the help page does not say what the panel is for")
			}
			d.want(s.About()[:30])
			d.want(" In this panel\n")
			d.press("esc")
			if d.m.OnTop() != s {
				t.Error("esc does not lead back to the panel")
			}
		})
	}
}
