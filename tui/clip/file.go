package clip

import (
	"context"
	"os"
	"path/filepath"
)

// copyToFile saves the copy as copied.txt or copied.html in env.Dir, readable
// by the user only, in place of the last one. The file is complete or not
// changed: it is written under another name first.
func copyToFile(_ context.Context, p Payload, env Env) (Report, error) {
	name, content := "copied.txt", p.Text
	if p.HTML != "" {
		name, content = "copied.html", "<!DOCTYPE html>\n<title>Alongside</title>\n"+page(p)
	}
	path := filepath.Join(env.Dir, name)
	if err := replace(path, content); err != nil {
		return Report{}, err
	}
	return Report{Where: SavedFile, Path: path, HTML: p.HTML != ""}, nil
}

func replace(path, content string) (err error) {
	dir, name := filepath.Split(path)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return err
	}
	file, err := os.CreateTemp(dir, "."+name+"-*") // mode 0600
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			_ = os.Remove(file.Name())
		}
	}()
	_, err = file.WriteString(content)
	if err == nil {
		err = file.Sync()
	}
	if closed := file.Close(); err == nil {
		err = closed
	}
	if err != nil {
		return err
	}
	return os.Rename(file.Name(), path)
}
