package props

// Figures lists the figures of a property that the bench considers for a
// material, in its order of preference: with a service temperature or a range
// set they may be worked out, with minimums only they are the minimums.
// Compare may show a later one, where that one shares basis and conditions
// with the baseline's and the first does not.
func (b *Bench) Figures(m *Material, p PropertyID) []*Figure { return b.candidates(m, p) }
