package data

import (
	"testing"

	"alongside/props/foundry"
	"alongside/props/watch"
)

func TestProcessFiles(t *testing.T) {
	for _, e := range ProcessMistakes() {
		t.Error(e)
	}
}

func BenchmarkLoadProcess(b *testing.B) {
	c := Catalog()
	for b.Loop() {
		book, err := foundry.Load(c, ProcessFiles, "process/*.toml")
		if err != nil {
			b.Fatal(err)
		}
		if _, err := watch.Load(c, book, WatchFiles, "process/watch/*.toml"); err != nil {
			b.Fatal(err)
		}
	}
}
