package data

import (
	"embed"
	"errors"
	"sync"

	"alongside/props/foundry"
	"alongside/props/record"
	"alongside/props/watch"
)

// ProcessFiles are the files on casting processes as people edit them.
//
//go:embed process/*.toml
var ProcessFiles embed.FS

// Foundry returns what is published about casting processes. It is read from
// the TOML when first asked for, so that a start without it costs nothing,
// and shared. A mistake in the files is one of the build and panics;
// TestProcessFiles guards it.
var Foundry = sync.OnceValue(func() *foundry.Book {
	b, err := foundry.Load(Catalog(), ProcessFiles, "process/*.toml")
	if err != nil {
		panic(err)
	}
	return b
})

// WatchFiles are the rule files of the watch-outs as people edit them.
//
//go:embed process/watch/*.toml
var WatchFiles embed.FS

// Watch returns the watch-out rules; as for Foundry.
var Watch = sync.OnceValue(func() *watch.Rules {
	r, err := watch.Load(Catalog(), Foundry(), WatchFiles, "process/watch/*.toml")
	if err != nil {
		panic(err)
	}
	return r
})

// ProcessMistakes reads the process files and the watch-out rules again and
// returns every mistake in them.
func ProcessMistakes() record.Errors {
	var all, some record.Errors
	book, err := foundry.Load(Catalog(), ProcessFiles, "process/*.toml")
	if errors.As(err, &some) {
		all = append(all, some...)
	}
	if _, err := watch.Load(Catalog(), book, WatchFiles, "process/watch/*.toml"); errors.As(err, &some) {
		all = append(all, some...)
	}
	return all
}
