package main

import (
	"errors"
	"fmt"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props"
	"alongside/props/audit"
	"alongside/props/bars"
	"alongside/props/catalog"
	"alongside/props/disk"
	"alongside/props/record"
	"alongside/props/sheet"
)

func (p *program) checkCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "check [FILE...]",
		Short: "Check the catalog, or data files of your own",
		Long: `Check the built-in catalog, or data files on top of its sources and families.
Every mistake is told with its file, line and field and what to write instead;
one mistake does not hide another. Then the figures are questioned by physics:
a finding is corrected in the data, or kept with a written reason. Exits with 1
when a mistake or an unexplained finding is left.

A file with the shop's own figures, for --house:

  [[source]]
  id = "LAB-2026"
  title = "Our test bars"
  edition = "March 2026"
  kind = "house"
  [[house]]
  material = "a356-t6-pm"
  [[house.figures]]
  basis = "house"
  source = "LAB-2026"
  known = "read"
  conditions = "separately cast bar"
  tensile_strength = "39.8–43.1 ksi"`,
		Example: `  alongside check
  alongside check mymetals.toml
  alongside check --explained
  alongside check --rules`,
	}
	explained := cmd.Flags().Bool("explained", false, "print the findings that carry a written reason too")
	rules := cmd.Flags().Bool("rules", false, "print the rules with their sources, and check nothing")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if *rules {
			return p.print(rulesText(p.width(), p.catalog().Families))
		}
		c, err := p.load(args)
		var mistakes record.Errors
		if err != nil && !errors.As(err, &mistakes) {
			return &failure{exitFindings, err}
		}
		if len(args) == 0 {
			mistakes = append(mistakes, data.ProcessMistakes()...)
		}
		r := checked(c, mistakes, args)
		if err := p.print(r.text(*explained)); err != nil {
			return err
		}
		if len(mistakes)+len(r.open) > 0 {
			return &failure{code: exitFindings}
		}
		return nil
	}
	return cmd
}

// houseSize is the most bytes that a file of the shop may have.
const houseSize = 16 << 20

// load reads the files given, test bars among them, or else the data files that the program was
// built from, so that findings can name file and line.
func (p *program) load(names []string) (*catalog.Catalog, error) {
	if len(names) == 0 {
		return catalog.Load(data.Files)
	}
	var files []catalog.File
	for _, name := range names {
		content, err := disk.Read(name, houseSize)
		if err != nil {
			return nil, err
		}
		slashed := filepath.ToSlash(name)
		if strings.EqualFold(filepath.Ext(name), ".csv") {
			sets, err := bars.Read(slashed, string(content), p.catalog())
			if err != nil {
				return nil, err
			}
			content = []byte(bars.House(slashed, sets))
		}
		files = append(files, catalog.File{Name: slashed, Content: content})
	}
	return catalog.LoadFiles(p.catalog(), files)
}

// checkResult is what check has to tell.
type checkResult struct {
	mistakes           record.Errors
	open, explained    []*audit.Finding
	unbanded           []string // families
	materials, figures int
}

// checked counts and questions a catalog; where files are named, only what
// stands in them.
func checked(c *catalog.Catalog, mistakes record.Errors, files []string) checkResult {
	own := func(file string) bool { return true }
	if len(files) > 0 {
		names := map[string]bool{}
		for _, f := range files {
			names[path.Clean(filepath.ToSlash(f))] = true
		}
		own = func(file string) bool { return names[file] }
	}
	r := checkResult{mistakes: mistakes, unbanded: audit.Unbanded(c.Families)}
	for _, m := range c.Materials {
		if own(m.Alloy.File) {
			r.materials++
		}
	}
	for _, f := range c.Stated() {
		if own(f.File) {
			r.figures++
		}
	}
	for _, f := range audit.Check(c) {
		switch {
		case !own(f.File):
		case f.Open():
			r.open = append(r.open, f)
		default:
			r.explained = append(r.explained, f)
		}
	}
	return r
}

// text ends in four lines that other programs read.
func (r *checkResult) text(explained bool) string {
	var b strings.Builder
	if n := len(r.mistakes); n > 0 {
		fmt.Fprintln(&b, r.mistakes)
		fmt.Fprintf(&b, "\n%d mistakes\n", n)
	}
	list := r.open
	if explained {
		list = append(slices.Clone(r.explained), r.open...)
	}
	for _, f := range list {
		fmt.Fprintln(&b, f)
	}
	if len(r.unbanded) > 0 {
		fmt.Fprintf(&b, "families without bands, or without a base element that the rules know: %s\n", strings.Join(r.unbanded, ", "))
	}
	if b.Len() > 0 {
		b.WriteByte('\n')
	}
	fmt.Fprintf(&b, "%d materials\n%d figures\n%d findings explained\n%d findings open\n",
		r.materials, r.figures, len(r.explained), len(r.open))
	return sheet.CleanLines(b.String())
}

func rulesText(width int, families []*props.Family) string {
	var b strings.Builder
	for _, r := range audit.Rules() {
		sheet.Wrap(&b, width, "", "    ", r.ID+": "+r.Says)
		sheet.Wrap(&b, width, "    ", "    ", r.Source)
	}
	for _, f := range families {
		if len(f.Bands) > 0 {
			sheet.Wrap(&b, width, "", "    ", f.Name+": "+audit.Bands(f))
		}
	}
	return b.String()
}
