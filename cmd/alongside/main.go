// Command alongside sets cast metals side by side: on a bench in the terminal,
// or with the same work printed by its commands. Run it with --help.
package main

import (
	"context"
	"os"
)

func main() {
	os.Exit(run(context.Background(), os.Args[1:], os.Stdin, os.Stdout, os.Stderr, os.Getenv))
}
