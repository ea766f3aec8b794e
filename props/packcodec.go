package props

import (
	"encoding/binary"
	"math"
)

// codec walks the catalog once for both directions, so that reading and
// writing cannot drift apart.
type codec struct {
	writing bool
	failed  bool
	buf     []byte
	in      string

	words      []string // writing
	ids        map[string]int
	wordPieces pieces // reading

	condIDs    map[Conditions]int
	condPieces [][]byte
	condTable  pieces
	conds      []*Conditions // those read so far

	sources  []*Source
	families []*Family
	sourceAt map[*Source]int
	familyAt map[*Family]int
}

func (k *codec) fail() {
	k.failed = true
	k.in = ""
}

func (k *codec) take(n int) string {
	if n < 0 || n > len(k.in) {
		k.fail()
		return ""
	}
	s := k.in[:n]
	k.in = k.in[n:]
	return s
}

func (k *codec) uint(v uint64) uint64 {
	if k.writing {
		k.buf = binary.AppendUvarint(k.buf, v)
		return v
	}
	var x uint64
	for shift := 0; shift < 64; shift += 7 {
		b := k.take(1)
		if b == "" {
			return 0
		}
		x |= uint64(b[0]&0x7f) << shift
		if b[0] < 0x80 {
			return x
		}
	}
	k.fail()
	return 0
}

// length codes a count; one that cannot fit what is left to read is an error,
// so that a damaged file asks for no absurd amount of memory.
func (k *codec) length(n int) int {
	v := int(k.uint(uint64(n)))
	if !k.writing && (v < 0 || v > len(k.in)) {
		k.fail()
		return 0
	}
	return v
}

func (k *codec) str(s *string) {
	if k.writing {
		id, ok := k.ids[*s]
		if !ok {
			id = len(k.words)
			k.ids[*s] = id
			k.words = append(k.words, *s)
		}
		k.uint(uint64(id))
		return
	}
	*s = k.at(k.wordPieces, int(k.uint(0)))
}

func (k *codec) float(v *float64) {
	if k.writing {
		k.buf = binary.LittleEndian.AppendUint64(k.buf, math.Float64bits(*v))
		return
	}
	if s := k.take(8); s != "" {
		*v = math.Float64frombits(binary.LittleEndian.Uint64([]byte(s)))
	}
}

func (k *codec) flag(v *bool) {
	var n uint64
	if *v {
		n = 1
	}
	*v = k.uint(n) == 1
}

func small[T ~uint8](k *codec, v *T, limit int) {
	n := k.uint(uint64(*v))
	if !k.writing && n >= uint64(limit) {
		k.fail()
		return
	}
	*v = T(n)
}

func list[T any](k *codec, s *[]T, each func(*T)) {
	n := k.length(len(*s))
	if !k.writing && n > 0 {
		*s = make([]T, n)
	}
	for i := range *s {
		each(&(*s)[i])
	}
}

// refs is list for slices of pointers; what they point to is allocated at
// once.
func refs[T any](k *codec, s *[]*T, each func(*T)) {
	n := k.length(len(*s))
	if !k.writing && n > 0 {
		all := make([]T, n)
		*s = make([]*T, n)
		for i := range all {
			(*s)[i] = &all[i]
		}
	}
	for _, p := range *s {
		each(p)
	}
}

// ref codes a pointer to a record of a list coded before.
func ref[T any](k *codec, p **T, all []*T, at map[*T]int) {
	n := k.uint(uint64(at[*p]))
	if !k.writing {
		if n >= uint64(len(all)) {
			k.fail()
			*p = new(T)
			return
		}
		*p = all[n]
	}
}

func positions[T any](all []*T) map[*T]int {
	at := make(map[*T]int, len(all))
	for i, p := range all {
		at[p] = i
	}
	return at
}
