package record

import (
	"testing"
	"unicode/utf8"
)

// Whatever a file holds, it becomes records and mistakes that name a line of it.
func FuzzRead(f *testing.F) {
	for _, seed := range []string{sample, "", "\xef\xbb\xbf[[alloy]]", "[alloy]\nid = 7\n", "[[alloy]\n", "id = \"x\"\nid = \"y\"\n", "a.b.c = 1", "[[aloy]]\r\nid = \"\"\"\n", "x = [[[[", "\xff", "[keys]\nq = \"x\""} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		errs := &Errors{}
		for _, r := range ReadRecords("f.toml", []byte(text), errs, "alloy", "keys") {
			for _, key := range r.Keys() {
				r.Text(key, true)
				r.Texts(key)
				r.Tables(key)
			}
			r.Finish()
		}
		for _, r := range ReadLines("f.toml", []byte(text), errs, "keys") {
			for _, key := range r.Keys() {
				r.Text(key, true)
			}
			r.Finish()
		}
		for _, e := range *errs {
			if e.Line < 1 || e.Problem == "" || e.Remedy == "" || !utf8.ValidString(e.Error()) {
				t.Errorf("%+v", e)
			}
		}
	})
}
