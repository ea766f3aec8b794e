// Package sheets keeps call sheets: all that a call holds, each in a TOML file
// of the user's data folder that people can read.
//
//	[[call]]
//	version = 1
//	name = "Pump bracket"
//	begun = 2026-11-26T11:46:53Z
//	said = ["Can this be aluminum?"]        # the customer's words, a line each
//	pins = ["gray-30", "a356-t6-pm"]
//	baseline = "gray-30"
//	basis = "typical"
//	level_within = 0.02
//	units = "us"
//	delta = "percent"
//
//	[[row]]
//	property = "density"
//	unit = "g/cm3"
//
//	[[need]]
//	limit = "yield strength ≥ 20 ksi"
//	typed = "yield at least 20 ksi"
//
//	[[part]]
//	mass = "4.2 lb"
//	with = ["threads"]
//
//	[[note]]
//	at = 2026-11-26T11:52:10Z
//	text = "sleeve in the press fit?"
//
// Figures are not kept, so that a sheet shows those of the catalog it is opened
// with. What this version does not understand, such as a key of a later one, is
// named in Mistakes and written again as it was. A pin that the catalog does not
// have stands on the bench under its id, without figures.
package sheets

import (
	"time"

	"alongside/props"
	"alongside/props/call"
	"alongside/props/record"
	"alongside/props/sheet"
)

// version of the form of the file.
const version = 1

// Sheet is a call as it is kept.
type Sheet struct {
	ID      string // name of the file without its ending; "" before it is first saved
	Begun   time.Time
	Changed time.Time // when the file was last written
	Call    call.Call
	// Mistakes are what was not understood. It is kept in the file.
	Mistakes record.Errors
	// Broken is why nothing of the file could be read; nil where it could.
	Broken error
	kept   kept
	words  string // what a search looks in, in lower case
}

// Title names the sheet in one line: by its name, or else by its time.
func (s *Sheet) Title() string {
	if s.Call.Name != "" {
		return s.Call.Name
	}
	if s.Begun.IsZero() {
		return s.ID
	}
	return "call of " + s.Begun.Local().Format("2 Jan 2006 15:04")
}

// Missing lists the ids of the pins that the catalog does not have.
func (s *Sheet) Missing() []string {
	var ids []string
	for _, m := range s.Call.Bench.Pins {
		if m.Alloy.Family == unknownFamily {
			ids = append(ids, m.ID)
		}
	}
	return ids
}

// unknownFamily marks the stand-ins.
var unknownFamily = &props.Family{ID: "not-in-catalog", Name: "not in the catalog"}

// standIn takes the place of a material that the catalog does not have.
func standIn(id string) *props.Material {
	a := &props.Alloy{ID: id, Name: sheet.Clean(id), Family: unknownFamily, Note: "not in the catalog; kept from the call sheet"}
	return &props.Material{ID: id, Alloy: a}
}

// kept is what a version does not understand, to be written again: the keys of
// records that it does understand, by the record, and whole records.
type kept struct {
	keys  map[string]map[string]any
	whole []wholeRecord
}

type wholeRecord struct {
	kind string
	keys map[string]any
}

// put keeps a key of the record named.
func (k *kept) put(name, key string, v any) {
	if k.keys == nil {
		k.keys = map[string]map[string]any{}
	}
	if k.keys[name] == nil {
		k.keys[name] = map[string]any{}
	}
	k.keys[name][key] = v
}
