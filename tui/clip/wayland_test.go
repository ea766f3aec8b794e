//go:build linux

package clip

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// compositor starts a Wayland compositor without a screen and returns the path
// of its socket. It refuses to run as root, so root runs it as nobody.
func compositor(t *testing.T) string {
	t.Helper()
	need(t, "sway", "wl-copy", "wl-paste")
	dir, err := os.MkdirTemp("", "alongside-wayland-") // not t.TempDir: nobody must get in
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = os.RemoveAll(dir) })
	server := exec.Command("sway", "--config", os.DevNull)
	server.Env = append(os.Environ(), "XDG_RUNTIME_DIR="+dir, "HOME="+dir,
		"WLR_BACKENDS=headless", "WLR_RENDERER=pixman", "WLR_LIBINPUT_NO_DEVICES=1")
	if os.Getuid() == 0 {
		const nobody = 65534
		if err := os.Chown(dir, nobody, nobody); err != nil {
			t.Skipf("cannot give a directory to nobody: %v", err)
		}
		server.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	}
	if err := server.Start(); err != nil {
		t.Skipf("cannot start sway: %v", err)
	}
	ended := make(chan error, 1)
	go func() { ended <- server.Wait() }()
	t.Cleanup(func() {
		_ = server.Process.Kill()
		<-ended
	})
	for range 400 {
		sockets, _ := filepath.Glob(filepath.Join(dir, "wayland-*[0-9]"))
		if len(sockets) > 0 {
			return sockets[0]
		}
		select {
		case err := <-ended:
			ended <- err
			t.Fatalf("sway ended: %v", err)
		case <-time.After(50 * time.Millisecond):
		}
	}
	t.Fatal("sway made no socket in 20 s")
	return ""
}

func TestWaylandClipboardForReal(t *testing.T) {
	env := desktop(t, map[string]string{"WAYLAND_DISPLAY": compositor(t)})
	paste := func(kind string) string {
		t.Helper()
		ctx, cancel := context.WithTimeout(t.Context(), 5*time.Second)
		defer cancel()
		out, err := exec.CommandContext(ctx, "wl-paste", "--no-newline", "--type", kind).CombinedOutput()
		if err != nil {
			t.Errorf("wl-paste: %v", err)
		}
		return string(out)
	}
	const text = "37 ksi · 0.097 lb/in³ · 26.8 × 10⁻⁶\n\tsecond line\n"
	report, err := Copy(t.Context(), Payload{Text: text}, env)
	if err != nil || report.String() != "copied (wl-copy)" {
		t.Fatalf("%v, %v", report, err)
	}
	if have := paste("text/plain;charset=utf-8"); have != text {
		t.Errorf("pasted %q", have)
	}
	const table = "<table><tr><td>0.097 lb/in³</td></tr></table>"
	report, err = Copy(t.Context(), Payload{Text: "0.097 lb/in³", HTML: table}, env)
	if err != nil || !report.HTML || report.Name != "wl-copy" {
		t.Fatalf("%v, %v", report, err)
	}
	if have := paste("text/html"); !strings.HasSuffix(have, table) || !strings.Contains(have, "charset=utf-8") {
		t.Errorf("pasted %q", have)
	}
}
