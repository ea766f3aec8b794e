package tui

import (
	"strings"
	"testing"
)

// What leaves a demo, and its title line, say that it is invented.
func TestInventedIsSaid(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.wantNot("DEMO, invented")
	const remark = "The call is invented."
	d.m.Invented = remark
	d.press("y", "Y", "4", "y", "esc", "5", "y", "esc")
	d.want("DEMO, invented")
	if len(d.copied) != 4 {
		t.Fatalf("%d copies", len(d.copied))
	}
	for _, format := range []string{"text", "markdown", "tsv", "html"} {
		d.press("c")
		if format != "tsv" { // there it stands at the end
			d.want("The call is")
		}
		d.press("enter", "c", "right", "esc")
		last := d.copied[len(d.copied)-1]
		if !strings.Contains(last.Text, remark) || format == "html" && !strings.Contains(last.HTML, remark) {
			t.Errorf("%s does not say it:\n%s", format, last.Text)
		}
	}
	for _, c := range d.copied {
		if !strings.Contains(c.Text, remark) {
			t.Errorf("a copy does not say it:\n%s", c.Text)
		}
	}
}
