package props

import (
	"encoding/binary"
	"errors"
	"math"

	"alongside/units"
)

// packMagic starts a packed catalog; the digit changes with the layout.
const packMagic = "alongside-catalog-1\n"

// Pack writes the catalog in the compact form that Unpack reads without
// parsing text. People edit the TOML; the packed form is made from it.
func Pack(c *Catalog) []byte {
	k := &codec{writing: true, ids: map[string]int{}, condIDs: map[Conditions]int{}}
	k.catalog(c)
	body := k.buf
	k.buf = []byte(packMagic)
	k.length(len(k.words))
	for _, w := range k.words {
		k.length(len(w))
		k.buf = append(k.buf, w...)
	}
	return append(k.buf, body...)
}

// ErrPacked means that the packed catalog is damaged or of another version;
// `go generate ./data` writes it anew.
var ErrPacked = errors.New("the packed catalog is damaged or of another version; run: go generate ./data")

// Unpack reads what Pack wrote.
func Unpack(packed string) (c *Catalog, err error) {
	if len(packed) < len(packMagic) || packed[:len(packMagic)] != packMagic {
		return nil, ErrPacked
	}
	k := &codec{in: packed[len(packMagic):]}
	n := k.length(0)
	k.words = make([]string, 0, n)
	for range n {
		k.words = append(k.words, k.take(k.length(0)))
	}
	c = &Catalog{}
	k.catalog(c)
	if k.failed || k.in != "" {
		return nil, ErrPacked
	}
	c.Index()
	return c, nil
}

// codec walks the catalog once for both directions, so that reading and
// writing cannot drift apart.
type codec struct {
	writing bool
	failed  bool
	buf     []byte
	in      string
	words   []string
	ids     map[string]int
	conds   []*Conditions
	condIDs map[Conditions]int

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
	if id := k.uint(0); id < uint64(len(k.words)) {
		*s = k.words[id]
	} else {
		k.fail()
	}
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

func (k *codec) catalog(c *Catalog) {
	refs(k, &c.Sources, k.source)
	refs(k, &c.Families, k.family)
	k.sources, k.families = c.Sources, c.Families
	if k.writing {
		k.sourceAt, k.familyAt = positions(c.Sources), positions(c.Families)
	}
	refs(k, &c.Alloys, k.alloy)
}

func (k *codec) source(s *Source) {
	for _, f := range []*string{&s.ID, &s.Title, &s.Publisher, &s.Edition, &s.Kind, &s.Note} {
		k.str(f)
	}
}

func (k *codec) family(f *Family) {
	k.str(&f.ID)
	k.str(&f.Name)
	list(k, &f.Words, k.str)
	list(k, &f.None, k.absence)
}

func (k *codec) absence(a *Absence) {
	small(k, &a.Property, PropertyCount)
	k.str(&a.Reason)
}

func (k *codec) alias(a *Alias) {
	k.str(&a.System)
	k.str(&a.Name)
	k.flag(&a.Near)
}

func (k *codec) explained(e *Explained) {
	k.str(&e.Rule)
	small(k, &e.Property, PropertyCount)
	k.str(&e.Why)
}

func (k *codec) alloy(a *Alloy) {
	for _, f := range []*string{&a.ID, &a.Name, &a.UNS, &a.Note} {
		k.str(f)
	}
	ref(k, &a.Family, k.families, k.familyAt)
	list(k, &a.Aliases, k.alias)
	has := a.Composition.Source != nil
	if k.flag(&has); has {
		ref(k, &a.Composition.Source, k.sources, k.sourceAt)
		small(k, &a.Composition.Known, 2)
		k.str(&a.Composition.Where)
	}
	list(k, &a.Composition.Limits, func(l *Limit) {
		k.str(&l.Element)
		k.str(&l.Text)
		k.float(&l.Lo)
		k.float(&l.Hi)
	})
	list(k, &a.None, k.absence)
	list(k, &a.Explained, k.explained)
	refs(k, &a.Blocks, k.block)
	refs(k, &a.Materials, func(m *Material) {
		m.Alloy = a
		k.str(&m.ID)
		k.str(&m.Temper)
		small(k, &m.Process, int(processCount))
		list(k, &m.Aliases, k.alias)
		list(k, &m.None, k.absence)
		list(k, &m.Explained, k.explained)
		refs(k, &m.Blocks, k.block)
	})
}

func (k *codec) block(b *Block) {
	small(k, &b.Basis, len(basisNames))
	small(k, &b.Known, 2)
	ref(k, &b.Source, k.sources, k.sourceAt)
	for _, f := range []*string{&b.Table, &b.Where, &b.First} {
		k.str(f)
	}
	k.flag(&b.Inherited)
	list(k, &b.Tempers, k.str)
	list(k, &b.Processes, func(p *Process) { small(k, p, int(processCount)) })
	list(k, &b.Figures, func(f *Figure) {
		f.Block = b
		small(k, &f.Property, PropertyCount)
		k.float(&f.Value.Lo)
		k.float(&f.Value.Hi)
		place := uint8(f.Value.Place) + 128
		small(k, &place, 256)
		f.Value.Place = int8(place - 128)
		small(k, &f.Value.Qual, int(units.LessThan)+1)
		small(k, &f.Value.Unit, int(units.HKNumber)+1)
		k.conditions(&f.Cond)
	})
}

// conditions are shared: most figures of a table have the same ones. A set is
// written where it first occurs and named by number after that.
func (k *codec) conditions(p **Conditions) {
	if k.writing {
		c := **p
		id, ok := k.condIDs[c]
		if !ok {
			id = len(k.condIDs)
			k.condIDs[c] = id
		}
		if k.uint(uint64(id)); !ok {
			k.condition(&c)
		}
		return
	}
	id := k.uint(0)
	switch {
	case id == uint64(len(k.conds)):
		c := &Conditions{}
		k.condition(c)
		k.conds = append(k.conds, c)
	case id > uint64(len(k.conds)):
		k.fail()
		*p = noConditions
		return
	}
	*p = k.conds[id]
}

func (k *codec) condition(c *Conditions) {
	for _, f := range []*float64{&c.Offset, &c.Load, &c.Ball, &c.Cycles, &c.FromC, &c.ToC, &c.AtC, &c.Hours} {
		k.float(f)
	}
	for _, f := range []*bool{&c.UnderLoad, &c.HasRange, &c.HasAt} {
		k.flag(f)
	}
	for _, f := range []*string{&c.Gauge, &c.Loading, &c.Bar, &c.Section, &c.Class, &c.State, &c.Note, &c.rangeText, &c.temperatures} {
		k.str(f)
	}
}
