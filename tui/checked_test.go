package tui

import (
	"errors"
	"testing"

	"alongside/props/catalog"
	"alongside/props/shelf"
)

// Enter on a source card marks the figure that is shown; who looked it up is
// asked once, and undo does not bring the old catalog back.
func TestMarkChecked(t *testing.T) {
	d := plainDesk(t, 100, 40, usual...)
	base, checks, refuse := d.m.Catalog, []catalog.Check(nil), error(nil)
	d.m.Check = func(c catalog.Check) (*catalog.Catalog, error) {
		if refuse != nil {
			return nil, refuse
		}
		checks = append(checks, c)
		text, err := shelf.Merge("checked.toml", nil, checks)
		if err != nil {
			return nil, err
		}
		return catalog.LoadFiles(base, []catalog.File{{Name: "checked.toml", Content: text}})
	}
	d.press("right", "b") // a change to undo
	d.press("enter")
	d.want("Source: ")
	d.want("enter checked")
	d.press("enter")
	d.want("Checked by the shop")
	d.press("ctrl+u")
	d.typeText("2018; Table 2")
	d.press("enter")
	d.want("write three things with a semicolon between them")
	d.typeText(";")
	d.press("enter")
	d.want("by is missing; write who looked it up")
	d.typeText(" JK")
	refuse = errors.New("the disk is full")
	d.press("enter")
	d.want("the disk is full")
	refuse = nil
	d.press("enter")
	d.want("checked by the shop: edition 2018")
	if len(checks) != 1 || checks[0].Edition != "2018" || checks[0].Table != "Table 2" || checks[0].By != "JK" || checks[0].On == "" {
		t.Fatalf("%+v", checks)
	}
	d.press("esc", "down", "enter", "enter") // the next figure
	d.want("; JK")
	d.press("esc", "esc", "u", "up", "enter")
	d.want("checked by the shop: edition 2018")
}
