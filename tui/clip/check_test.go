package clip

import (
	"os/exec"
	"testing"
)

// The ways are offered in the order of Copy, and what is missing names its package.
func TestOffers(t *testing.T) {
	env := Env{OS: "linux", Dir: "/d", Getenv: func(name string) string {
		return map[string]string{"DISPLAY": ":0", "WAYLAND_DISPLAY": "w"}[name]
	}, LookPath: func(name string) (string, error) {
		if name == "xsel" {
			return "/bin/xsel", nil
		}
		return "", exec.ErrNotFound
	}}
	want := []Offer{
		{"wl-copy", false, "not installed; install the package wl-clipboard"},
		{"xclip", false, "not installed; install the package xclip"},
		{"xsel", true, ""},
		{theTerminal, false, "run alongside in a terminal that has a clipboard"},
		{"a file in /d", true, ""},
	}
	have := Offers(env)
	if len(have) != len(want) {
		t.Fatalf("%v", have)
	}
	for i := range want {
		if have[i] != want[i] {
			t.Errorf("%d: %v, want %v", i, have[i], want[i])
		}
	}
}
