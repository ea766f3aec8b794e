package foundry

import (
	"strconv"

	"alongside/props"
)

// anodicRow is a group of the anodic index with the materials that we count
// to it.
type anodicRow struct {
	Scope
	AnodicIndex
}

// AnodicIndex places a metal in the couples table of MIL-DTL-14072: volts
// below gold. The greater the index, the more readily the metal corrodes when
// it touches one of a smaller index in a wet place.
type AnodicIndex struct {
	Volts float64 // magnitude: 0.90 stands for −0.90 V
	Group string  // what the table lists in the group
	Cite
}

// Text is the index as printed: "0.90 V".
func (a *AnodicIndex) Text() string { return strconv.FormatFloat(a.Volts, 'f', 2, 64) + " V" }

// Anodic is the material's place in the anodic index; ok is false when the
// table has no group for it.
func (b *Book) Anodic(m *props.Material) (a AnodicIndex, ok bool) {
	for _, r := range b.anodic {
		if r.Admits(m) {
			return r.AnodicIndex, true
		}
	}
	return AnodicIndex{}, false
}
