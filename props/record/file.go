package record

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"

	"alongside/props/spelling"
)

// ReadRecords splits a data file into its top-level records, each of one of the
// kinds given; of any kind where none is. Mistakes of form are added to errs.
func ReadRecords(name string, content []byte, errs *Errors, kinds ...string) []*Record {
	r := &reader{file: name, errs: errs, kinds: kinds}
	var records []*Record
	lines := r.split(content)
	start := 0
	flush := func(end int) {
		if strings.TrimSpace(strings.Join(lines[start:end], "")) != "" {
			records = append(records, r.chunk(start, lines[start:end])...)
		}
		start = end
	}
	for i, l := range lines {
		if strings.Contains(l, "[") && topHeader.Regexp().MatchString(l) {
			flush(i)
		}
	}
	flush(len(lines))
	return records
}

// split is the lines of a file, one that is not UTF-8 being reported.
func (r *reader) split(content []byte) []string {
	content = bytes.TrimPrefix(content, []byte("\xef\xbb\xbf"))
	if !utf8.Valid(content) {
		line := 1
		for i, l := range bytes.Split(content, []byte("\n")) {
			if !utf8.Valid(l) {
				line = i + 1
				break
			}
		}
		r.fail(line, "", "", "the file is not UTF-8 text", "save it as UTF-8 (the degree sign and µ are the usual culprits)")
		content = bytes.ToValidUTF8(content, []byte("?"))
	}
	return strings.Split(strings.ReplaceAll(string(content), "\r\n", "\n"), "\n")
}

// The patterns are compiled when a file is first read, not at every start.
var (
	topHeader = spelling.Pattern{Expr: `^\s*\[\[?\s*[A-Za-z_-]+\s*\]\]?\s*(#.*)?$`}
	header    = spelling.Pattern{Expr: `^\s*\[(\[)?\s*([A-Za-z0-9_.-]+)\s*\]`}
	keyLine   = spelling.Pattern{Expr: `^\s*"?([A-Za-z0-9_-]+)"?\s*=`}
)

// chunk reads one top-level record with its sub-tables.
func (whole *reader) chunk(start int, lines []string) []*Record {
	r := &reader{file: whole.file, kinds: whole.kinds, errs: whole.errs, start: start, text: lines}
	doc, _ := r.decode(start, lines)
	var records []*Record
	for kind, v := range doc {
		list, ok := v.([]map[string]any)
		if !ok {
			remedy := "records start with [[" + strings.Join(r.kinds, "]], [[") + "]]"
			if r.kinds == nil {
				remedy = "records start with a name in double brackets: [[" + kind + "]]"
			}
			r.fail(start+1, "", kind, "does not belong to any record", remedy)
			continue
		}
		if r.kinds != nil && !slices.Contains(r.kinds, kind) {
			r.fail(start+1, "", kind, "is not a kind of record", DidYouMean(kind, slices.Clone(r.kinds)))
			continue
		}
		for i, m := range list {
			records = append(records, &Record{in: r, path: fmt.Sprintf("%s[%d]", kind, i), keys: m})
		}
	}
	return records
}

// decode reads the lines behind a line of the file as TOML. A mistake is
// reported; doc is then nil and wrong the place of its line among them, from 1.
func (r *reader) decode(start int, lines []string) (doc map[string]any, wrong int) {
	if line := tooDeep(lines); line > 0 {
		r.fail(start+line, "", "", fmt.Sprintf("brackets or dotted keys stand more than %d deep in each other", deepest), "write the record like those before it")
		return nil, line
	}
	_, err := toml.Decode(strings.Join(lines, "\n"), &doc)
	if err == nil {
		return doc, 0
	}
	var pe toml.ParseError
	line, problem := 1, err.Error()
	if errors.As(err, &pe) {
		line, problem = max(1, pe.Position.Line), pe.Message
		if strings.HasPrefix(problem, "expected '.' or '='") || strings.Contains(problem, "expected key separator") {
			problem = `is no line of the form key = "value"`
		}
	}
	r.fail(start+line, "", lastKey(pe), problem, syntaxRemedy(lines, line))
	return nil, line
}

func lastKey(pe toml.ParseError) string {
	_, key, ok := strings.Cut(pe.LastKey, ".")
	if !ok {
		return pe.LastKey
	}
	return key[strings.LastIndex(key, ".")+1:]
}

// syntaxRemedy guesses the usual slip on a line that TOML could not read.
func syntaxRemedy(lines []string, n int) string {
	if n < 1 || n > len(lines) {
		return ""
	}
	l := lines[n-1]
	_, value, ok := strings.Cut(l, "=")
	value = strings.TrimSpace(value)
	switch {
	case !ok && !strings.Contains(l, "["):
		return `write key = "value"`
	case strings.Count(l, `"`)%2 == 1:
		return "close the quotes"
	case value != "" && !strings.ContainsAny(value[:1], `"'[{`):
		return fmt.Sprintf("put the value in quotes, with a point for the decimal and its unit: %s= \"%s …\"", l[:strings.Index(l, "=")], strings.ReplaceAll(value, ",", "."))
	}
	return "see the records before it for the form"
}

func (r *reader) places() map[string]int {
	if r.lines == nil {
		r.lines = locate(r.text, r.start)
	}
	return r.lines
}

// locate maps the path of each table and key to its line.
func locate(lines []string, start int) map[string]int {
	at := map[string]int{}
	count := map[string]int{}
	path := ""
	for i, l := range lines {
		if m := header.Regexp().FindStringSubmatch(l); m != nil {
			path = ""
			parts := strings.Split(m[2], ".")
			for j, p := range parts {
				if path != "" {
					path += "."
				}
				path += p
				last := j == len(parts)-1
				if last && m[1] != "" {
					count[path]++
				}
				if n := count[path]; n > 0 {
					path += fmt.Sprintf("[%d]", n-1)
				}
			}
			at[path] = start + i + 1
			continue
		}
		if m := keyLine.Regexp().FindStringSubmatch(l); m != nil {
			if key := path + "." + m[1]; at[key] == 0 {
				at[key] = start + i + 1
			}
		}
	}
	return at
}
