package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"alongside/data"
)

const (
	demoCall   = "pump-bracket"
	demoRemark = "Demo: the foundry, its figures, the call and the part are invented; the published figures are not."
)

// openDemo gives the program a data folder of its own with the files of an
// invented foundry, so that of the user's only the settings are read and nothing
// is written. The folder
// is gone after remove. Materials named beside the demo are an error.
func (p *program) openDemo(named []string) (remove func(), err error) {
	if len(named) > 0 {
		return nil, errors.New("--demo brings its own materials; leave " + strings.Join(named, " ") + " out")
	}
	dir, err := os.MkdirTemp("", "alongside-demo-")
	if err != nil {
		return nil, &failure{exitFindings, err}
	}
	remove = func() { _ = os.RemoveAll(dir) }
	files, err := fs.Sub(data.Demo, "demo")
	if err == nil {
		err = os.CopyFS(filepath.Join(dir, "alongside"), files)
	}
	if err == nil {
		env := p.env
		p.env = func(name string) string {
			if name == "XDG_DATA_HOME" {
				return dir
			}
			return env(name)
		}
		p.catalog, p.invented = p.builtIn, demoRemark
		err = p.addHouse([]string{filepath.Join(dir, "alongside", "house.toml"), filepath.Join(dir, "alongside", "invented-bars.csv")})
	}
	if err != nil {
		remove()
		return nil, &failure{exitFindings, err}
	}
	return remove, nil
}
