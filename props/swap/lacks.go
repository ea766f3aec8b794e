package swap

import "strings"

// Lacks is the field of the part that the line waits for; ok is false where it
// waits for none.
func (l *Line) Lacks() (f Field, ok bool) {
	for _, n := range []struct {
		need  string
		field Field
	}{
		{needMass, FieldMass}, {needWall, FieldWall}, {needLength, FieldLength}, {needCase, FieldCase}, {needRange, FieldRange},
		{needMate, FieldMate}, {needFit, FieldFit}, {needStress, FieldStress}, {needPrice, FieldPrice},
	} {
		if strings.HasPrefix(l.Need, n.need) {
			return n.field, true
		}
	}
	return 0, false
}
