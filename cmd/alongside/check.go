package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props"
)

func (p *program) checkCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "check [FILE...]",
		Short: "Check the catalog, or data files of your own",
		Long: `Check the built-in catalog, or data files on top of its sources and families.
Every mistake is told with its file, line and field and what to write instead;
one mistake does not hide another. Exits with 1 when a mistake or an unexplained
finding is left.`,
		Example: `  alongside check
  alongside check mymetals.toml`,
		RunE: func(cmd *cobra.Command, args []string) error {
			c, err := p.load(args)
			var mistakes props.LoadErrors
			if err != nil && !errors.As(err, &mistakes) {
				return &failure{exitFindings, err}
			}
			text, open := checkText(c, mistakes)
			if err := p.print(text); err != nil {
				return err
			}
			if len(mistakes)+open > 0 {
				return &failure{code: exitFindings}
			}
			return nil
		},
	}
}

// load reads the files given, or else the data files that the program was
// built from, so that findings can name file and line.
func (p *program) load(names []string) (*props.Catalog, error) {
	if len(names) == 0 {
		return props.Load(data.Files)
	}
	var files []props.File
	for _, name := range names {
		content, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		files = append(files, props.File{Name: filepath.ToSlash(name), Content: content})
	}
	return props.LoadFiles(p.catalog(), files)
}

// checkText reports mistakes and findings, and returns how many findings no
// one has explained.
func checkText(c *props.Catalog, mistakes props.LoadErrors) (text string, open int) {
	var b strings.Builder
	for _, e := range mistakes {
		fmt.Fprintln(&b, e)
	}
	if len(mistakes) > 0 {
		fmt.Fprintf(&b, "\n%d mistakes\n", len(mistakes))
	}
	findings, explained := audit(c)
	for _, f := range findings {
		fmt.Fprintln(&b, f)
	}
	if b.Len() > 0 {
		b.WriteByte('\n')
	}
	fmt.Fprintf(&b, "%d materials\n%d figures\n%d findings explained\n%d findings open\n",
		len(c.Materials), c.FigureCount(), explained, len(findings))
	return cleanLines(b.String()), len(findings)
}
