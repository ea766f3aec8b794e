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

// hardness reads the name of a hardness scale. A Rockwell scale may end in W or S
// for the ball, a Vickers or Knoop number in its load, which is not kept.
func hardness(s string) (Unit, bool) {
	s = trimSpace(s)
	if len(s) < 2 || len(s) > 60 {
		return NoUnit, false
	}
	if u, ok := brinell(s); ok {
		return u, true
	}
	t := strings.ToUpper(s)
	if rest, ok := strings.CutPrefix(t, "ROCKWELL "); ok {
		t = "HR" + trimSpace(rest)
	}
	if strings.HasPrefix(t, "HR") && len(t) == 4 && (t[3] == 'W' || t[3] == 'S') {
		t = t[:3]
	}
	switch t {
	case "HRA":
		return HRANumber, true
	case "HRB":
		return HRBNumber, true
	case "HRC":
		return HRCNumber, true
	case "HRE":
		return HRENumber, true
	case "HRF":
		return HRFNumber, true
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
	rest, named := brinellName(s)
	var n [3]float64
	count := 0
	for i := 0; i < len(rest); {
		c := rest[i]
		switch {
		case isDigit(c):
			j := i
			for j < len(rest) && (isDigit(rest[j]) || rest[j] == '.') {
				j++
			}
			v, err := strconv.ParseFloat(rest[i:j], 64)
			if err != nil || count == len(n) {
				return NoUnit, false
			}
			n[count] = v
			count++
			i = j
		case c >= 'a' && c <= 'z':
			j := i
			for j < len(rest) && rest[j] >= 'a' && rest[j] <= 'z' {
				j++
			}
			switch rest[i:j] {
			case "kg", "kgf", "mm", "ball", "load", "at", "on", "a", "s":
			default:
				return NoUnit, false
			}
			i = j
		default:
			i++
			if strings.IndexByte(" /,()-·\u00a0", c) < 0 {
				return NoUnit, false
			}
		}
	}
	switch {
	case named && count == 0:
		return HBNumber, true
	case named && count == 1:
		return BrinellUnit(n[0], 10)
	case count == 2 && (named || strings.Contains(rest, "kg")):
		if u, ok := BrinellUnit(n[0], n[1]); ok {
			return u, true
		}
		return BrinellUnit(n[1], n[0])
	case count == 3 && named: // HBW 10/500/30, the last is the dwell time in seconds
		return BrinellUnit(n[1], n[0])
	}
	return NoUnit, false
}

// brinellName cuts the name of the scale off a text and lowers its case.
func brinellName(s string) (rest string, named bool) {
	s = strings.ToLower(s)
	for _, name := range [...]string{"brinell", "hbw", "hbs", "bhn", "hb"} {
		if rest, ok := strings.CutPrefix(s, name); ok {
			return rest, true
		}
	}
	return s, false
}
