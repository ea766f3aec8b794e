package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"alongside/data"
)

// hostileCall has as many pins as the bench holds, and words that a page must not
// carry out or be widened by.
const hostileCall = `[[call]]
name = "<script>alert(1)</script>"
said = ["<img src=x onerror=alert(1)>", "` + "longwordlongwordlongwordlongwordlongwordlongwordlongwordlongwordlongwordlongwordlongwordlongwordlongword" + `"]
pins = ["gray-30", "a356-t6-pm", "a380-f-die", "zn-3-die", "319-f-sand", "az91d-die", "c83600-sand", "za-27-sand"]
[[need]]
limit = "yield strength ≥ 20 ksi"
[[part]]
mass = "12 lb"
wall = "3/8 in"
with = ["pressure-tight", "threads"]
`

// probe sets the page into frames as wide as a sheet of paper on the screen, and as
// its print, and says what it finds there.
const probe = `<!doctype html><body><script>
const page = %s, found = [], printed = page.replace('@media print', '@media all')
const look = (width, text) => new Promise(done => {
	const frame = document.createElement('iframe')
	frame.style = 'border:0;height:1000px;width:' + width + 'px'
	frame.onload = () => {
		const d = frame.contentDocument, all = s => [...d.querySelectorAll(s)]
		found.push({
			Width: d.documentElement.clientWidth, Needs: d.documentElement.scrollWidth,
			Levels: all('h1,h2,h3,h4,h5,h6').map(h => +h.tagName[1]),
			Foreign: all('script,link,iframe,object,[src],[href],[onerror]').map(e => e.outerHTML),
			Silent: all('img,svg').filter(e => !e.getAttribute('alt') && !e.getAttribute('aria-label') && !e.querySelector('title')).map(e => e.outerHTML.slice(0, 80)),
			Figures: all('td b').length,
			Broken: all('td b').filter(b => /^[\d.]+$/.test(b.textContent) && b.getClientRects().length > 1).map(b => b.textContent),
		})
		done()
	}
	frame.srcdoc = text
	document.body.append(frame)
})
Promise.all([look(816, page), look(794, page), look(703, printed), look(680, printed)]).then(() => {
	const out = document.createElement('pre')
	out.textContent = JSON.stringify(found)
	document.body.replaceChildren(out)
})
</script>`

// browser runs a headless browser, or skips the test where there is none.
func browser(t *testing.T, args ...string) []byte {
	t.Helper()
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		path, err := exec.LookPath(name)
		if err != nil {
			continue
		}
		ctx, cancel := context.WithTimeout(t.Context(), 90*time.Second)
		defer cancel()
		cmd := exec.CommandContext(ctx, path, append([]string{"--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--user-data-dir=" + t.TempDir()}, args...)...)
		cmd.WaitDelay = time.Second
		out, err := cmd.Output()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		return out
	}
	t.Skip("no chromium here: the page of a report was not looked at in a browser")
	return nil
}

// The page of a report in a browser: on Letter and A4, on the screen and printed,
// nothing stands over the edge and no figure is broken; headings skip no level,
// pictures say what they show, and nothing is fetched or run.
func TestReportInBrowser(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	write("alongside/calls/2026-11-26-114653.toml", hostileCall)
	r := tryIn(data.Catalog, map[string]string{"XDG_DATA_HOME": dir}, "report", "2026-11-26-114653", "--format", "html")
	if r.code != exitOK {
		t.Fatal(r.errors)
	}
	text, err := json.Marshal(r.out) // escapes < too, so that no tag ends the script
	if err != nil {
		t.Fatal(err)
	}
	out := browser(t, "--virtual-time-budget=60000", "--dump-dom", "file://"+write("probe.html", fmt.Sprintf(probe, text)))
	_, found, _ := bytes.Cut(out, []byte("<pre>"))
	found, _, _ = bytes.Cut(found, []byte("</pre>"))
	var looks []struct {
		Width, Needs, Figures   int
		Levels                  []int
		Foreign, Silent, Broken []string
	}
	if err := json.Unmarshal([]byte(html.UnescapeString(string(found))), &looks); err != nil || len(looks) != 4 {
		t.Fatalf("%v in\n%.500s", err, out)
	}
	for _, l := range looks {
		if l.Needs > l.Width || l.Width < 680 {
			t.Errorf("the page is %d wide on %d", l.Needs, l.Width)
		}
		last := 0
		for _, level := range l.Levels {
			if level > last+1 || level == 1 && last > 0 {
				t.Errorf("a heading of level %d below one of %d", level, last)
			}
			last = level
		}
		if len(l.Levels) < 20 || l.Figures < 50 {
			t.Errorf("only %d headings, %d figures", len(l.Levels), l.Figures)
		}
		if len(l.Foreign)+len(l.Silent)+len(l.Broken) > 0 {
			t.Errorf("fetched or run: %q; without words: %q; broken: %q", l.Foreign, l.Silent, l.Broken)
		}
	}
	for size, box := range map[string]string{"letter": "[0 0 612 792]", "A4": "[0 0 594.95996 841.91998]"} {
		pdf := filepath.Join(dir, size+".pdf")
		page := write(size+".html", strings.Replace(r.out, "@page {", "@page { size: "+size+";", 1))
		browser(t, "--no-pdf-header-footer", "--print-to-pdf="+pdf, "file://"+page)
		printed, err := os.ReadFile(pdf)
		boxes := regexp.MustCompile(`MediaBox (\[.*?\])`).FindAllSubmatch(printed, -1)
		if err != nil || len(boxes) < 10 || string(boxes[0][1]) != box {
			t.Errorf("%s: %d pages, %q, %v", size, len(boxes), boxes[:min(1, len(boxes))], err)
		}
	}
}
