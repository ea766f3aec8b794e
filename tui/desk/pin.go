package desk

import (
	"fmt"
	"strings"

	"alongside/props"
	"alongside/props/compare"
)

// Pin puts materials on the bench, and goes to the last of them.
func (d *Desk) Pin(list ...*props.Material) {
	before := len(d.Pins())
	d.Change(func(b *compare.Bench) {
		for _, mat := range list {
			b.Pin(mat)
		}
	})
	last := list[len(list)-1]
	switch n := len(d.Pins()) - before; {
	case n == 0 && len(list) == 1:
		d.Sayf("%s is on the bench already", last.Name())
	case len(list) == 1:
		d.Sayf("pinned %s", last.Name())
	default:
		d.Sayf("pinned %d, on the bench before %d", n, len(list)-n)
	}
	d.GoTo(last, d.CursorProperty())
}

// Replace puts a material in the place of the pin under the cursor.
func (d *Desk) Replace(mat *props.Material) {
	pin, i, property := d.CursorPin(), d.CursorIndex(), d.CursorProperty()
	d.Change(func(b *compare.Bench) { b.Replace(i, mat) })
	d.GoTo(mat, property)
	d.Sayf("%s, was %s", mat.Name(), pin.Name())
}

// mostNames is how many materials a paste can pin.
const mostNames = 100

// names are those of a list, one a line or separated by commas or tabs.
func names(text string) []string {
	var out []string
	for _, name := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("\n\r\t,;", r) }) {
		if name = strings.TrimSpace(name); name != "" {
			out = append(out, name)
		}
	}
	return out
}

// NamesMaterials reports whether a pasted text has the name of a material.
func (d *Desk) NamesMaterials(text string) bool {
	list := names(text)
	for _, name := range list[:min(len(list), mostNames)] {
		if m, _ := d.Catalog.Named(name); m != nil {
			return true
		}
	}
	return false
}

// PasteMaterials pins every material that a pasted text names.
func (d *Desk) PasteMaterials(text string) {
	var found []*props.Material
	var unknown, near []string
	list := names(text)
	left := max(len(list)-mostNames, 0)
	for _, name := range list[:len(list)-left] {
		mat, named, err := d.Catalog.ResolveNear(name)
		switch {
		case err != nil:
			unknown = append(unknown, err.Error())
			continue
		case !named:
			near = append(near, fmt.Sprintf("; %s is taken as %s", name, mat.ID))
		}
		found = append(found, mat)
	}
	if len(found) > 0 {
		d.Pin(found...)
	}
	switch {
	case left > 0:
		d.Warnf("pinned %d of the first %d names of the paste; %d more were left out", len(found), mostNames, left)
	case len(unknown) > 0:
		d.Warnf("pinned %d%s; %s", len(found), strings.Join(near, ""), strings.Join(unknown, "; "))
	case len(found) > 0:
		d.Sayf("pinned %d from the paste%s", len(found), strings.Join(near, ""))
	}
}

// OwnRow warns on the row of a need or a merit, which has neither a unit nor a
// sense to change.
func (d *Desk) OwnRow() bool {
	switch {
	case d.CursorNeed() != nil:
		d.Warnf("a need has the unit and direction it was typed with; %s edits it", d.Label("n"))
		return true
	case d.CursorDuty() != nil:
		d.Warn("a merit is a ratio to the baseline: no unit, and more is better")
		return true
	}
	return false
}
