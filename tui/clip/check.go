package clip

import (
	"cmp"
	"os"
)

// Offer is a way to copy, as it stands before anything is copied.
type Offer struct {
	Name  string // "xclip", "the terminal's clipboard", "a file"
	Ready bool
	// Remedy is what to do where it is not ready.
	Remedy string
}

// packageOf is the package that brings a clipboard command where it is not part of
// the system; "" for none.
func packageOf(command string) string {
	switch command {
	case "wl-copy":
		return "wl-clipboard"
	case "xclip", "xsel", "tmux":
		return command
	}
	return ""
}

// Offers lists the ways that Copy would try, in its order, without trying them.
func Offers(env Env) []Offer {
	var out []Offer
	for _, w := range ways(env) {
		o := Offer{Name: w.name, Ready: true}
		switch w.name {
		case theTerminal:
			if o.Ready = env.Terminal != nil; !o.Ready {
				o.Remedy = "run alongside in a terminal that has a clipboard"
			}
		case aFile:
			o.Name = "a file in " + cmp.Or(env.Dir, "a new folder of "+os.TempDir()+"; set HOME, or XDG_STATE_HOME to a folder of your own")
		default:
			if _, err := env.LookPath(w.name); err != nil {
				o.Ready, o.Remedy = false, "not installed"
				if p := packageOf(w.name); p != "" {
					o.Remedy += "; install the package " + p
				}
			}
		}
		out = append(out, o)
	}
	return out
}
