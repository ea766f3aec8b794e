package panel

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"alongside/props/catalog"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// newChecked asks for what belongs to a figure that was looked up: the one that
// is shown at the cursor.
func newChecked(d *desk.Desk) desk.Screen {
	shown := d.CursorRow().Cells[d.CursorIndex()].Figure
	var place *catalog.Place
	for o, f := range d.Catalog.Stated() {
		if f == shown {
			p := catalog.PlaceOf(o, f)
			place = &p
			break
		}
	}
	if place == nil {
		d.Warn("this value was worked out from published ones; look up those below")
		return nil
	}
	plain := strings.NewReplacer(";", ",")
	edition := shown.Source.Edition
	if strings.Contains(edition, "not stated") {
		edition = ""
	}
	const most = 90 // cells of each, so that all fit into the field
	known := ui.Cut(plain.Replace(edition), most) + "; " + ui.Cut(plain.Replace(shown.Table), most) + "; " + d.LookedUp
	p := newPrompt(d, "Checked by the shop", fmt.Sprintf("Your own copy of %s prints %s. Its edition; table or page; who looked it up. For another value than this use alongside shelf.",
		shown.Source.ID, place.Catalog), "", func(s string) error {
		parts := strings.Split(s, ";")
		if len(parts) != 3 {
			return errors.New("write three things with a semicolon between them: 2018; Table 2; JK")
		}
		for i := range parts {
			parts[i] = strings.TrimSpace(parts[i])
		}
		c := catalog.Check{Place: *place, Edition: parts[0], Table: parts[1], By: parts[2], On: time.Now().Format(time.DateOnly)}
		if field, problem, remedy := c.Problem(); problem != "" {
			return fmt.Errorf("%s %s; %s", field, problem, remedy)
		}
		with, err := d.Check(c)
		if err != nil {
			return err
		}
		d.LookedUp = c.By
		d.UseCatalog(with)
		if n := len(d.Screens) - 2; n >= 0 {
			d.Screens[n] = NewCard(d) // below this one
		}
		d.Say("checked by the shop; the catalog shows it so from now on")
		return nil
	})
	p.field, p.edits = ui.EditField(known), true
	return p
}
