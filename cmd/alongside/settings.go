package main

import (
	"errors"
	"fmt"
	"os"
	"runtime"
	"sync"

	"github.com/spf13/cobra"

	"alongside/props/compare"
	"alongside/props/disk"
	"alongside/props/report"
	"alongside/props/settings"
	"alongside/props/sheet"
	"alongside/tui"
	"alongside/tui/background"
	"alongside/tui/clip"
)

func (p *program) settingsCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "settings",
		Short: "Print the settings file with every default, and where it is looked for",
		Long: `Print the settings file with every default: units, basis, what counts as level,
rows, colors, copies and keys. Its first lines say where it is looked for:
alongside/settings.toml in $XDG_CONFIG_HOME or ~/.config, in ~/Library/Application
Support on macOS, in %AppData% on Windows. With --create it is written there, to be
changed by hand.

A line of yours that cannot be used is named with what to write instead, and the
rest is used; the exit code is then 1. A flag goes before a setting, and so do
NO_COLOR, ALONGSIDE_BACKGROUND and ALONGSIDE_CLIPBOARD.`,
		Example: `  alongside settings
  alongside settings --create`,
		Args: cobra.NoArgs,
	}
	create := cmd.Flags().Bool("create", false, "write the file where there is none")
	cmd.RunE = func(*cobra.Command, []string) error {
		path := settings.Path(runtime.GOOS, p.env)
		text := settings.Text(path, tui.KeyLines())
		if *create {
			return p.createSettings(path, text)
		}
		if err := p.print(sheet.CleanLines(text)); err != nil {
			return err
		}
		if tui.CheckKeys(p.settings()); len(p.settings().Mistakes) > 0 {
			return &failure{exitFindings, p.settings().Mistakes}
		}
		return nil
	}
	return cmd
}

// createSettings writes the file where there is none.
func (p *program) createSettings(path, text string) error {
	if path == "" {
		return &failure{exitFindings, fmt.Errorf("there is no folder to keep settings in; set HOME, or %s to a folder of your own", disk.Config.Variable)}
	}
	if _, err := os.Lstat(path); !os.IsNotExist(err) {
		return &failure{exitFindings, fmt.Errorf("%s is there already; move it away for a new one", path)}
	}
	if err := disk.Replace(path, []byte(text)); err != nil {
		return &failure{exitFindings, err}
	}
	return p.print(sheet.CleanLines(path + "\n"))
}

// readSettings puts the settings under the flags that were not given and the
// variables that are not set. The file is read by the first that asks for it. What
// cannot be used is told of then; the bench, settings and doctor tell themselves.
func (p *program) readSettings(cmd *cobra.Command) {
	path := settings.Path(runtime.GOOS, p.env)
	p.settings = sync.OnceValue(func() *settings.Settings {
		s := settings.Load(path)
		if tells := !cmd.HasParent() || cmd.Name() == "settings" || cmd.Name() == "doctor"; len(s.Mistakes) > 0 && !tells {
			fmt.Fprintln(p.err, "alongside: "+sheet.CleanLines(s.Mistakes.Error()))
		}
		return s
	})
	for name, word := range map[string]func(b *compare.Bench) fmt.Stringer{
		"units": func(b *compare.Bench) fmt.Stringer { return b.System },
		"basis": func(b *compare.Bench) fmt.Stringer { return b.Basis },
		"delta": func(b *compare.Bench) fmt.Stringer { return b.Delta },
	} {
		if f := cmd.Flags().Lookup(name); f != nil && !f.Changed {
			// "show" converts no figure unless it is asked to.
			if c, ok := f.Value.(*choice); ok && c.options[0] != "source" {
				c.value = word(&p.settings().Bench).String()
			}
		}
	}
	set := p.env
	p.env = func(name string) string {
		word := set(name)
		switch {
		case word != "":
		case name == background.Variable:
			return p.settings().Background
		case name == clip.Variable:
			return p.settings().Clipboard
		}
		return word
	}
}

// settingsFinding tells where the settings are read from.
func (p *program) settingsFinding() report.Found {
	f := report.Found{What: "settings", Is: settings.Path(runtime.GOOS, p.env)}
	tui.CheckKeys(p.settings())
	_, err := os.Lstat(f.Is)
	switch n := len(p.settings().Mistakes); {
	case f.Is == "":
		f.Is = "nowhere to keep them"
	case n > 0:
		f.Remedy = fmt.Sprintf("%d of its lines cannot be used; alongside settings says why", n)
	case errors.Is(err, os.ErrNotExist):
		f.Is += ", which is not there: the defaults hold"
	}
	return f
}
