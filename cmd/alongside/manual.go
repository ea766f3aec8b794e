//go:build manual

package main

import (
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/cobra/doc"
)

// Built with the tag manual, the program writes its man pages and completions
// into the folder named by ALONGSIDE_MANUAL, for cmd/release, and ends. The tag
// keeps the library that lays out man pages from the program that people run.
func init() {
	dir := os.Getenv("ALONGSIDE_MANUAL")
	if dir == "" {
		return
	}
	p := &program{out: os.Stdout, err: os.Stderr, env: os.Getenv}
	root := p.root(nil)
	root.DisableAutoGenTag = true
	day := time.Unix(0, 0).UTC() // the pages of one commit are the same every day
	err := doc.GenManTree(root, &doc.GenManHeader{Title: "ALONGSIDE", Section: "1", Source: "Alongside", Manual: "Alongside", Date: &day}, dir)
	for name, write := range map[string]func(string) error{
		"alongside.bash": func(f string) error { return root.GenBashCompletionFileV2(f, true) },
		"alongside.zsh":  root.GenZshCompletionFile,
		"alongside.fish": func(f string) error { return root.GenFishCompletionFile(f, true) },
		"alongside.ps1":  root.GenPowerShellCompletionFileWithDesc,
	} {
		if err == nil {
			err = write(filepath.Join(dir, name))
		}
	}
	cobra.CheckErr(err)
	os.Exit(0)
}
