//go:build unix

package disk

import "golang.org/x/sys/unix"

func makePipe(path string) error { return unix.Mkfifo(path, 0o600) }
