//go:build !unix

package clip

import "os/exec"

// detach has nothing to do: no command here leaves a child behind.
func detach(*exec.Cmd) {}
