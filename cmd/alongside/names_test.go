package main

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"alongside/data"
	"alongside/props/catalog"
	"alongside/props/record"
	"alongside/props/report"
)

// hostileNames are what an alloy of a shop's file must not be able to do by its name.
var hostileNames = []string{
	"\x1b[2J\x1b[31mred", "\x1b]52;c;aGk=\x07", "\x1b]8;;http://x\x07link\x1b]8;;\x07", "\x9b31m", "bell\a", "back\b\b\b\bspace", "nul\x00byte", "\x7f\x7f", "carriage\rreturn", "two\nlines", "tab\tstop", "vertical\vtab", "form\ffeed",
	"<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "</td></tr></table>", "&amp;&lt;", "\"><svg onload=x>", "<!-- comment", "<style>*{display:none}</style>", "javascript:alert(1)",
	"=cmd|' /C calc'!A0", "=1+1", "+1+1", "-1+1", "@SUM(A1)", "\t=1+1", "'=1", "\"quoted\"", "a,b;c", "a\"b,\"c\"", "'; DROP TABLE alloy; --",
	"| a | b |", "|---|---|", "**bold** _it_ `code`", "~~struck~~", "[link](http://x)", "![image](http://x)", "# heading", "> quote", "1. item", "- item", "\\| \\* \\`", "```",
	"right\u202eto left", "zero\u200bwidth", "\ufeffmark", "line\u2028separator", "宽字合金", "e\u0301\u0301\u0301\u0301", "👩\u200d🔧 alloy", "\U000e0041tag", "ﷺ",
	"%s%d%n", "${HOME}", "$(id)", "`id`", "../../etc/passwd", "CON", "null", "NaN", "0", " ", "A356", strings.Repeat("long ", 500), strings.Repeat("w", 5000),
}

// named is the catalog with an alloy, its source and its aliases of this name.
func named(name string) (*catalog.Catalog, error) {
	quoted := quoteTOML(name)
	return catalog.LoadFiles(data.Catalog(), []catalog.File{{Name: "shop.toml", Content: []byte(fmt.Sprintf(`
[[source]]
id = "SHOP-BARS"
title = %[1]s
publisher = %[1]s
edition = "2026"
kind = "house"

[[alloy]]
id = "hostile"
name = %[1]s
family = "aluminum"
note = %[1]s
aliases = [%[2]s]

[[alloy.material]]
temper = "T6"
process = "sand"

[[alloy.material.figures]]
basis = "house"
source = "SHOP-BARS"
table = %[1]s
known = "read"
tensile_strength = "28–31 ksi"
density = "0.1 lb/in3"
`, quoted, quoteTOML("shop: "+name)))}})
}

func quoteTOML(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		if r < ' ' || r == '"' || r == '\\' || r >= 0x7f && r < 0xa0 {
			fmt.Fprintf(&b, `\u%04x`, r)
		} else {
			b.WriteRune(r)
		}
	}
	return b.String() + `"`
}

// Whatever a metal is called, the file is refused with a clean word, or every command
// in every format prints the name as plain text: nothing that steers a terminal, no
// markup, no formula, no broken row.
func TestHostileNames(t *testing.T) {
	commands := [][]string{
		{"compare", "gray-30", "hostile-t6-sand"}, {"show", "hostile-t6-sand"}, {"swap", "gray-30", "hostile-t6-sand", "--mass", "12 lb"}, {"watch", "gray-30", "hostile-t6-sand"},
		{"process", "hostile-t6-sand"}, {"brief", "gray-30", "hostile-t6-sand"}, {"drawing", "hostile-t6-sand"}, {"picture", "tensile", "gray-30", "hostile-t6-sand"}, {"find", "--need", "tensile >= 28 ksi"},
	}
	refused := 0
	for _, name := range hostileNames {
		c, err := named(name)
		if list := (record.Errors)(nil); errors.As(err, &list) {
			refused++
			clean(t, name, "the refusal", "text", err.Error())
			continue
		} else if err != nil {
			t.Fatal(err)
		}
		t.Run("", func(t *testing.T) {
			t.Parallel()
			for _, args := range commands {
				for _, format := range report.Formats() {
					r := try(func() *catalog.Catalog { return c }, append(args[:len(args):len(args)], "--format", format)...)
					if r.code != exitOK {
						t.Errorf("%.40q: %s as %s: exit code %d, %.200q", name, args[0], format, r.code, r.errors)
					}
					clean(t, name, args[0], format, r.out)
				}
			}
		})
	}
	if len(hostileNames)-refused < 46 {
		t.Errorf("only %d names were printed", len(hostileNames)-refused)
	}
}

// fenced is text between fences of Markdown, which is no markup.
var fenced = regexp.MustCompile("(?s)(^|\n)```\n.*?\n```\n")

// clean fails where an output is more than text of its format.
func clean(t *testing.T, name, command, format, out string) {
	t.Helper()
	bad := func(what string, args ...any) {
		t.Errorf("%.40q: %s as %s: %s", name, command, format, fmt.Sprintf(what, args...))
	}
	if i := strings.IndexFunc(out, func(r rune) bool {
		return unicode.IsControl(r) && r != '\n' && !(r == '\t' && format == "tsv") && !(r == '\r' && format == "csv") || unicode.Is(unicode.Bidi_Control, r)
	}); i >= 0 {
		bad("a control character, %.20q", out[i:])
	}
	switch format {
	case "html", "markdown":
		out = fenced.ReplaceAllString(out, "\n")
		for _, tag := range []string{"<script", "<img", "<svg onload", "<style>*", "<!--"} {
			if strings.Contains(out, tag) {
				bad("markup, %s", tag)
			}
		}
		if format == "html" {
			for _, tag := range []string{"table", "tr", "td"} {
				if open, shut := strings.Count(out, "<"+tag+">")+strings.Count(out, "<"+tag+" "), strings.Count(out, "</"+tag+">"); open != shut {
					bad("%d <%s> and %d </%s>", open, tag, shut, tag)
				}
			}
		}
	case "json":
		if !json.Valid([]byte(out)) {
			bad("not JSON")
		}
	case "csv", "tsv":
		in := csv.NewReader(strings.NewReader(out))
		in.FieldsPerRecord = -1
		if format == "tsv" {
			in.Comma, in.LazyQuotes = '\t', true
		}
		rows, err := in.ReadAll()
		if err != nil {
			bad("%v", err)
		}
		for _, row := range rows {
			for _, cell := range row {
				if _, err := strconv.ParseFloat(strings.ReplaceAll(cell, "−", "-"), 64); err == nil {
					continue
				}
				if cell != "" && strings.ContainsRune("=@+", rune(cell[0])) {
					bad("a formula, %.20q", cell)
				}
			}
		}
	}
}
