package panel

import (
	"strings"
	"testing"

	"alongside/props/catalog"
	"alongside/props/needs"
	"alongside/props/settings"
	"alongside/tui/desk"
)

// The title says how many near misses there are where not all are listed.
func TestTitleCountsNearMisses(t *testing.T) {
	c := &candidates{panel: panel{desk: desk.New(desk.Options{Catalog: &catalog.Catalog{}, Settings: settings.Default()}, nil)}}
	c.found = needs.Found{Near: make([]needs.Result, nearMisses), NearTotal: nearMisses + 7}
	if title := c.Title(); !strings.Contains(title, "40 nearest of 47 others") {
		t.Errorf("title: %s", title)
	}
}
