//go:build unix

package disk

import (
	"io/fs"
	"strings"
	"testing"

	"golang.org/x/sys/unix"
)

func TestFullDisk(t *testing.T) {
	err := Explained("/x/a.toml", &fs.PathError{Op: "write", Path: "/x/.a.toml.new-1", Err: unix.ENOSPC})
	if !strings.Contains(err.Error(), "/x/a.toml: the disk is full; make room") {
		t.Error(err)
	}
}
