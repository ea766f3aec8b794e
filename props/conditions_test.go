package props

import (
	"strings"
	"testing"
)

func condition(t *testing.T, words ...string) Conditions {
	t.Helper()
	var c Conditions
	for _, s := range words {
		if !c.Add(s) {
			t.Fatalf("%q is not understood", s)
		}
	}
	return c
}

// Each condition is written as it is read.
func TestConditionsReadBack(t *testing.T) {
	for _, s := range []string{"0.2 % offset", "0.5 % extension under load", "in 2 in", "in 5D", "500 kgf/10 mm", "5×10^8 cycles", "10^7 cycles", "rotating bending",
		"68–212 °F", "at 300 °F", "after 10000 h", "separately cast bar", "class 2", "section bar 30 mm", "aged", "(what else)", OneHeat} {
		typed := strings.NewReplacer("5×10^8 cycles", "5e8 cycles", "10^7 cycles", "1e7 cycles").Replace(s)
		c := condition(t, typed)
		if have := c.String(); have != s {
			t.Errorf("%q is written %q", typed, have)
		}
	}
	if c := condition(t, "0.5 % EUL", "(a)", "(b)"); c.String() != "0.5 % extension under load; (a; b)" {
		t.Error(c.String())
	}
	for _, s := range []string{"", "in 3 cubits", "class", "section", "bar", "at noon", "at 20–30 °C", "after 3 days", "after -3 h", "0 % offset", "-1 cycles", "0 kgf/10 mm", "500 kgf/x mm", "212–68 °F", "quickly"} {
		if c := (Conditions{}); c.Add(s) {
			t.Errorf("%q is read as %q", s, c.String())
		}
	}
}

func TestRoomTemperature(t *testing.T) {
	for words, want := range map[string]bool{"": true, "at 75 °F": true, "at 15 °C": true, "at 36 °C": false, "at 300 °F": false, "after 1 h": false} {
		c := Conditions{}
		if words != "" {
			c = condition(t, words)
		}
		if c.RoomTemperature() != want {
			t.Errorf("%q: %v", words, !want)
		}
	}
}

// What a figure states stands over what its block states, and nothing is lost.
func TestConditionsWith(t *testing.T) {
	block := condition(t, "0.2 % offset", "in 2 in", "500 kgf/10 mm", "separately cast bar", "at 75 °F", "68–212 °F", "(of the block)")
	own := condition(t, "0.5 % EUL", "in 5D", "3000 kgf/10 mm", "1e7 cycles", "axial", "at 300 °F", "after 10 h", "68–572 °F", "class 1", "aged", "cut from casting", "section 1 in", "(own)")
	if have, want := block.With(Conditions{}), block; have != want {
		t.Errorf("nothing said: %s", have.String())
	}
	all := block.With(own)
	want := own
	want.Note = "of the block; own"
	if all != want {
		t.Errorf("have %s\nwant %s", all.String(), want.String())
	}
	if none := all.WithoutRange(); none.HasRange || strings.Contains(none.String(), "68") || none.HasAt != all.HasAt {
		t.Errorf("with a range still: %s", none.String())
	}
}

// A block's conditions reach only the properties that they bear on.
func TestConditionsFor(t *testing.T) {
	all := condition(t, "0.2 % offset", "in 2 in", "500 kgf/10 mm", "1e7 cycles", "axial", "68–212 °F", "separately cast bar", "class 1")
	for id, want := range map[PropertyID]string{
		YieldStrength:    "0.2 % offset; separately cast bar; class 1",
		Elongation:       "in 2 in; separately cast bar; class 1",
		HardnessBrinell:  "500 kgf/10 mm; separately cast bar; class 1",
		FatigueStrength:  "10^7 cycles; axial; separately cast bar; class 1",
		ThermalExpansion: "68–212 °F",
		Density:          "",
	} {
		c := all.For(id.Info())
		if have := c.String(); have != want {
			t.Errorf("%s: have %q, want %q", id, have, want)
		}
	}
}
