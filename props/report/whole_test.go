package report

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"alongside/data"
	"alongside/props/part"
)

func whole(t *testing.T, said ...string) Whole {
	t.Helper()
	page := onePage(t, part.Part{Mass: "4.2 lb", Wall: "3/8 in", With: part.PressureTight}, "yield >= 20 ksi", "gray-30", "a356-t6-pm", "a380-f-die")
	return Whole{OnePage: page, All: page.Bench, Catalog: data.Catalog(), Book: data.Foundry(), Said: said, At: time.Date(2026, 1, 2, 3, 4, 0, 0, time.UTC), Version: "test"}
}

// Headings begin with one of the first level and skip none; nothing is fetched or
// run; what the customer said cannot become markup.
func TestReportPage(t *testing.T) {
	doc := WholeDoc(whole(t, `<script>alert(1)</script> & "~~struck~~" | *bold*`))
	page, err := doc.Render("html", 80)
	if err != nil {
		t.Fatal(err)
	}
	last, first := 0, 0
	for _, h := range regexp.MustCompile(`<h(\d)>`).FindAllStringSubmatch(page, -1) {
		level := int(h[1][0] - '0')
		if level > last+1 {
			t.Errorf("a heading of level %d below one of %d", level, last)
		}
		if last = level; level == 1 {
			first++
		}
	}
	if first != 1 {
		t.Errorf("%d headings of the first level", first)
	}
	for _, never := range []string{"<script", "http:", "https:", "src=", "href=", "url("} {
		if strings.Contains(strings.ToLower(page), never) {
			t.Errorf("the page has %q", never)
		}
	}
	for _, want := range []string{"<!doctype html>", `lang="en"`, "&lt;script&gt;", "Side by side", "What the change does to the part", "Watch-outs", "Process", "Drawing note, A356.0-T6 permanent mold", "Notes and sources", "licensed engineer", "test"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	markdown, _ := doc.Render("markdown", 80)
	if !strings.Contains(markdown, `&lt;script&gt;`) || !strings.Contains(markdown, `\~\~struck\~\~`) || !strings.Contains(markdown, `\| \*bold\*`) {
		t.Error("Markdown: what the customer said became markup")
	}
}

// A source has one number in the whole report, and every number that is used is
// explained.
func TestReportSourcesOnce(t *testing.T) {
	text, err := WholeDoc(whole(t)).Render("markdown", 80)
	if err != nil {
		t.Fatal(err)
	}
	explained := map[string]string{}
	for _, l := range regexp.MustCompile(`(?m)^- (S\d+) (.*)$`).FindAllStringSubmatch(text, -1) {
		if explained[l[1]] != "" {
			t.Errorf("%s is explained twice", l[1])
		}
		for mark, title := range explained {
			if title == l[2] {
				t.Errorf("%s and %s are one source", mark, l[1])
			}
		}
		explained[l[1]] = l[2]
	}
	used := regexp.MustCompile(`\bS\d+\b[,\] |;]`).FindAllString(text, -1)
	if len(explained) < 10 || len(used) < 50 {
		t.Fatalf("%d sources, used %d times", len(explained), len(used))
	}
	for _, mark := range used {
		if mark = strings.TrimRight(mark, ",] |;"); explained[mark] == "" {
			t.Errorf("%s is used and not explained", mark)
		}
	}
}

func TestReportFile(t *testing.T) {
	doc, dir := WholeDoc(whole(t)), t.TempDir()
	for _, name := range []string{"r.html", "r.md", "r.TXT", "r.json"} {
		if err := WriteNew(filepath.Join(dir, name), doc, ""); err != nil {
			t.Error(err)
		}
		if b, err := os.ReadFile(filepath.Join(dir, name)); err != nil || len(b) < 1000 {
			t.Errorf("%s: %d bytes, %v", name, len(b), err)
		}
	}
	kept, _ := os.ReadFile(filepath.Join(dir, "r.md"))
	for name, want := range map[string]string{"r.md": "is there already", "r.pdf": "the ending says the format"} {
		if err := WriteNew(filepath.Join(dir, name), doc, ""); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: have %v, want %q", name, err, want)
		}
	}
	if now, _ := os.ReadFile(filepath.Join(dir, "r.md")); string(now) != string(kept) {
		t.Error("a file that was there was changed")
	}
}
