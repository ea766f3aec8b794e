package sheets

import (
	"errors"
	"fmt"
	"os"
	"sync"
	"time"

	"alongside/props/call"
	"alongside/props/compare"
	"alongside/props/disk"
)

// Held is a sheet that this program alone writes. Put is quick and may be called
// at every change; Save writes the call put last, and may run beside it.
type Held struct {
	folder *Folder

	writing sync.Mutex // held while the file is written
	lock    *disk.Lock // nil before the first Save

	mu     sync.Mutex // of what follows
	newest *call.Call // not written yet; nil where all is
	sheet  *Sheet     // as written last; never changed in place
}

// New is a sheet for a call that begins now. It has no file before something is
// saved.
func (f *Folder) New() *Held {
	return &Held{folder: f, sheet: &Sheet{Begun: f.now().UTC().Truncate(time.Second), Call: call.Call{Bench: compare.NewBench().Clone()}}}
}

// Open opens a sheet for writing. The error is ErrOpen where another program
// has it open; Copy is the way out then.
func (f *Folder) Open(id string) (*Held, error) {
	lock, err := f.lock(id)
	if err != nil {
		return nil, err
	}
	s, err := f.byID(id)
	if err != nil {
		lock.Release()
		return nil, err
	}
	disk.Sweep(f.file(id))
	return &Held{folder: f, sheet: s, lock: lock}, nil
}

// byID reads the sheet with this id.
func (f *Folder) byID(id string) (*Sheet, error) {
	entries, err := f.entries()
	if err != nil {
		return nil, err
	}
	for _, e := range entries {
		if e.id == id {
			s := f.read(e)
			return s, s.Broken
		}
	}
	return nil, &NotFound{Name: id}
}

// Copy opens a copy of a sheet, which another program may have open.
func (f *Folder) Copy(id string) (*Held, error) {
	s, err := f.byID(id)
	if err != nil {
		return nil, err
	}
	h := f.New()
	h.sheet.kept = s.kept
	s.Call.Name = "copy of " + s.Title()
	h.Put(s.Call)
	return h, h.Save()
}

// Sheet is the sheet as it was written last, not to be changed.
func (h *Held) Sheet() *Sheet {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.sheet
}

// Put gives the call as it is now. A call must not be changed after that.
func (h *Held) Put(c call.Call) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.newest = &c
}

// Save writes the call put last, unless it is written already. What is on the
// disk is at every moment a call that was put, whole. Where it fails the call
// waits for the next Save.
func (h *Held) Save() error {
	h.writing.Lock()
	defer h.writing.Unlock()
	for {
		h.mu.Lock()
		c, next := h.newest, *h.sheet
		h.mu.Unlock()
		if c == nil {
			return nil
		}
		next.Call = *c
		if err := h.write(&next); err != nil {
			return err
		}
		h.mu.Lock()
		h.sheet = &next
		if h.newest == c {
			h.newest = nil
		}
		h.mu.Unlock()
	}
}

// write writes the file, under a new name where it has none yet.
func (h *Held) write(s *Sheet) error {
	if h.lock == nil {
		if err := h.name(s); err != nil {
			return err
		}
	}
	if err := disk.Replace(h.folder.file(s.ID), encode(s)); err != nil {
		return h.folder.trouble(err)
	}
	s.Changed = h.folder.now()
	return nil
}

// name finds an id that no other sheet has or had, and takes its lock.
func (h *Held) name(s *Sheet) error {
	for n := 1; n < 100; n++ {
		id := s.Begun.Local().Format("2006-01-02-150405")
		if n > 1 {
			id += fmt.Sprintf("-%d", n)
		}
		lock, err := h.folder.lock(id)
		if errors.Is(err, ErrOpen) {
			continue
		}
		if err != nil {
			return err
		}
		if taken(h.folder.file(id)) || taken(h.folder.deleted().file(id)) {
			lock.Release()
			continue
		}
		s.ID, h.lock = id, lock
		named := *s
		named.Call = h.sheet.Call
		h.mu.Lock()
		h.sheet = &named // the name stays, also where writing fails
		h.mu.Unlock()
		return nil
	}
	return fmt.Errorf("%s: no free name for another call; move old ones away", h.folder.Path)
}

func taken(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}

// Close saves what is not saved, and lets other programs open the sheet.
func (h *Held) Close() error {
	err := h.Save()
	h.writing.Lock()
	defer h.writing.Unlock()
	if h.lock != nil {
		h.lock.Release()
		h.lock = nil
	}
	return err
}
