package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props/call"
	"alongside/props/call/sheets"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/spoken"
	"alongside/units"
)

// Three calls as they come, with the published figures.
func TestBrief(t *testing.T) {
	for name, args := range map[string][]string{
		"brief-bracket": {"brief", "gray-30", "a356-t6-pm", "--mass", "12 lb", "--wall", "3/8 in", "--case", "plate", "--service", "-20..250 F", "--mate", "1045-cold-drawn-wrought", "--need", "yield >= 20 ksi"},
		"brief-lever":   {"brief", "zn-3-die", "a380-f-die", "az91d-die", "--mass", "0.5 lb", "--with", "crimp"},
		"brief-housing": {"brief", "c83600-sand", "za-27-sand", "za-12-sand", "--mass", "3 lb", "--service", "70..200 F", "--with", "press-fit"},
	} {
		t.Run(name, func(t *testing.T) { keep(t, name, try(data.Catalog, args...), exitOK) })
	}
	t.Run("brief-alone", func(t *testing.T) { keep(t, "brief-alone", try(data.Catalog, "brief", "gray-30"), exitUsage) })
}

// The brief of a kept call is that of its pins, part and needs, with what is typed
// over it.
func TestBriefOfCall(t *testing.T) {
	home, r := t.TempDir(), result{}
	f := &sheets.Folder{Path: filepath.Join(home, "alongside", "calls"), Catalog: data.Catalog}
	c := call.Call{Bench: compare.NewBench(), Name: "Pump bracket", Part: part.Part{Mass: "12 lb"}}
	c.Needs, _ = spoken.Read("yield >= 20 ksi", data.Catalog(), units.US, nil).Limits()
	for _, id := range []string{"gray-30", "a356-t6-pm", "319-t6-sand", "a380-f-die", "zn-3-die"} {
		c.Bench.Pin(data.Catalog().Material(id))
	}
	h := f.New()
	h.Put(c)
	if err := h.Close(); err != nil {
		t.Fatal(err)
	}
	env := map[string]string{"XDG_DATA_HOME": home}
	r = tryIn(data.Catalog, env, "brief", "--call", "pump bracket")
	if r.code != exitUsage || !strings.Contains(r.errors, "name at most 3") {
		t.Errorf("four proposals: exit code %d, %s", r.code, r.errors)
	}
	r = tryIn(data.Catalog, env, "brief", "--call", "pump bracket", "a356-t6-pm", "--stress", "5 ksi")
	for _, want := range []string{"Class 30 sand today; proposed: A356.0-T6 permanent mold", "You asked for yield strength ≥ 20 ksi. The part: 12 lb; stress 5 ksi."} {
		if !strings.Contains(r.out, want) {
			t.Errorf("exit code %d, not said: %s\n%s%s", r.code, want, r.out, r.errors)
		}
	}
	if r := tryIn(data.Catalog, env, "brief", "--call", "valve"); r.code != exitFindings || !strings.Contains(r.errors, "valve") {
		t.Errorf("no such call: exit code %d, %s", r.code, r.errors)
	}
}

// A report is written to a new file only, in the form of its ending, of two metals
// or of a kept call.
func TestReportToFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "report.html")
	args := []string{"report", "gray-30", "a356-t6-pm", "--mass", "12 lb", "--out", path}
	if r := try(data.Catalog, args...); r.code != exitOK || r.out != "" || !strings.Contains(r.errors, path) {
		t.Fatalf("%+v", r)
	}
	page, err := os.ReadFile(path)
	if err != nil || !strings.Contains(string(page), "12 lb") || !strings.Contains(string(page), "<h2>Watch-outs</h2>") {
		t.Errorf("%v, %d bytes", err, len(page))
	}
	if r := try(data.Catalog, args...); r.code != exitFindings || !strings.Contains(r.errors, "is there already") {
		t.Errorf("%+v", r)
	}
	if r := try(data.Catalog, "report", "no such call"); r.code != exitFindings {
		t.Errorf("%+v", r)
	}
	if r := try(data.Catalog, "report", "gray-30", "a356-t6-pm", "--format", "json"); !json.Valid([]byte(r.out)) {
		t.Error(r.errors)
	}
}

// A picture is written in the form of its ending, and in no other.
func TestPictureToFile(t *testing.T) {
	dir := t.TempDir()
	for ending, start := range map[string]string{"svg": "<svg ", "PNG": "\x89PNG\r\n"} {
		path := filepath.Join(dir, "tensile."+ending)
		if r := try(data.Catalog, "picture", "tensile", "gray-30", "a356-t6-pm", "--out", path); r.code != exitOK || r.out != "" {
			t.Fatalf("%+v", r)
		}
		if drawn, err := os.ReadFile(path); err != nil || !strings.HasPrefix(string(drawn), start) {
			t.Errorf("%s: %v, %.8q", ending, err, drawn)
		}
	}
	if r := try(data.Catalog, "picture", "tensile", "gray-30", "a356-t6-pm", "--out", filepath.Join(dir, "tensile.gif")); r.code == exitOK || !strings.Contains(r.errors, ".svg or .png") {
		t.Errorf("%+v", r)
	}
}
