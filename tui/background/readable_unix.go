//go:build unix

package background

import (
	"time"

	"golang.org/x/sys/unix"
)

const canAsk = true

// readable waits until fd has something to read, at most for limit. It uses
// select because poll does not work on every system's terminals.
func readable(fd uintptr, limit time.Duration) bool {
	for end := time.Now().Add(limit); ; {
		left := max(time.Until(end), 0)
		timeout := unix.NsecToTimeval(left.Nanoseconds())
		var set unix.FdSet
		set.Set(int(fd))
		n, err := unix.Select(int(fd)+1, &set, nil, nil, &timeout)
		if err == unix.EINTR {
			continue
		}
		return err == nil && n > 0
	}
}
