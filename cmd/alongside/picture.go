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
in characters; --out FILE.svg writes a drawing.`,
		Example: `  alongside picture tensile gray-30 a356-t6-pm a380-f-die
  alongside picture growth gray-30 a356-t6-pm --units si`,
		Args:              cobra.MinimumNArgs(2),
		ValidArgsFunction: p.completeMaterials,
	}
	v := p.viewFlags(cmd)
	out := svgFlag(cmd)
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

// svgFlag adds the flag of the commands that draw.
func svgFlag(cmd *cobra.Command) *string {
	return cmd.Flags().String("out", "", "write the picture to this `FILE`.svg")
}

// printOrDraw prints a document, or writes its pictures to a file that is not there.
func (p *program) printOrDraw(d *report.Doc, out string, format *choice) error {
	if out == "" {
		return p.printDoc(d, format)
	}
	if !strings.EqualFold(filepath.Ext(out), ".svg") {
		return fmt.Errorf("--out %s: a picture is written as .svg", out)
	}
	text, err := d.SVG()
	if err == nil {
		err = disk.New(out, []byte(text))
	}
	if err != nil {
		return &failure{exitFindings, err}
	}
	fmt.Fprintf(p.err, "alongside: written to %s\n", out)
	return nil
}
