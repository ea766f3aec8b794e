package sheets

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"alongside/props/catalog"
	"alongside/props/disk"
)

// largest is how many bytes a sheet may have. A call with 200 pins has 20,000.
const largest = 1 << 20

const (
	ending = ".toml"
	trash  = "deleted" // the folder in which deleted sheets are kept
)

// Dir is where a user's sheets are kept. Nothing is kept in a folder that others
// can write to: without a home it is an error.
func Dir(goos string, getenv func(string) string) (string, error) {
	base := disk.Data.Folder(goos, getenv)
	if base == "" {
		return "", errors.New("there is no folder to keep calls in; set HOME, or " + disk.Data.Variable + " to a folder of your own")
	}
	return filepath.Join(base, "calls"), nil
}

// Folder is the folder with a user's sheets. A sheet is found by comparing names
// with what the folder holds, so that no name leads out of it.
type Folder struct {
	Path    string
	Catalog func() *catalog.Catalog
	Now     func() time.Time // nil: time.Now
}

func (f *Folder) now() time.Time {
	if f.Now != nil {
		return f.Now()
	}
	return time.Now()
}

func (f *Folder) file(id string) string { return filepath.Join(f.Path, id+ending) }

// deleted is the folder with the deleted sheets, which is like any other.
func (f *Folder) deleted() *Folder {
	return &Folder{filepath.Join(f.Path, trash), f.Catalog, f.Now}
}

// entry is a file that may be a sheet.
type entry struct {
	id      string
	changed time.Time
}

// entries lists what the folder holds, that changed last first. A folder that
// does not exist holds nothing.
func (f *Folder) entries() ([]entry, error) {
	list, err := os.ReadDir(f.Path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, f.trouble(err)
	}
	var out []entry
	for _, e := range list {
		id, ok := strings.CutSuffix(e.Name(), ending)
		if !ok || strings.HasPrefix(id, ".") || e.IsDir() {
			continue
		}
		if info, err := e.Info(); err == nil {
			out = append(out, entry{id, info.ModTime()})
		}
	}
	slices.SortFunc(out, func(a, b entry) int {
		if c := b.changed.Compare(a.changed); c != 0 {
			return c
		}
		return strings.Compare(b.id, a.id)
	})
	return out, nil
}

// trouble is an error of reading or writing in the folder, with a way out.
func (f *Folder) trouble(err error) error {
	return fmt.Errorf("%w (XDG_DATA_HOME names another folder)", disk.Explained(f.Path, err))
}

// read reads a sheet. One that cannot be read is returned with the reason in
// Broken.
func (f *Folder) read(e entry) *Sheet {
	content, err := disk.Read(f.file(e.id), largest)
	var s *Sheet
	if err == nil {
		s, err = decode(f.file(e.id), content, f.Catalog())
	}
	if err != nil {
		s = &Sheet{Broken: err, words: strings.ToLower(e.id)}
	}
	s.ID, s.Changed = e.id, e.changed
	return s
}

// List reads the sheets that hold every word of a search, in any case, that
// changed last first.
func (f *Folder) List(search string) ([]*Sheet, error) {
	entries, err := f.entries()
	if err != nil {
		return nil, err
	}
	var out []*Sheet
	for _, e := range entries {
		if s := f.read(e); s.holds(search) {
			out = append(out, s)
		}
	}
	return out, nil
}

// ListDeleted is List of the deleted sheets.
func (f *Folder) ListDeleted(search string) ([]*Sheet, error) { return f.deleted().List(search) }

func (s *Sheet) holds(search string) bool {
	for _, word := range strings.Fields(strings.ToLower(search)) {
		if !strings.Contains(s.ID+"\n"+s.words, word) {
			return false
		}
	}
	return true
}

// Last is the sheet that changed last and can be read; nil where there is none.
func (f *Folder) Last() (*Sheet, error) {
	entries, err := f.entries()
	for _, e := range entries {
		if s := f.read(e); s.Broken == nil {
			return s, nil
		}
	}
	return nil, err
}

// NotFound is the error for a name that fits no sheet, or several.
type NotFound struct {
	Name string
	Fits []*Sheet // several; none where no sheet fits
}

func (e *NotFound) Error() string {
	if len(e.Fits) == 0 {
		return fmt.Sprintf("no call sheet %q; alongside call lists them", e.Name)
	}
	var ids []string
	for _, s := range e.Fits[:min(5, len(e.Fits))] {
		ids = append(ids, s.ID+" ("+s.Title()+")")
	}
	return fmt.Sprintf("%q fits %d call sheets; say which: %s", e.Name, len(e.Fits), strings.Join(ids, ", "))
}

// Find is the sheet that a name means: the id of its file, the name that the
// user gave the call, or words that one sheet only holds. The error is a
// *NotFound, that of reading the folder, or why the sheet is broken.
func (f *Folder) Find(name string) (*Sheet, error) {
	all, err := f.List(name)
	if err != nil {
		return nil, err
	}
	named := slices.DeleteFunc(slices.Clone(all), func(s *Sheet) bool {
		return s.ID != name && !strings.EqualFold(strings.TrimSpace(s.Call.Name), strings.TrimSpace(name))
	})
	if len(named) == 1 {
		all = named
	}
	if len(all) != 1 || strings.TrimSpace(name) == "" {
		return nil, &NotFound{name, all}
	}
	return all[0], all[0].Broken
}

// FindDeleted is Find among the deleted sheets.
func (f *Folder) FindDeleted(name string) (*Sheet, error) { return f.deleted().Find(name) }

// Delete moves a sheet to the deleted ones, from where Restore brings it back.
// One that another program has open stays: the error is ErrOpen.
func (f *Folder) Delete(id string) error { return f.move(id, f, f.deleted()) }

// Restore brings a deleted sheet back.
func (f *Folder) Restore(id string) error { return f.move(id, f.deleted(), f) }

func (f *Folder) move(id string, from, to *Folder) error {
	lock, err := f.lock(id)
	if err != nil {
		return err
	}
	defer lock.Release()
	if _, err := os.Lstat(to.file(id)); err == nil {
		return fmt.Errorf("%s is there already; move one of the two away", to.file(id))
	}
	if err := os.MkdirAll(to.Path, 0o700); err != nil {
		return f.trouble(err)
	}
	if err := os.Rename(from.file(id), to.file(id)); err != nil {
		return f.trouble(err)
	}
	return nil
}

// ErrOpen is the error for a sheet that another program has open.
var ErrOpen = errors.New("the call sheet is open in another program; close it there first")

func (f *Folder) lock(id string) (*disk.Lock, error) {
	lock, err := disk.NewLock(filepath.Join(f.Path, "."+id+".lock"))
	switch {
	case errors.Is(err, disk.ErrLocked):
		return nil, ErrOpen
	case err != nil:
		return nil, f.trouble(err)
	}
	return lock, nil
}
