package part

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"alongside/props/spelling"
	"alongside/units"
)

// Media is a set of what fills or surrounds a part.
type Media uint32

// Medium is what was said of the surroundings of a part, read.
type Medium struct {
	Media   Media
	PH      *[2]float64 // lowest and highest; nil where it was not said
	Celsius *[2]float64 // of the medium, coldest and hottest; nil where it was not said
}

// media are the known ones. What touches the part says a fact of it too.
var media = [...]struct {
	id    string
	fact  Facts
	said  string // phrases that name it anywhere in a sentence
	typed string // phrases that name it only where a medium is asked for
}{
	{"water", Fluid, "cooling water|condensate|in water|of water|water at|hot water|cold water|tap water|river water", "water|fresh water|rain"},
	{"drinking-water", PotableWater, "drinking water|potable water", "potable"},
	{"sea-water", SeaWater, "sea water|seawater|salt water", "marine|brackish water"},
	{"deicing-salt", Outdoors, "road salt|deicing salt", "de icing salt|salt spray|brine"},
	{"glycol", Fluid, "glycol|ethylene glycol|propylene glycol|coolant|antifreeze", "glycol water|water glycol coolant|engine coolant"},
	{"brake-fluid", Fluid, "brake fluid", "dot 3|dot 4"},
	{"gasoline", Fluid, "gasoline", "petrol|gas fuel"},
	{"ethanol", Fluid, "ethanol|gasohol|methanol", "ethyl alcohol|alcohol|e10|e15|e85|m85|ethanol blend"},
	{"diesel", Fluid, "diesel fuel|biodiesel", "diesel|fuel oil|kerosene|jet fuel"},
	{"oil", Fluid, "hydraulic oil|gear oil|engine oil|lubricating oil|in oil|hot oil", "oil|mineral oil|motor oil|transmission oil"},
	{"ammonia", 0, "ammonia", "anhydrous ammonia|amines"},
	{"food", 0, "food contact", "food|foods|juice|wine|vinegar|milk|beer"},
	{"steam", 0, "in steam|of steam|steam at", "steam"},
	{"mine", Hazardous, "in a mine|coal mine|in the mine", "mine|mine air|mine water"},
	{"acid", Fluid, "", "acid|acids|acidic|sulfuric acid|hydrochloric acid|nitric acid|acetic acid|phosphoric acid"},
	{"alkali", Fluid, "", "alkali|alkaline|caustic|lye|caustic soda|sodium hydroxide|potash"},
}

// fillers are words beside a medium that do not change which one it is.
var fillers = strings.Fields("50 a about and at aqueous cold hot in mixed of or ph the to up warm with")

// MediaIDs lists the known media.
func MediaIDs() []string {
	ids := make([]string, len(media))
	for i := range media {
		ids[i] = media[i].id
	}
	return ids
}

// ParseMedia is the medium of an id, as rules name it.
func ParseMedia(id string) (Media, bool) {
	i := slices.Index(MediaIDs(), id)
	if i < 0 {
		return 0, false
	}
	return 1 << i, true
}

// IDs lists the media of a set.
func (s Media) IDs() []string {
	var ids []string
	for i := range media {
		if s&(1<<i) != 0 {
			ids = append(ids, media[i].id)
		}
	}
	return ids
}

// String lists the media in words.
func (s Media) String() string { return strings.ReplaceAll(strings.Join(s.IDs(), ", "), "-", " ") }

// Facts are what the media say of the part.
func (s Media) Facts() Facts {
	var all Facts
	for i := range media {
		if s&(1<<i) != 0 {
			all |= media[i].fact
		}
	}
	return all
}

// MediaOf are the media that facts name: sea water and drinking water. A fluid, a
// place outdoors or in hazardous air is no one medium.
func MediaOf(facts Facts) Media {
	var all Media
	for i := range media {
		if media[i].fact&(SeaWater|PotableWater)&facts != 0 {
			all |= 1 << i
		}
	}
	return all
}

const span = `(?:\s*(?:\.\.|to|[-–])\s*([-−+]?\d+(?:\.\d+)?))?`

var (
	acidity = spelling.Pattern{Expr: `(?i)\bph\s*(?:of\s+)?(\d+(?:\.\d+)?)` + span}
	warmth  = spelling.Pattern{Expr: `(?i)[-−+]?\d+(?:\.\d+)?` + span + `\s*(?:°\s*|deg(?:rees)?\s+)?[CFK]\b`}
	share   = spelling.Pattern{Expr: `(?i)\d+(?:\.\d+)?` + span + `\s*(?:%|percent\b)`}
)

// ReadMedium understands "coolant 50 % glycol, 110 °C" and "water, pH 6 to 8". A
// share is kept in the text only: no rule looks at it. Every other word must be
// known, so that nothing that touches the metal is passed over; the error is an *Error.
func ReadMedium(typed string) (Medium, error) {
	var m Medium
	rest := typed
	if found := acidity.Regexp().FindStringSubmatch(rest); found != nil {
		lo, _ := strconv.ParseFloat(found[1], 64)
		hi := lo
		if found[2] != "" {
			hi, _ = strconv.ParseFloat(found[2], 64)
		}
		if hi > 14 || lo > hi {
			return m, &Error{Field: FieldMedium, Typed: typed, Problem: "a pH lies between 0 and 14, the lower first", Remedy: "type it like pH 7 or pH 6 to 8"}
		}
		m.PH = &[2]float64{lo, hi}
		rest = acidity.Regexp().ReplaceAllString(rest, " ")
	}
	if found := warmth.Regexp().FindString(rest); found != "" {
		at, err := Temperatures(found, units.NoUnit)
		if err != nil {
			return m, &Error{Field: FieldMedium, Typed: typed, Err: err}
		}
		m.Celsius = &at
		rest = strings.Replace(rest, found, " ", 1)
	}
	rest = share.Regexp().ReplaceAllString(rest, " ")
	set, strange := mediaIn(strings.FieldsFunc(strings.ToLower(rest), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }))
	known := "the media known are " + strings.Join(MediaIDs(), ", ")
	switch {
	case strange != "":
		return m, &Error{Field: FieldMedium, Typed: typed, Problem: fmt.Sprintf("%q is not known", strange), Remedy: known}
	case set == 0:
		return m, &Error{Field: FieldMedium, Typed: typed, Problem: "names no medium", Remedy: known}
	}
	m.Media = set
	return m, nil
}

// mediaIn reads words, the longest phrase first, and gives the first word that no
// medium has. The water of a solution is not a medium of its own.
func mediaIn(words []string) (set Media, strange string) {
	const longest = 3 // words in a phrase of the table
	for len(words) > 0 {
		n := min(longest, len(words))
		for ; n > 0; n-- {
			if i := mediumOf(strings.Join(words[:n], " ")); i >= 0 {
				set |= 1 << i
				break
			}
		}
		if n == 0 && !slices.Contains(fillers, words[0]) {
			return set, words[0]
		}
		words = words[max(n, 1):]
	}
	for _, id := range []string{"glycol", "acid", "alkali"} {
		if m, _ := ParseMedia(id); set&m != 0 {
			set &^= 1
		}
	}
	return set, ""
}

func mediumOf(phrase string) int {
	for i := range media {
		m := &media[i]
		if phrase == strings.ReplaceAll(m.id, "-", " ") || slices.Contains(strings.Split(m.said+"|"+m.typed, "|"), phrase) {
			return i
		}
	}
	return -1
}
