package bars

import "gonum.org/v1/gonum/stat"

// AndersonDarling is the statistic of the normality check alone.
func AndersonDarling(s *Set) float64 {
	v := s.values()
	mean, sd := stat.MeanStdDev(v, nil)
	return andersonDarling(v, mean, sd)
}
