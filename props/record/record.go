// Package record reads the TOML files that people edit, record by record, and
// says of every mistake in which file, line and field it is and what to write
// instead.
package record

import (
	"cmp"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"alongside/props/spelling"
	"alongside/units"
)

// Record is one TOML table being read, with the means to say where each of
// its keys stands. Keys not asked for are reported as unknown by Finish. The
// data files of other packages are read with it too, so that every mistake is
// told in one form.
type Record struct {
	Label string // names the record in messages, such as an id
	in    *reader
	path  string // "alloy.material[1]"
	keys  map[string]any
	asked map[string]bool
}

// reader reads one chunk of a data file: a top-level record with its
// sub-tables. Chunks are parsed one by one so that a syntax error in one
// record does not hide the mistakes of the others.
type reader struct {
	file  string
	kinds []string       // of records that belong in the file; nil: any
	start int            // line before the chunk
	text  []string       // the chunk's lines
	lines map[string]int // path of table or key → line in file; nil until a line is asked for
	errs  *Errors
}

func (r *reader) fail(line int, record, field, problem, remedy string) {
	*r.errs = append(*r.errs, &Error{File: r.file, Line: line, Record: record, Field: field, Problem: problem, Remedy: remedy})
}

// Kind is the word in the brackets that start the record: [[alloy]].
func (t *Record) Kind() string {
	kind, _, _ := strings.Cut(t.path, "[")
	return kind
}

// File is the name of the file that holds the record.
func (t *Record) File() string { return t.in.file }

// LineOf is the line of a key; of the record itself where the key does not
// stand in it.
func (t *Record) LineOf(key string) int {
	for _, path := range []string{t.path + "." + key, t.path + "." + key + "[0]", t.path} {
		if n, ok := t.in.places()[path]; ok {
			return n
		}
	}
	return t.in.start + 1
}

// Fail reports a mistake in a key: what is wrong and what to write instead.
func (t *Record) Fail(key, problem, remedy string) {
	t.in.fail(t.LineOf(key), t.Label, key, problem, remedy)
}

// Value is a key as TOML has it.
func (t *Record) Value(key string) (any, bool) {
	if t.asked == nil {
		t.asked = map[string]bool{}
	}
	t.asked[key] = true
	v, ok := t.keys[key]
	return v, ok
}

// Absent reports whether the record lacks a key.
func (t *Record) Absent(key string) bool {
	_, ok := t.keys[key]
	return !ok
}

// Text reads a string; a missing or wrong one is reported and read as "".
func (t *Record) Text(key string, required bool) string {
	v, ok := t.Value(key)
	if !ok {
		if required {
			t.Fail(key, "is missing", fmt.Sprintf("add %s = \"…\"", key))
		}
		return ""
	}
	s, ok := v.(string)
	if !ok {
		t.Fail(key, fmt.Sprintf("is %v, not text", v), fmt.Sprintf("put it in quotes: %s = \"%v\"", key, v))
		return ""
	}
	if i := strings.IndexFunc(s, func(r rune) bool { return unicode.IsControl(r) }); i >= 0 {
		t.Fail(key, fmt.Sprintf("holds a control character (%U)", []rune(s[i:])[0]), "delete it; a line break or tab is not allowed in a value")
		return ""
	}
	s = strings.TrimSpace(s)
	if s == "" && required {
		t.Fail(key, "is empty", "write a value or delete the record")
	}
	return s
}

// AllowNumber lets a whole number stand for its text, as ratings are written.
func (t *Record) AllowNumber(key string) {
	if n, ok := t.keys[key].(int64); ok {
		t.keys[key] = strconv.FormatInt(n, 10)
	}
}

