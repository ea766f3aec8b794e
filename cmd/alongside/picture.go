package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"alongside/props/disk"
	"alongside/props/report"
)

func (p *program) pictureCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "picture PROPERTY|heat|growth ID...",
		Short: "Draw a property of several materials, strength over temperature, or growth",
		Long: `Draw a property of the materials with their ranges against the first of them, or
the baseline; heat draws the tensile strength over temperature, growth how a length
grows. What must not be compared is hollow and says so. In the terminal it is drawn
in characters; --out FILE.svg or FILE.png writes a drawing.`,
		Example: `  alongside picture tensile gray-30 a356-t6-pm a380-f-die
  alongside picture growth gray-30 a356-t6-pm --units si`,
		Args:              cobra.MinimumNArgs(2),
		ValidArgsFunction: p.completeMaterials,
	}
	v := p.viewFlags(cmd)
	out := drawFlag(cmd)
	format := formatFlag(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		b, err := v.bench(p, args[1:])
		if err != nil {
			return err
		}
		d, err := report.PictureDoc(b, args[0])
		if err != nil {
			return &failure{exitFindings, err}
		}
		return p.printOrDraw(d, *out, format)
	}
	return cmd
}

// drawFlag adds the flag of the commands that draw.
func drawFlag(cmd *cobra.Command) *string {
	return cmd.Flags().String("out", "", "write the picture to this `FILE`, .svg or .png")
}

// printOrDraw prints a document, or writes its pictures to a file that is not there.
func (p *program) printOrDraw(d *report.Doc, out string, as *choice) error {
	if out == "" {
		return p.printDoc(d, as)
	}
	format := strings.ToLower(strings.TrimPrefix(filepath.Ext(out), "."))
	if format != "svg" && format != "png" {
		return fmt.Errorf("--out %s: a picture is written as .svg or .png", out)
	}
	drawn, err := d.Picture(format)
	if err == nil {
		err = disk.New(out, drawn)
	}
	if err != nil {
		return &failure{exitFindings, err}
	}
	fmt.Fprintf(p.err, "alongside: written to %s\n", out)
	return nil
}
