package record

import (
	"fmt"
	"slices"
	"strings"

	"alongside/props/spelling"
)

// entry is the beginning of a line with a key, whatever its quotes and dots.
var entry = spelling.Pattern{Expr: `^\s*(?:(?:"(?:[^"\\]|\\.)*"|'[^']*'|[A-Za-z0-9_-]+)[\s.]*)+=`}

// ReadLines reads a file of keys, some of them in sections under [headers], by
// section; the keys above the first header are in section "". Each key is read
// for itself, so that a slip in one line costs that line alone. Of a key that
// stands twice the first one counts. Mistakes of form are added to errs, and so
// is a header that is not one of the sections.
func ReadLines(name string, content []byte, errs *Errors, sections ...string) map[string]*Record {
	r := &reader{file: name, errs: errs, lines: map[string]int{}}
	text := r.split(content)
	out := map[string]*Record{"": {in: r, keys: map[string]any{}}}
	for _, s := range sections {
		out[s] = &Record{in: r, path: s, Label: s, keys: map[string]any{}}
	}
	in := out[""]
	take := func(start, end int) {
		if m := header.Regexp().FindStringSubmatch(text[start]); m != nil {
			in = out[m[2]]
			switch {
			case in == nil:
				r.fail(start+1, "", m[2], "is not a section of this file", DidYouMean(m[2], slices.Clone(sections)))
			case m[1] != "":
				r.fail(start+1, "", m[2], "is in double brackets", "write ["+m[2]+"]")
			}
			r.decode(start, text[start:end])
			return
		}
		doc, wrong := r.decode(start, text[start:end])
		if wrong > 1 { // the lines before the slip may be whole
			silent := &reader{errs: &Errors{}}
			doc, _ = silent.decode(start, text[start:start+wrong-1])
		}
		for key, v := range doc {
			switch {
			case in == nil: // the header was told of
			case !in.Absent(key):
				r.fail(start+1, in.Label, key, fmt.Sprintf("stands twice, first in line %d", in.LineOf(key)), "delete one of the two")
			default:
				in.keys[key], r.lines[in.path+"."+key] = v, start+1
			}
		}
	}
	start := 0
	for i, l := range text {
		if i > start && strings.ContainsAny(l, "=[") && (entry.Regexp().MatchString(l) || header.Regexp().MatchString(l)) {
			take(start, i)
			start = i
		}
	}
	take(start, len(text))
	return out
}
