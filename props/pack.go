package props

import (
	"encoding/binary"
	"errors"
	"slices"
)

// packMagic starts a packed catalog; the digit changes with the layout.
const packMagic = "alongside-catalog-3\n"

// A packed catalog is four parts: the words, the test conditions, the alloys,
// and the head with sources, families and the material ids of each alloy. The
// first three are tables of pieces that can be read one by one, so that a
// command that wants three materials does not read the other hundreds.

// Pack writes the catalog in the compact form that Unpack reads without
// parsing text. People edit the TOML; the packed form is made from it.
func Pack(c *Catalog) []byte {
	k := &codec{writing: true, ids: map[string]int{}, condIDs: map[Conditions]int{}}
	ids := make([][]string, len(c.Alloys))
	for i, a := range c.Alloys {
		for _, m := range a.Materials {
			ids[i] = append(ids[i], m.ID)
		}
	}
	head := k.piece(func() { k.head(c, &ids) })
	k.familyAt = positions(c.Families)
	var alloys [][]byte
	for _, a := range c.Alloys {
		alloys = append(alloys, k.piece(func() { k.alloy(a) }))
	}
	var words [][]byte
	for _, w := range k.words {
		words = append(words, []byte(w))
	}
	out := []byte(packMagic)
	for _, pieces := range [][][]byte{words, k.condPieces, alloys} {
		out = appendPieces(out, pieces)
	}
	return append(out, head...)
}

// ErrPacked means that the packed catalog is damaged or of another version;
// `go generate ./data` writes it anew.
var ErrPacked = errors.New("the packed catalog is damaged or of another version; run: go generate ./data")

// Unpack reads what Pack wrote.
func Unpack(packed string) (*Catalog, error) {
	return unpack(packed, func([]string) bool { return true })
}

// UnpackMaterials reads of a packed catalog only the alloys to which the
// materials with exactly these ids belong, with all sources and families. It
// returns nil when one of the ids is not in the catalog.
func UnpackMaterials(packed string, ids []string) (*Catalog, error) {
	c, err := unpack(packed, func(have []string) bool {
		return slices.ContainsFunc(have, func(id string) bool { return slices.Contains(ids, id) })
	})
	if err != nil {
		return nil, err
	}
	for _, id := range ids {
		if c.Material(id) == nil {
			return nil, nil
		}
	}
	return c, nil
}

// unpack reads the alloys whose material ids wanted agrees to.
func unpack(packed string, wanted func(ids []string) bool) (*Catalog, error) {
	if len(packed) < len(packMagic) || packed[:len(packMagic)] != packMagic {
		return nil, ErrPacked
	}
	k := &codec{in: packed[len(packMagic):]}
	k.wordPieces, k.condTable = k.pieces(), k.pieces()
	alloys := k.pieces()
	k.conds = make([]*Conditions, k.condTable.len())
	c := &Catalog{}
	var ids [][]string
	k.head(c, &ids)
	k.families = c.Families
	if k.failed || k.in != "" || len(ids) != alloys.len() {
		return nil, ErrPacked
	}
	var at []int
	for i := range ids {
		if wanted(ids[i]) {
			at = append(at, i)
		}
	}
	all := make([]Alloy, len(at))
	c.Alloys = make([]*Alloy, len(at))
	for i, j := range at {
		k.in = k.at(alloys, j)
		k.alloy(&all[i])
		c.Alloys[i] = &all[i]
		if k.failed || k.in != "" {
			return nil, ErrPacked
		}
	}
	c.Index()
	return c, nil
}

// pieces is a table of byte strings behind the offsets at which they end.
type pieces struct{ ends, bytes string }

func (p pieces) len() int { return len(p.ends) / 4 }

func (p pieces) end(i int) int {
	if i < 0 {
		return 0
	}
	return int(binary.LittleEndian.Uint32([]byte(p.ends[4*i : 4*i+4])))
}

// at returns piece i of a table.
func (k *codec) at(p pieces, i int) string {
	if i < 0 || i >= p.len() {
		k.fail()
		return ""
	}
	from, to := p.end(i-1), p.end(i)
	if from > to || to > len(p.bytes) {
		k.fail()
		return ""
	}
	return p.bytes[from:to]
}

func appendPieces(out []byte, list [][]byte) []byte {
	out = binary.AppendUvarint(out, uint64(len(list)))
	end := 0
	for _, p := range list {
		end += len(p)
		out = binary.LittleEndian.AppendUint32(out, uint32(end))
	}
	return append(out, slices.Concat(list...)...)
}

// pieces reads a table.
func (k *codec) pieces() pieces {
	n := k.length(0)
	p := pieces{ends: k.take(4 * n)}
	if p.len() > 0 {
		p.bytes = k.take(p.end(p.len() - 1))
	}
	return p
}

// piece is what write writes, apart from all else.
func (k *codec) piece(write func()) []byte {
	before := k.buf
	k.buf = nil
	write()
	out := k.buf
	k.buf = before
	return out
}
