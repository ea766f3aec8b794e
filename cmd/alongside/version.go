package main

import (
	"fmt"
	"runtime"
	"runtime/debug"

	"github.com/spf13/cobra"

	"alongside/data/compiled"
	"alongside/props/report"
)

func (p *program) versionCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:     "version",
		Short:   "Print the version of the program and the size of its catalog",
		Example: "  alongside version",
		Args:    cobra.NoArgs,
	}
	format := formatFlag(cmd)
	cmd.RunE = func(*cobra.Command, []string) error { return p.printDoc(versionDoc(), format) }
	return cmd
}

// versionDoc tells what --version prints. It does not touch the catalog.
func versionDoc() *report.Doc {
	return report.VersionDoc(buildVersion(), compiled.Materials, compiled.Figures, compiled.Sources)
}

// buildVersion is the module version and the revision the program was built
// from, as far as the build recorded them.
func buildVersion() string {
	version, revision, changed := "unknown version", "", ""
	if info, ok := debug.ReadBuildInfo(); ok {
		if info.Main.Version != "" {
			version = info.Main.Version
		}
		for _, s := range info.Settings {
			switch {
			case s.Key == "vcs.revision":
				revision = ", revision " + s.Value[:min(12, len(s.Value))]
			case s.Key == "vcs.modified" && s.Value == "true":
				changed = " with changes"
			}
		}
	}
	return fmt.Sprintf("%s%s%s, %s %s/%s", version, revision, changed, runtime.Version(), runtime.GOOS, runtime.GOARCH)
}
