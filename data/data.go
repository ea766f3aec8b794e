// Package data holds the published figures: the TOML that people edit and the
// Go data made from it, which the linker lays out so that reading costs nothing.
package data

import (
	"embed"
	"sync"

	"alongside/data/compiled"
	"alongside/props/catalog"
)

// Files are the data files as people edit them.
//
//go:embed *.toml
var Files embed.FS

// Demo is the data folder of an invented foundry: its figures, its test bars and
// two calls.
//
//go:embed demo
var Demo embed.FS

// Catalog returns the built-in catalog. It is put together once and shared.
var Catalog = sync.OnceValue(func() *catalog.Catalog {
	return &catalog.Catalog{Sources: compiled.SourceList, Families: compiled.FamilyList, Alloys: compiled.AlloyList, Materials: compiled.MaterialList, Everyday: compiled.Everyday,
		Words: catalog.Words{All: compiled.Words, Named: compiled.NamedWords, Own: compiled.OwnWords, Alloy: compiled.AlloyWords, Joined: compiled.JoinedWords, Common: compiled.Common}}
})
