package disk

import "path/filepath"

// Place is a folder that the system has for files of one kind, by the XDG Base
// Directory Specification or the system's own custom.
type Place struct {
	Variable string // of the environment; goes first where it names a full path
	windows  string // variable
	other    string // below the home folder
}

// The places: what programs keep on this machine, and what the user sets up.
var (
	Data   = Place{"XDG_DATA_HOME", "LocalAppData", ".local/share"}
	Config = Place{"XDG_CONFIG_HOME", "AppData", ".config"}
)

// Folder is where Alongside has its files of the kind; "" where there is no
// folder that is the user's own.
func (p Place) Folder(goos string, getenv func(string) string) string {
	base := getenv(p.Variable)
	switch home := getenv("HOME"); {
	case filepath.IsAbs(base):
	case goos == "windows":
		base = getenv(p.windows)
	case goos == "darwin":
		base = filepath.Join(home, "Library", "Application Support")
	default:
		base = filepath.Join(home, filepath.FromSlash(p.other))
	}
	if !filepath.IsAbs(base) {
		return ""
	}
	return filepath.Join(base, "alongside")
}
