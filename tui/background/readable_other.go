//go:build !unix

package background

import "time"

// Bubble Tea reads key events, not bytes, from a Windows console, so an answer
// could not be taken out of them.
const canAsk = false

func readable(uintptr, time.Duration) bool { return false }
