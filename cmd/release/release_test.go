package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"io"
	"os"
	"strings"
	"testing"
	"time"
)

var files = []entry{{"alongside", []byte("program"), 0o755}, {"man/alongside.1", []byte("page"), 0o644}}

// An archive has every file with its mode and the time of the commit, and is the
// same bytes each time.
func TestArchives(t *testing.T) {
	stamp := time.Date(2026, 5, 4, 3, 2, 2, 0, time.UTC)
	var tars, zips [2]bytes.Buffer
	for i := range tars {
		if err := tarred(&tars[i], "alongside-x", files, stamp); err != nil {
			t.Fatal(err)
		}
		if err := zipped(&zips[i], "alongside-x", files, stamp); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(tars[0].Bytes(), tars[1].Bytes()) || !bytes.Equal(zips[0].Bytes(), zips[1].Bytes()) {
		t.Error("two archives of the same files differ")
	}
	g, err := gzip.NewReader(&tars[0])
	if err != nil {
		t.Fatal(err)
	}
	r := tar.NewReader(g)
	for _, f := range files {
		h, err := r.Next()
		if err != nil || h.Name != "alongside-x/"+f.name || h.Mode != f.mode || !h.ModTime.Equal(stamp) {
			t.Errorf("tar: %+v %v, want %s", h, err, f.name)
		}
		if content, _ := io.ReadAll(r); !bytes.Equal(content, f.content) {
			t.Errorf("tar: %s holds %q", f.name, content)
		}
	}
	z, err := zip.NewReader(bytes.NewReader(zips[0].Bytes()), int64(zips[0].Len()))
	if err != nil || len(z.File) != len(files) || z.File[0].Mode() != 0o755 || !z.File[0].Modified.Equal(stamp) {
		t.Errorf("zip: %+v %v", z.File, err)
	}
}

// Every library that is linked brings its license.
func TestLicenses(t *testing.T) {
	if err := os.Chdir("../.."); err != nil {
		t.Fatal(err)
	}
	text, err := licenses()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"bubbletea", "lipgloss", "BurntSushi/toml", "gonum.org/v1/gonum", "go-localereader", "==== Go, its standard library"} {
		if !strings.Contains(string(text), name) {
			t.Errorf("no license of %s", name)
		}
	}
	if n := strings.Count(string(text), "\n==== "); n < 20 {
		t.Errorf("only %d licenses", n)
	}
}

func TestUnknownSystem(t *testing.T) {
	if _, _, err := archive("plan9/z80", nil, time.Time{}); err == nil {
		t.Error("an unknown system is built")
	}
}
