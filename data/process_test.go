package data

import (
	"testing"

	"alongside/props/foundry"
	"alongside/props/watch"
)

func TestProcessFiles(t *testing.T) {
	if _, err := foundry.Load(Catalog(), ProcessFiles, "process/*.toml"); err != nil {
		t.Fatal(err)
	}
}

func BenchmarkLoadProcess(b *testing.B) {
	c := Catalog()
	for b.Loop() {
		if _, err := foundry.Load(c, ProcessFiles, "process/*.toml"); err != nil {
			b.Fatal(err)
		}
	}
}

func TestWatchFiles(t *testing.T) {
	if _, err := watch.Load(Catalog(), Foundry(), WatchFiles, "process/watch/*.toml"); err != nil {
		t.Fatal(err)
	}
}
