// Package data holds the published figures: the TOML that people edit and the
// packed form that the program reads at start.
package data

import (
	"embed"
	"sync"

	"alongside/props"
)

// Files are the data files as people edit them.
//
//go:embed *.toml
var Files embed.FS

//go:embed catalog.bin
var packed string

// Catalog returns the built-in catalog. It is read once and shared. A packed
// form that does not fit this build is a mistake of the build, not of the
// user, and panics; TestPackedIsCurrent guards it.
var Catalog = sync.OnceValue(func() *props.Catalog {
	c, err := props.Unpack(packed)
	if err != nil {
		panic(err)
	}
	return c
})

// Materials returns a catalog of the alloys to which the materials with exactly
// these ids belong, without reading the others; nil when an id is not in the
// built-in catalog.
func Materials(ids []string) *props.Catalog {
	c, err := props.UnpackMaterials(packed, ids)
	if err != nil {
		panic(err)
	}
	return c
}
