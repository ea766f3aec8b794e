package main

import (
	"errors"
	"fmt"
	"runtime"
	"strings"

	"github.com/spf13/cobra"

	"alongside/props/call/sheets"
	"alongside/props/catalog"
	"alongside/props/report"
	"alongside/props/sheet"
)

func (p *program) callCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "call [NAME]",
		Short: "List kept calls, or print one",
		Long: `Print the call sheet that NAME means: the name you gave the call, its file, or any
words in it. Where several fit, or without a name, list them, that changed last
first.

The bench keeps every call by itself, in a file a call that you can read. The
files stay on this machine, in alongside/calls in your data folder:
$XDG_DATA_HOME or ~/.local/share, ~/Library/Application Support on macOS,
%LocalAppData% on Windows. A deleted call is kept there too.`,
		Example: `  alongside call
  alongside call pump bracket --format html
  alongside call --duplicate pump bracket
  alongside call --delete copy of pump bracket
  alongside call --restore copy of pump bracket
  alongside call --deleted`,
	}
	flags := cmd.Flags()
	duplicate := flags.Bool("duplicate", false, "make a copy of the call")
	remove := flags.Bool("delete", false, "delete the call; it can be restored")
	restore := flags.Bool("restore", false, "bring a deleted call back")
	deleted := flags.Bool("deleted", false, "list or print deleted calls")
	cmd.MarkFlagsMutuallyExclusive("duplicate", "delete", "restore", "deleted")
	format := formatFlag(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		f, err := p.sheets()
		if err != nil {
			return err
		}
		name := strings.Join(args, " ")
		switch {
		case *duplicate:
			return p.duplicate(f, name)
		case *remove:
			return p.moved(f.Find, f.Delete, name, "deleted %s; alongside call --restore %s brings it back\n")
		case *restore:
			return p.moved(f.FindDeleted, f.Restore, name, "restored %s; alongside call %s prints it\n")
		case *deleted:
			return p.printCall(f.FindDeleted, name, format)
		}
		return p.printCall(f.Find, name, format)
	}
	return cmd
}

// sheets is the folder with the user's call sheets.
func (p *program) sheets() (*sheets.Folder, error) {
	dir, err := sheets.Dir(runtime.GOOS, p.env)
	if err != nil {
		return nil, &failure{exitFindings, err}
	}
	return &sheets.Folder{Path: dir, Catalog: func() *catalog.Catalog { return p.catalog() }}, nil
}

// printCall prints the call that a name means, with what was not understood of
// it on stderr, or lists those that it fits.
func (p *program) printCall(find func(string) (*sheets.Sheet, error), name string, format *choice) error {
	s, err := find(name)
	var several *sheets.NotFound
	switch {
	case errors.As(err, &several) && name == "" && len(several.Fits) == 0:
		return &failure{exitFindings, errors.New("no calls here yet; the bench keeps them by itself")}
	case errors.As(err, &several) && len(several.Fits) > 0:
		return p.printDoc(report.CallsDoc(several.Fits), format)
	case err != nil:
		return &failure{exitFindings, err}
	}
	p.mistakes(s)
	return p.printDoc(report.CallDoc(s), format)
}

// mistakes tells what was not understood of a sheet.
func (p *program) mistakes(s *sheets.Sheet) {
	if len(s.Mistakes) > 0 {
		fmt.Fprintf(p.err, "alongside: %s\n", sheet.CleanLines(s.Mistakes.Error()))
	}
}

func (p *program) duplicate(f *sheets.Folder, name string) error {
	s, err := f.Find(name)
	if err != nil {
		return &failure{exitFindings, err}
	}
	h, err := f.Copy(s.ID)
	if err == nil {
		err = h.Close()
	}
	if err != nil {
		return &failure{exitFindings, err}
	}
	return p.print(sheet.CleanLines(fmt.Sprintf("%s: %s\n", h.Sheet().ID, h.Sheet().Title())))
}

// moved deletes or restores the call that a name means, and says so.
func (p *program) moved(find func(string) (*sheets.Sheet, error), move func(id string) error, name, said string) error {
	s, err := find(name)
	if s != nil { // a broken one can be moved too
		err = move(s.ID)
	}
	if err != nil {
		return &failure{exitFindings, err}
	}
	return p.print(sheet.CleanLines(fmt.Sprintf(said, s.Title(), s.ID)))
}
