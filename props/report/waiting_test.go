package report

import (
	"os"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
)

// What waits is exactly what the count of the main figures calls memory.
func TestWaitingIsWhatTheCountCallsMemory(t *testing.T) {
	c, err := catalog.Load(os.DirFS("../../data"))
	if err != nil {
		t.Fatal(err)
	}
	seen := map[*props.Figure]bool{}
	for _, w := range waitingOf(c) {
		for _, f := range w.memory {
			seen[f] = true
		}
		for _, p := range w.absent {
			if w.material.Has(p) {
				t.Errorf("%s has a figure of %s", w.material.ID, p)
			}
		}
	}
	if _, main := everydayTally(c); len(seen) != main.Memory || main.Memory == 0 {
		t.Errorf("%d figures wait, %d are counted", len(seen), main.Memory)
	}
}
