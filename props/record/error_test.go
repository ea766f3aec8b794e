package record

import (
	"strings"
	"testing"
)

// A file of nothing but mistakes is told of in a text that can be read.
func TestManyAndLongMistakes(t *testing.T) {
	var list Errors
	one := &Error{File: "f.toml", Line: 1, Record: strings.Repeat("r", 1e5), Field: strings.Repeat("f", 1e5), Problem: strings.Repeat("p", 1e5), Remedy: "correct it"}
	for range 10_000 {
		list = append(list, one)
	}
	text := list.Error()
	if len(text) > 100_000 || strings.Count(text, "remedy: correct it") != 100 || !strings.HasSuffix(text, "\nand 9900 more mistakes") {
		t.Errorf("%d bytes: %.200s … %s", len(text), text, text[len(text)-40:])
	}
	if text := list[:100].Error(); strings.Contains(text, "more mistakes") {
		t.Error("a hundred are cut")
	}
}
