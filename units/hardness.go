package units

import (
	"strconv"
	"strings"
)

// scaleNames are the names of hardness scales that may stand before a number,
// the longer first where one begins another.
var scaleNames = [...]string{
	"Rockwell A", "Rockwell B", "Rockwell C", "Rockwell E", "Rockwell F",
	"HRA", "HRB", "HRC", "HRE", "HRF", "Vickers", "HV", "Knoop", "HK",
	"Brinell", "HBW", "HBS", "HB", "BHN",
}

// hardness reads the name of a hardness scale from a folded text. A Rockwell scale
// may be written Rb and may end in W or S for the ball, a Vickers or Knoop number
// in its load, which is not kept.
func hardness(s string) (Unit, bool) {
	if u, ok := brinell(s); ok {
		return u, true
	}
	t := strings.ToUpper(s)
	for _, name := range [...]string{"ROCKWELL ", "HR", "R"} {
		scale, ok := strings.CutPrefix(t, name)
		scale = strings.TrimSpace(scale)
		if len(scale) == 2 && name == "HR" {
			scale = strings.TrimRight(scale, "WS")
		}
		if at := strings.Index("ABCEF", scale); ok && len(scale) == 1 && at >= 0 && t != "RA" { // Ra is a roughness
			return HRANumber + Unit(at), true
		}
	}
	switch strings.TrimRight(t, " 0123456789") {
	case "HV", "VICKERS", "VHN", "DPH":
		return HVNumber, true
	case "HK", "KNOOP", "KHN":
		return HKNumber, true
	}
	return NoUnit, false
}

// brinell reads the spellings of a Brinell scale: HB, BHN, HBW 10/500, HB
// 500/10, HB (3000 kgf/10 mm), HB500, 500 kgf/10 mm. Of two numbers the ball is
// the one that is 10, 5 or 2.5; a load alone goes with the 10 mm ball.
func brinell(s string) (Unit, bool) {
	rest, named := strings.ToLower(s), false
	for _, name := range [...]string{"brinell", "hbw", "hbs", "bhn", "hb"} {
		if after, ok := strings.CutPrefix(rest, name); ok {
			rest, named = after, true
			break
		}
	}
	n, ok := loads(rest)
	switch {
	case !ok:
	case named && len(n) == 0:
		return HBNumber, true
	case named && len(n) == 1:
		return BrinellUnit(n[0], 10)
	case len(n) == 2 && (named || strings.Contains(rest, "kg")):
		if u, ok := BrinellUnit(n[0], n[1]); ok {
			return u, true
		}
		return BrinellUnit(n[1], n[0])
	case len(n) == 3 && named: // HBW 10/500/30, the last is the dwell time in seconds
		return BrinellUnit(n[1], n[0])
	}
	return NoUnit, false
}

// loads reads the load, the ball and the dwell time of a Brinell scale, with their
// units or without. It fails for words that do not belong there.
func loads(s string) (n []float64, ok bool) {
	for _, word := range strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" /,()-*", r) }) {
		number := strings.TrimRight(word, "abcdefghijklmnopqrstuvwxyz")
		switch word[len(number):] {
		case "", "kg", "kgf", "mm", "ball", "load", "at", "on", "a", "s":
		default:
			return nil, false
		}
		if number != "" {
			v, err := strconv.ParseFloat(number, 64)
			if err != nil {
				return nil, false
			}
			n = append(n, v)
		}
	}
	return n, true
}
