package needs

import (
	"math"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/units"
)

// Index holds the figures that needs are judged on as plain columns, so that
// screening a catalog touches nothing but numbers. It belongs to one catalog
// and may be shared.
type Index struct {
	catalog *catalog.Catalog
	columns [props.PropertyCount]*column
}

// column is the interval of the chosen figure of every material in SI, NaN
// where there is none. Brinell figures of any load stand in one column.
type column struct{ lo, hi []float64 }

// NewIndex prepares a catalog for screening. A property's column is built when
// a need first asks for it.
func NewIndex(c *catalog.Catalog) *Index { return &Index{catalog: c} }

// prepare builds the columns that the needs ask for and that are not there
// yet, in one walk over the catalog.
func (ix *Index) prepare(list []Need) {
	var wanted [props.PropertyCount]bool
	var built []props.PropertyID
	for i := range list {
		n := &list[i]
		if p := n.Property; !n.Off && n.Kind == OfProperty && ix.columns[p] == nil && !wanted[p] {
			wanted[p] = true
			built = append(built, p)
		}
	}
	if len(built) == 0 {
		return
	}
	count := len(ix.catalog.Materials)
	for _, p := range built {
		ix.columns[p] = &column{make([]float64, count), make([]float64, count)}
	}
	var best [props.PropertyCount]choice
	for i, m := range ix.catalog.Materials {
		for _, p := range built {
			best[p] = choice{}
		}
		for f := range m.All() {
			if p := f.Property; wanted[p] && anyUnit(p, f) {
				best[p].offer(f)
			}
		}
		for _, p := range built {
			col := ix.columns[p]
			col.lo[i], col.hi[i] = math.NaN(), math.NaN()
			if f := best[p].figure; f != nil {
				col.lo[i], col.hi[i] = ends(f)
			}
		}
	}
}

// anyUnit reports whether a figure can stand in the column of its property:
// one that a limit without a load is held against.
func anyUnit(p props.PropertyID, f *props.Figure) bool {
	return usable(f, p.Info().Units[units.US].Dimension())
}

// Screen returns the indices of the materials that meet every need, and of
// those that miss no more than MaxStops of them.
func (ix *Index) Screen(list []Need) (met, near []int) {
	n := len(ix.catalog.Materials)
	misses := make([]uint8, n)
	ix.prepare(list)
	for i := range list {
		if !list[i].Off {
			ix.count(&list[i], misses)
		}
	}
	for i, k := range misses {
		switch {
		case k == 0:
			met = append(met, i)
		case k <= MaxStops:
			near = append(near, i)
		}
	}
	return met, near
}

// count adds one to each material that does not meet the need. It is the
// inner loop of screening and does not allocate.
func (ix *Index) count(n *Need, misses []uint8) {
	if n.Kind != OfProperty {
		for i, m := range ix.catalog.Materials {
			if !n.admits(m) {
				misses[i]++
			}
		}
		return
	}
	if d := n.Limit.Unit.Dimension(); d.Brinell() && d != units.HBUnstated {
		// A Brinell limit with its load cannot use the mixed column.
		for i, m := range ix.catalog.Materials {
			f := chosen(m, n)
			if f == nil {
				misses[i]++
			} else if lo, hi := ends(f); n.contains(lo, hi) < 2 {
				misses[i]++
			}
		}
		return
	}
	col := ix.columns[n.Property]
	a, z := n.closed()
	for i, lo := range col.lo {
		// Written so that NaN counts as a miss.
		if !(lo >= a && col.hi[i] <= z) {
			misses[i]++
		}
	}
}

// closed are the bounds as a closed interval: an excluded end is moved inward
// and an included one outward by the slack of contains.
func (n *Need) closed() (a, z float64) {
	a, z, openA, openZ := n.bounds()
	shift := func(v float64, inward bool, up float64) float64 {
		if math.IsInf(v, 0) {
			return v
		}
		d := slack * math.Abs(v)
		if inward {
			d = -d
		}
		return v - up*d
	}
	return shift(a, openA, 1), shift(z, openZ, -1)
}
