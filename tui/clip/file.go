package clip

import (
	"alongside/props/disk"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"unicode"
)

// copyToFile saves the copy in env.Dir, or a new folder where that is "",
// readable by the user only, under the time and its name, beside those before it.
func copyToFile(_ context.Context, p Payload, env Env) (Report, error) {
	content := p.Text
	if p.HTML != "" {
		content = "<!DOCTYPE html>\n<title>Alongside</title>\n" + page(p)
	}
	dir := env.Dir
	if dir == "" {
		var err error
		if dir, err = os.MkdirTemp("", "alongside-copy-"); err != nil {
			return Report{}, err
		}
	}
	path := freeName(dir, env.now().Format("2006-01-02-150405-")+fileName(p.File))
	if err := disk.Replace(path, []byte(content)); err != nil {
		return Report{}, err
	}
	return Report{Where: SavedFile, Path: path, HTML: p.HTML != ""}, nil
}

// fileName is a name as it can stand in any folder: letters, digits, points and
// hyphens.
func fileName(name string) string {
	name = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsLetter(r), unicode.IsDigit(r), r == '.':
			return r
		}
		return '-'
	}, name)
	if name = strings.Trim(name, ".-"); name == "" {
		name = "copy"
	}
	if filepath.Ext(name) == "" {
		name += ".txt"
	}
	if r := []rune(name); len(r) > longestName {
		return string(r[len(r)-longestName:]) // the ending stays
	}
	return name
}

const longestName = 60

// freeName is a path in dir that no file has: the name, or with a number before
// its ending.
func freeName(dir, name string) string {
	ending := filepath.Ext(name)
	for i := 1; ; i++ {
		path := filepath.Join(dir, name)
		if i > 1 {
			path = filepath.Join(dir, fmt.Sprintf("%s-%d%s", strings.TrimSuffix(name, ending), i, ending))
		}
		if _, err := os.Lstat(path); err != nil {
			return path
		}
	}
}