// Texts reads a string or a list of strings.
func (t *Record) Texts(key string) []string {
	v, ok := t.Value(key)
	if !ok {
		return nil
	}
	list, ok := v.([]any)
	if !ok {
		list = []any{v}
	}
	var out []string
	for _, v := range list {
		one := &Record{in: t.in, path: t.path, Label: t.Label, keys: map[string]any{key: v}}
		if s := one.Text(key, true); s != "" {
			out = append(out, s)
		}
	}
	return out
}

// Table reads a sub-table; nil when there is none.
func (t *Record) Table(key string) *Record {
	v, ok := t.Value(key)
	if !ok {
		return nil
	}
	m, ok := v.(map[string]any)
	if !ok {
		t.Fail(key, "is not a table", fmt.Sprintf("write [%s.%s] with one key a line below it", plainPath(t.path), key))
		return nil
	}
	return &Record{in: t.in, path: t.path + "." + key, Label: t.Label, keys: m}
}

// Tables reads an array of tables.
func (t *Record) Tables(key string) []*Record {
	v, ok := t.Value(key)
	if !ok {
		return nil
	}
	list, ok := v.([]map[string]any)
	if !ok {
		t.Fail(key, "is not a list of tables", fmt.Sprintf("write [[%s.%s]] with double brackets", plainPath(t.path), key))
		return nil
	}
	out := make([]*Record, len(list))
	for i, m := range list {
		out[i] = &Record{in: t.in, path: fmt.Sprintf("%s.%s[%d]", t.path, key, i), Label: t.Label, keys: m}
	}
	return out
}

// Quantity reads a text as a quantity of a dimension; assume is the unit where
// none is written, NoUnit where one must be. A mistake is reported under the
// key, with an example of how to write it.
func (t *Record) Quantity(key, text string, d units.Dimension, assume units.Unit, example string) (units.Quantity, bool) {
	q, err := units.ParseAs(text, d, assume)
	if err != nil {
		problem, remedy := fmt.Sprintf("%q: %v", text, err), fmt.Sprintf("write it like the source, e.g. %q", example)
		var ue *units.Error
		if errors.As(err, &ue) {
			problem = fmt.Sprintf("%q: %s", text, strings.TrimPrefix((&units.Error{Understood: ue.Understood, Expected: ue.Expected}).Error(), ": "))
			if ue.Hint != "" {
				remedy = ue.Hint
			}
		}
		t.Fail(key, problem, remedy)
		return q, false
	}
	return q, true
}

// Rest lists the keys not asked for so far, in file order.
func (t *Record) Rest() []string {
	rest := slices.DeleteFunc(slices.Collect(maps.Keys(t.keys)), func(k string) bool { return t.asked[k] })
	return t.inOrder(rest)
}

// Keys lists all keys, in file order.
func (t *Record) Keys() []string { return t.inOrder(slices.Collect(maps.Keys(t.keys))) }

// inOrder sorts keys by where they stand.
func (t *Record) inOrder(keys []string) []string {
	slices.SortFunc(keys, func(a, b string) int { return cmp.Or(t.LineOf(a)-t.LineOf(b), strings.Compare(a, b)) })
	return keys
}

// Finish reports keys that nothing asked for.
func (t *Record) Finish() {
	for _, k := range t.Rest() {
		t.Fail(k, "is not a key of this record", DidYouMean(k, slices.Collect(maps.Keys(t.asked))))
	}
}

// DidYouMean is the remedy for a word that is not one of those known.
func DidYouMean(word string, known []string) string {
	if n := spelling.Nearest(word, known); n != "" {
		return fmt.Sprintf("did you mean %s?", n)
	}
	slices.Sort(known)
	const most = 80 // names that a person reads through
	if n := len(known) - most; n > 0 {
		return fmt.Sprintf("use one of: %s and %d more", strings.Join(known[:most], ", "), n)
	}
	return "use one of: " + strings.Join(known, ", ")
}

var indexed = spelling.Pattern{Expr: `\[\d+\]`}

func plainPath(p string) string { return indexed.Regexp().ReplaceAllString(p, "") }
