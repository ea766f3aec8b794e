// Package settings is what a user likes otherwise than the program has it, kept
// in one TOML file of a key a line. One table holds every setting with its
// default, meaning and reader; the file that is printed, what is read and the
// list in the README come from it.
package settings

import (
	"errors"
	"io/fs"
	"path/filepath"
	"slices"

	"alongside/props/compare"
	"alongside/props/disk"
	"alongside/props/record"
)

// Settings is what the file says, and the default where it says nothing.
type Settings struct {
	// Bench is an empty bench with the units, the basis, the band, the delta
	// and the rows to begin with.
	Bench      compare.Bench
	Contrast   bool   // colors of high contrast
	Background string // auto, light, dark
	NoMouse    bool
	Copy       string // format of what is copied
	Clipboard  string // auto, system, terminal, file
	Keys       []Key  // in the order of the file
	// Mistakes are the lines that cannot be used; the rest is.
	Mistakes record.Errors

	keys *record.Record // section of the keys; nil without a file
}

// Key asks for other keys in the place of one that the program has.
type Key struct {
	Name string
	To   []string
}

// Default is what one has who sets nothing. It stands here beside the words of the
// table because to read these would cost a tenth of a start; a test holds the two
// equal.
func Default() *Settings {
	return &Settings{Bench: compare.NewBench().Clone(), Background: "auto", Copy: "text", Clipboard: "auto"}
}

// Path is where the file is looked for; "" where the user has no folder of his
// own.
func Path(goos string, getenv func(string) string) string {
	folder := disk.Config.Folder(goos, getenv)
	if folder == "" {
		return ""
	}
	return filepath.Join(folder, "settings.toml")
}

// largest is how many bytes the file may have; with every line it has 6,000.
const largest = 1 << 18

// Load reads the file. One that cannot be read at all is a mistake, and the
// defaults hold; one that does not exist is none.
func Load(path string) *Settings {
	content, err := disk.Read(path, largest)
	if path == "" || errors.Is(err, fs.ErrNotExist) {
		return Default()
	}
	s := Default()
	s.read(filepath.ToSlash(path), content)
	var unread *disk.Error
	if errors.As(err, &unread) {
		s.Mistakes = record.Errors{{File: filepath.ToSlash(path), Line: 1, Problem: unread.Problem, Remedy: unread.Remedy}}
	}
	return s
}

// Refuse reports that a key cannot be as the file asks, and takes it out.
func (s *Settings) Refuse(name, problem, remedy string) {
	s.keys.Fail(name, problem, remedy)
	s.Keys = slices.DeleteFunc(slices.Clone(s.Keys), func(k Key) bool { return k.Name == name })
	s.Mistakes = s.Mistakes.Sorted()
}

// read reads a file over the defaults.
func (s *Settings) read(file string, content []byte) {
	sections := record.ReadLines(file, content, &s.Mistakes, keysSection)
	top := sections[""]
	for i := range table {
		table[i].read(s, top)
	}
	for _, name := range top.Rest() {
		top.Fail(name, "is not a setting", record.DidYouMean(name, Names()))
	}
	s.keys = sections[keysSection]
	for _, name := range s.keys.Keys() {
		if to := s.keys.Texts(name); len(to) > 0 {
			s.Keys = append(s.Keys, Key{name, to})
		} else if !slices.ContainsFunc(s.Mistakes, func(e *record.Error) bool { return e.Field == name }) {
			s.keys.Fail(name, "names no key", "name one, or delete the line")
		}
	}
	s.Mistakes = s.Mistakes.Sorted()
}
