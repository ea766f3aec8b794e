package main

import (
	"testing"

	"alongside/data"
)

// Three calls as they come, with the published figures.
func TestBrief(t *testing.T) {
	for name, args := range map[string][]string{
		"brief-bracket": {"brief", "gray-30", "a356-t6-pm", "--mass", "12 lb", "--wall", "3/8 in", "--case", "plate", "--service", "-20..250 F", "--mate", "1045-cold-drawn-wrought", "--need", "yield >= 20 ksi"},
		"brief-lever":   {"brief", "zn-3-die", "a380-f-die", "az91d-die", "--mass", "0.5 lb", "--with", "crimp"},
		"brief-housing": {"brief", "c83600-sand", "za-27-sand", "za-12-sand", "--mass", "3 lb", "--service", "70..200 F", "--with", "press-fit"},
	} {
		t.Run(name, func(t *testing.T) { keep(t, name, try(data.Catalog, args...), exitOK) })
	}
	t.Run("brief-alone", func(t *testing.T) { keep(t, "brief-alone", try(data.Catalog, "brief", "gray-30"), exitUsage) })
}
