package props

// Figures lists every figure of a property that a material has, in the order
// in which the bench prefers them. Compare may show a later one, where that
// one shares basis and conditions with the baseline's and the first does not.
func (b *Bench) Figures(m *Material, p PropertyID) []*Figure { return b.candidates(m, p) }
