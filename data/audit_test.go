package data_test

import (
	"os"
	"testing"

	"alongside/props/audit"
	"alongside/props/catalog"
)

// Every finding of the audit is corrected in the data, or kept with a written
// reason beside the figure.
func TestAuditIsAnswered(t *testing.T) {
	c, err := catalog.Load(os.DirFS("."))
	if err != nil {
		t.Fatal(err)
	}
	found := audit.Check(c)
	open := 0
	for _, f := range found {
		if f.Open() {
			open++
			t.Error(f)
		}
	}
	t.Logf("%d materials, %d figures, %d findings explained", len(c.Materials), c.FigureCount(), len(found)-open)
}
