package panel

import (
	"strings"

	"alongside/props/call/sheets"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// calls lists the kept calls, that changed last first.
type calls struct {
	panel
	all     []*sheets.Sheet
	deleted []string // ids, to be brought back
}

// NewCalls opens the list of kept calls.
func NewCalls(d *desk.Desk) desk.Screen {
	if d.Held == nil {
		d.Warnf("calls are not kept: %v", d.Unkept)
		return nil
	}
	d.SaveCall()
	p := &calls{panel: panel{desk: d, about: "Lists the calls kept on this machine, to open, copy or delete."}}
	p.read()
	return p
}

func (p *calls) read() {
	var err error
	if p.all, err = p.desk.Sheets.List(""); err != nil {
		p.problem = err.Error()
	}
}

func (p *calls) Title() string { return "Calls: " + ui.Plural(len(p.all), "call") }

func (p *calls) Keys() ui.Keys {
	keys := ui.Keys{ui.On("n", "new", "begin a new call", p.begin)}
	if len(p.deleted) > 0 {
		keys = append(keys, ui.On("u", "undo delete", "bring the call deleted last back", p.restore))
	}
	if len(p.all) > 0 {
		keys = append(ui.Keys{
			ui.On("enter", "open", "put this call on the bench", func() { p.desk.OpenCall(p.at().ID) }),
			ui.On("d", "duplicate", "make a copy of this call", p.duplicate),
			ui.On("x delete", "delete", "delete this call; u brings it back", p.remove),
		}, keys...)
	}
	return append(keys, p.list.Keys()...)
}

func (p *calls) begin() {
	if p.desk.NewCall() {
		p.desk.Open(NewFinder(p.desk))
	}
}

func (p *calls) at() *sheets.Sheet { return p.all[ui.Clamp(p.list.At, 0, len(p.all)-1)] }

func (p *calls) duplicate() {
	h, err := p.desk.Sheets.Copy(p.at().ID)
	if err == nil {
		err = h.Close()
	}
	p.done(err, "made a copy")
}

func (p *calls) remove() {
	s := p.at()
	if s.ID == p.desk.Held.Sheet().ID {
		p.desk.Warn("this call is on the bench; open another before you delete it")
		return
	}
	err := p.desk.Sheets.Delete(s.ID)
	if err == nil {
		p.deleted = append(p.deleted, s.ID)
	}
	p.done(err, "deleted "+s.Title()+"; u brings it back")
}

func (p *calls) restore() {
	n := len(p.deleted) - 1
	err := p.desk.Sheets.Restore(p.deleted[n])
	if err == nil {
		p.deleted = p.deleted[:n]
	}
	p.done(err, "it is back")
}

func (p *calls) done(err error, words string) {
	p.read()
	if err != nil {
		p.desk.Warn(err.Error())
	} else {
		p.desk.Say(words)
	}
}

func (p *calls) View(w, h int) []string {
	t := p.desk.Theme
	cols := ui.Columns{{Head: "changed", Width: 17}, {Head: "call", Width: min(w/3, 40)}, {Head: "pins"}}
	cols[2].Width = max(cols.Room(w)-1, 1)
	return p.list.Draw(ui.Listing{
		Head: append(p.problemLines(w), t.Dim.Of(cols.Heads())), Items: len(p.all),
		Line: func(i int, here bool) string {
			s := p.all[i]
			var pins []string
			for _, mat := range s.Call.Bench.Pins {
				pins = append(pins, mat.ID)
			}
			what := strings.Join(pins, ", ")
			if s.Broken != nil {
				what = "cannot be read: " + s.Broken.Error()
			}
			return t.Line(cols.Line(s.Changed.Format("2 Jan 2006 15:04"), ui.Plain(s.Title()), ui.Plain(what)), here, t.Text)
		},
	}, h)
}
