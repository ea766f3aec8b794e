// Command compile packs the data files of the folder it runs in into
// catalog.bin. Run it with `go generate ./data`.
package main

import (
	"fmt"
	"os"

	"alongside/props"
)

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run() error {
	c, err := props.Load(os.DirFS("."))
	if err != nil {
		return err
	}
	return os.WriteFile("catalog.bin", props.Pack(c), 0o644)
}
