package cost

import (
	"math"
	"testing"
)

// Nothing that can be typed becomes an amount that is no amount, and a price reads back
// as it is written.
func FuzzParsePrice(f *testing.F) {
	for _, seed := range []string{"1.20/lb", "1.20 USD/lb", "€2.6/kg", "2.4-2.8 per kg", "3 $/piece", "18,000 $", "", "$", "/", "1//lb", "-1 $", "1e400 $", "about 3 $", "> 3 $", "3/piece/lb", "\xff1/lb", "$1€"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, typed string) {
		p, err := ParsePrice(typed)
		if err != nil {
			if err.Error() == "" {
				t.Error("an error without words")
			}
			return
		}
		if a := p.Amount; !(a.Lo <= a.Hi) || math.IsInf(a.Lo, 0) || math.IsInf(a.Hi, 0) {
			t.Errorf("%q became %v to %v", typed, a.Lo, a.Hi)
		}
		again, err := ParsePrice(p.String())
		if err != nil || again.String() != p.String() {
			t.Errorf("%q is written %q, which reads as %q: %v", typed, p, again, err)
		}
	})
}
