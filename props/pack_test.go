package props

import (
	"bytes"
	"errors"
	"testing"
)

func TestPackRoundTrip(t *testing.T) {
	c := shop(t)
	packed := Pack(c)
	back, err := Unpack(string(packed))
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(Pack(back), packed) {
		t.Error("packing what was unpacked gives other bytes")
	}
	have, want := back.Material("x1-f-sand"), get(t, c, "x1-f-sand")
	for _, p := range Properties() {
		a, b := have.Figures(p), want.Figures(p)
		if len(a) != len(b) {
			t.Fatalf("%s: %d figures, want %d", p, len(a), len(b))
		}
		for i := range a {
			if a[i].Value != b[i].Value || *a[i].Cond != *b[i].Cond || a[i].Basis != b[i].Basis || a[i].Source.ID != b[i].Source.ID {
				t.Errorf("%s: have %+v, want %+v", p, a[i], b[i])
			}
		}
	}
}

func FuzzUnpack(f *testing.F) {
	c, err := LoadFiles(nil, []File{{"a.toml", []byte(figures + `density = "2.70 g/cm3"`)}})
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(Pack(c)))
	f.Fuzz(func(t *testing.T, in string) {
		if _, err := Unpack(in); err != nil && !errors.Is(err, ErrPacked) {
			t.Fatal(err)
		}
	})
}

// The materials read alone are those of the whole catalog.
func TestUnpackMaterials(t *testing.T) {
	packed := string(Pack(shop(t)))
	whole, err := Unpack(packed)
	if err != nil {
		t.Fatal(err)
	}
	few, err := UnpackMaterials(packed, []string{"gray-30", "x1-f-sand"})
	if err != nil || few == nil {
		t.Fatalf("have %v, %v", few, err)
	}
	if len(few.Alloys) != 2 || len(few.Sources) != len(whole.Sources) {
		t.Errorf("%d alloys and %d sources, want 2 and %d", len(few.Alloys), len(few.Sources), len(whole.Sources))
	}
	for _, m := range few.Materials {
		other := whole.Material(m.ID)
		for _, p := range Properties() {
			a, b := m.Figures(p), other.Figures(p)
			if len(a) != len(b) || m.Absent(p) != other.Absent(p) {
				t.Fatalf("%s, %s: %d figures, want %d", m.ID, p, len(a), len(b))
			}
			for i := range a {
				if a[i].Value != b[i].Value || *a[i].Cond != *b[i].Cond || a[i].Source.ID != b[i].Source.ID {
					t.Errorf("%s, %s: have %+v, want %+v", m.ID, p, a[i], b[i])
				}
			}
		}
	}
	if none, err := UnpackMaterials(packed, []string{"x1-f-sand", "no-such"}); none != nil || err != nil {
		t.Errorf("an unknown id: have %v, %v", none, err)
	}
}
