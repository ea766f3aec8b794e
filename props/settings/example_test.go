package settings_test

import (
	"fmt"
	"os"
	"path/filepath"

	"alongside/props/settings"
)

// A line that cannot be used is named; the rest is used.
func ExampleLoad() {
	dir, err := os.MkdirTemp("", "")
	if err != nil {
		fmt.Println(err)
	}
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, "settings.toml")
	if err := os.WriteFile(path, []byte("units = \"si\"\nbasis = \"minimums\"\n"), 0o600); err != nil {
		fmt.Println(err)
	}
	s := settings.Load(path)
	fmt.Println(s.Bench.System, s.Bench.Basis)
	for _, wrong := range s.Mistakes {
		fmt.Println(wrong.Line, wrong.Field, wrong.Problem+";", wrong.Remedy)
	}
	// Output:
	// si typical
	// 2 basis "minimums" is not known; did you mean minimum?
}
