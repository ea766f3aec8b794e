package props

import "alongside/units"

// head codes what all alloys refer to, and the material ids of each.
func (k *codec) head(c *Catalog, ids *[][]string) {
	refs(k, &c.Sources, k.source)
	k.sources = c.Sources
	if k.writing {
		k.sourceAt = positions(c.Sources)
	}
	refs(k, &c.Families, k.family)
	list(k, ids, func(s *[]string) { list(k, s, k.str) })
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
	refs(k, &f.Blocks, k.block)
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
	k.flag(&b.Family)
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

// conditions are shared: most figures of a table have the same ones. They are
// named by number and stand in a table of their own.
func (k *codec) conditions(p **Conditions) {
	if k.writing {
		c := **p
		id, ok := k.condIDs[c]
		if !ok {
			id = len(k.condIDs)
			k.condIDs[c] = id
			k.condPieces = append(k.condPieces, k.piece(func() { k.condition(&c) }))
		}
		k.uint(uint64(id))
		return
	}
	*p = noConditions
	id := k.uint(0)
	if id >= uint64(len(k.conds)) {
		k.fail()
		return
	}
	if k.conds[id] == nil {
		c, rest := &Conditions{}, k.in
		k.in = k.at(k.condTable, int(id))
		k.condition(c)
		if k.in != "" {
			k.failed = true
		}
		k.in, k.conds[id] = rest, c
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
