package main

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"runtime"
	"slices"

	"github.com/spf13/cobra"

	"alongside/props"
	"alongside/props/call/sheets"
	"alongside/props/catalog"
	"alongside/props/disk"
	"alongside/props/record"
	"alongside/props/report"
	"alongside/props/sheet"
	"alongside/props/shelf"
)

func (p *program) shelfCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "shelf [SOURCE]",
		Short: "List the figures to look up in your own copy of a source, and take the list back",
		Long: `List the figures of a source that are from memory and wait until you look them
up in your own copy, in the order of its tables; without SOURCE, the sources with
the number of figures that wait. With --agreed those too that agree with another
document.

Tick what your copy prints and give the file to --take, as text, CSV or TSV: each
line needs a box with an x (or with the value that your copy prints instead), the
edition, the table, who looked it up, and the day. Where a line lacks something
nothing is kept, and every such line is told. From then on these figures are shown
as checked by the shop.

They are kept in alongside/checked.toml in your data folder, or in the --house FILE.
Where a later catalog has another value the check is left out, with a word.`,
		Example: "  alongside shelf\n  alongside shelf ASM-ALCAST > list.txt\n  alongside shelf ASM-ALCAST --format csv > list.csv",
		Args:    cobra.MaximumNArgs(1),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return p.sourceIDs(), cobra.ShellCompDirectiveNoFileComp
		},
	}
	take := cmd.Flags().String("take", "", "take back a `FILE` with the list ticked or corrected")
	agreed := cmd.Flags().Bool("agreed", false, "list figures too that agree with another document")
	format := formatFlag(cmd)
	cmd.PersistentPreRunE = func(cmd *cobra.Command, _ []string) error {
		houses, _ := cmd.Flags().GetStringArray("house")
		if *take == "" || len(houses) == 0 {
			return p.addHouse(houses)
		}
		if len(houses) > 1 || filepath.Ext(houses[0]) != ".toml" {
			return errors.New("--take keeps the figures in one file; give --house once, with a name that ends in .toml")
		}
		if _, err := disk.Read(houses[0], houseSize); errors.Is(err, fs.ErrNotExist) {
			return p.addHouse(nil) // it will be made
		}
		return p.addHouse(houses)
	}
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		switch {
		case *take != "" && len(args) > 0:
			return errors.New("--take reads the sources from the file; leave " + args[0] + " out")
		case *take != "":
			houses, _ := cmd.Flags().GetStringArray("house")
			return p.takeShelf(*take, houses)
		case len(args) == 0:
			return p.printDoc(report.ShelfSourcesDoc(p.catalog(), *agreed), format)
		}
		i := slices.IndexFunc(p.catalog().Sources, func(s *props.Source) bool { return s.ID == args[0] })
		if i < 0 {
			return fmt.Errorf("%q is not a source; %s", args[0], record.DidYouMean(args[0], p.sourceIDs()))
		}
		return p.printDoc(report.ShelfDoc(p.catalog(), p.catalog().Sources[i], *agreed), format)
	}
	return cmd
}

func (p *program) sourceIDs() []string {
	var ids []string
	for _, s := range p.catalog().Sources {
		ids = append(ids, s.ID)
	}
	return ids
}

// takeShelf keeps what a filled list says in the shop's file.
func (p *program) takeShelf(name string, houses []string) error {
	text, err := disk.Read(name, houseSize)
	if err != nil {
		return &failure{exitFindings, err}
	}
	checks, err := shelf.Take(filepath.ToSlash(name), string(text), p.catalog())
	if err != nil {
		return &failure{exitFindings, err}
	}
	path := ""
	if len(houses) > 0 {
		path = houses[0]
	} else if path, err = p.checkedFile(); err != nil {
		return &failure{exitFindings, err}
	}
	if err := p.keepChecks(path, checks...); err != nil {
		return &failure{exitFindings, err}
	}
	corrected := 0
	for _, c := range checks {
		if c.Reads != "" {
			corrected++
		}
	}
	return p.print(sheet.CleanLines(fmt.Sprintf("%d figures checked by the shop, %d of them corrected; kept in %s\n", len(checks), corrected, path)))
}

// checkedFile is where the figures that the shop checked are kept.
func (p *program) checkedFile() (string, error) {
	calls, err := sheets.Dir(runtime.GOOS, p.env)
	return filepath.Join(filepath.Dir(calls), "checked.toml"), err
}

// keepChecks adds checks to a file of the shop, which changes only where the
// whole of it can be read afterwards.
func (p *program) keepChecks(path string, checks ...catalog.Check) error {
	lock, err := disk.NewLock(filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".lock"))
	if errors.Is(err, disk.ErrLocked) {
		return fmt.Errorf("%s is being written by another program; try again", path)
	}
	if err != nil {
		return err
	}
	defer lock.Release()
	old, err := disk.Read(path, houseSize)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	text, err := shelf.Merge(filepath.ToSlash(path), old, checks)
	if err != nil {
		return err
	}
	if _, err := catalog.LoadFiles(p.builtIn(), []catalog.File{{Name: filepath.ToSlash(path), Content: text}}); err != nil {
		return err
	}
	return disk.Replace(path, text)
}

// keepAndLoad adds a check to a file and puts the catalog together again.
func (p *program) keepAndLoad(path string, c catalog.Check) (*catalog.Catalog, error) {
	if err := p.keepChecks(path, c); err != nil {
		return nil, err
	}
	p.catalog = p.builtIn
	err := p.addHouse(p.houses)
	return p.catalog(), err
}

// withChecks is the built-in catalog with the figures that the shop checked. A
// file that cannot be read is told of and left aside.
func (p *program) withChecks() *catalog.Catalog {
	base := p.builtIn()
	path, err := p.checkedFile()
	if err != nil {
		return base // there is no folder that could hold it
	}
	text, err := disk.Read(path, houseSize)
	if errors.Is(err, fs.ErrNotExist) {
		return base
	}
	var c *catalog.Catalog
	if err == nil {
		c, err = catalog.LoadFiles(base, []catalog.File{{Name: filepath.ToSlash(path), Content: text}})
	}
	if err != nil {
		fmt.Fprintln(p.err, "alongside: the figures checked by the shop are left out: "+sheet.CleanLines(err.Error()))
		return base
	}
	p.tellDropped(c, base)
	return c
}

// tellDropped says which checks no longer fit, those aside that were told of with
// the catalog below.
func (p *program) tellDropped(c, below *catalog.Catalog) {
	const most = 10
	for i, s := range c.Dropped[len(below.Dropped):] {
		if i == most {
			fmt.Fprintf(p.err, "alongside: and %d more\n", len(c.Dropped)-len(below.Dropped)-most)
			return
		}
		fmt.Fprintln(p.err, "alongside: "+sheet.CleanLines(s))
	}
}
