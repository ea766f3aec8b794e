package main

import (
	"errors"
	"path"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props/audit"
	"alongside/props/bars"
	"alongside/props/catalog"
	"alongside/props/disk"
	"alongside/props/record"
	"alongside/props/report"
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
	format := formatFlag(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if *rules {
			return p.printDoc(report.RulesDoc(p.catalog().Families), format)
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
		if err := p.printChecked(r, *explained, format); err != nil {
			return err
		}
		if len(mistakes)+len(r.Open) > 0 {
			return &failure{code: exitFindings}
		}
		return nil
	}
	return cmd
}

func (p *program) printChecked(r *report.Checked, explained bool, format *choice) error {
	if format.value == "text" {
		return p.print(r.Text(explained))
	}
	return p.printDoc(report.CheckDoc(r, explained), format)
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

// checked counts and questions a catalog; where files are named, only what
// stands in them.
func checked(c *catalog.Catalog, mistakes record.Errors, files []string) *report.Checked {
	own := func(file string) bool { return true }
	if len(files) > 0 {
		names := map[string]bool{}
		for _, f := range files {
			names[path.Clean(filepath.ToSlash(f))] = true
		}
		own = func(file string) bool { return names[file] }
	}
	r := &report.Checked{Mistakes: mistakes, Unbanded: audit.Unbanded(c.Families)}
	for _, m := range c.Materials {
		if own(m.Alloy.File) {
			r.Materials++
		}
	}
	for _, f := range c.Stated() {
		if own(f.File) {
			r.Figures++
		}
	}
	for _, f := range audit.Check(c) {
		switch {
		case !own(f.File):
		case f.Open():
			r.Open = append(r.Open, f)
		default:
			r.Explained = append(r.Explained, f)
		}
	}
	return r
}
