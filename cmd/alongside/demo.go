package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"alongside/data"
	"alongside/props/disk"
)

const (
	demoCall    = "pump-bracket"
	demoFolders = "alongside-demo-" // in the folder for passing files
	demoRemark  = "Demo: the foundry, its figures, the call and the part are invented; the published figures are not."
)

// sweepDemos removes the folders of demos that were killed. A demo that runs
// holds the lock in its folder, or is about to take it.
func sweepDemos() {
	dirs, _ := filepath.Glob(filepath.Join(os.TempDir(), demoFolders+"*")) // the pattern is sound
	for _, dir := range dirs {
		if at, err := os.Lstat(dir); err != nil || !at.IsDir() || time.Since(at.ModTime()) < time.Minute {
			continue
		}
		if lock, err := disk.NewLock(filepath.Join(dir, "lock")); err == nil {
			lock.Release()
			_ = os.RemoveAll(dir)
		}
	}
}

// openDemo gives the program a data folder of its own with the files of an
// invented foundry, so that of the user's only the settings are read and nothing
// is written. The folder
// is gone after remove. Materials named beside the demo are an error.
func (p *program) openDemo(named []string) (remove func(), err error) {
	if len(named) > 0 {
		return nil, errors.New("--demo brings its own materials; leave " + strings.Join(named, " ") + " out")
	}
	sweepDemos()
	dir, err := os.MkdirTemp("", demoFolders)
	if err != nil {
		return nil, &failure{exitFindings, err}
	}
	lock, err := disk.NewLock(filepath.Join(dir, "lock"))
	if err != nil {
		return nil, &failure{exitFindings, errors.Join(err, os.RemoveAll(dir))}
	}
	remove = func() {
		lock.Release()
		_ = os.RemoveAll(dir)
	}
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
