package props

import (
	"fmt"
	"strings"

	"alongside/props/spelling"
)

// UnknownProperty is the error for a word that names no property.
type UnknownProperty struct {
	Typed   string
	Nearest PropertyID // NoProperty: nothing is near
}

func (e *UnknownProperty) Error() string {
	if e.Nearest == NoProperty {
		return fmt.Sprintf("no property %q; use one of: %s", e.Typed, strings.Join(PropertyIDs(), ", "))
	}
	return fmt.Sprintf("no property %q; nearest: %s", e.Typed, e.Nearest)
}

// ResolveProperty finds the property that a person means: by its id, its name
// or a usual word for it, in any case, with blanks or hyphens for underscores.
// The error is an *UnknownProperty.
func ResolveProperty(typed string) (PropertyID, error) {
	key := func(s string) string {
		return strings.NewReplacer(" ", "_", "-", "_").Replace(strings.ToLower(strings.TrimSpace(s)))
	}
	want := key(typed)
	names := map[string]PropertyID{}
	var known []string
	for _, p := range Properties() {
		for _, name := range p.Words() {
			name = key(name)
			if name == want {
				return p, nil
			}
			if _, taken := names[name]; !taken {
				names[name] = p
				known = append(known, name)
			}
		}
	}
	return NoProperty, &UnknownProperty{typed, names[spelling.Nearest(want, known)]}
}

// InSentence is a property's name as it stands inside a sentence: names of
// people and signs of a scale keep their capitals.
func InSentence(name string) string {
	first, _, _ := strings.Cut(name, " ")
	switch first {
	case "Brinell", "Rockwell", "Charpy", "Izod", "Poisson's", "Poisson":
		return name
	}
	if len(first) > 1 && first[1] >= 'A' && first[1] <= 'Z' { // HRB, KIc
		return name
	}
	return strings.ToLower(name[:min(1, len(name))]) + name[min(1, len(name)):]
}
