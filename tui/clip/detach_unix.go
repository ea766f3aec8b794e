//go:build unix

package clip

import (
	"os/exec"
	"syscall"
)

// detach gives a command a session of its own: what it leaves behind survives
// the closing of the terminal, and all of it can be ended at once.
func detach(cmd *exec.Cmd) {
	cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true}
	cmd.Cancel = func() error {
		return syscall.Kill(-cmd.Process.Pid, syscall.SIGKILL)
	}
}
