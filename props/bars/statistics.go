package bars

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Summary says what the bars of a set show.
type Summary struct {
	N                     int
	Mean, SD, Least, Most float64 // SD is that of a sample, NaN for one bar
	// AD is the Anderson–Darling statistic for a normal distribution whose mean
	// and deviation are estimated, adjusted for the number of bars; NaN below
	// leastNormal bars or where they do not differ.
	AD      float64
	Outlier *Bar  // the bar farthest from the mean, where Grubbs' test singles it out
	B, A    Bound // above which 90 and 99 % lie, with 95 % confidence
}

// Bound is a one-sided lower tolerance bound with 95 % confidence.
type Bound struct {
	Value    float64
	Factor   float64 // mean − Factor·SD; 0 where it is a bar
	Rank     int     // the bound is the Rank-th least bar; 0 where by Factor
	Refusal  string  // why there is no bound, and what would do
	coverage float64
}

// Found reports whether there is a bound.
func (b *Bound) Found() bool { return b.Refusal == "" }

const (
	confidence = 0.95
	// leastNormal is the least number of bars for which the critical value of
	// the normality check is published.
	leastNormal = 8
	// criticalAD is the 5 % point of the adjusted statistic: Stephens, in
	// Goodness-of-Fit Techniques (1986), table 4.7.
	criticalAD = 0.752
	// grubbsLevel is the level of the test for one outlier, either side.
	grubbsLevel = 0.05
)

// Normal reports whether the normality check lets a normal distribution stand.
func (s *Summary) Normal() bool { return s.AD < criticalAD }

// Summary works out what the bars show.
func (s *Set) Summary() Summary {
	v := s.values()
	mean, sd := stat.MeanStdDev(v, nil)
	out := Summary{N: len(v), Mean: mean, SD: sd, Least: v[0], Most: v[len(v)-1], AD: andersonDarling(v, mean, sd)}
	out.Outlier = s.outlier(mean, sd)
	out.B, out.A = out.bound(v, 0.90), out.bound(v, 0.99)
	return out
}

// andersonDarling is A² of sorted values against the normal distribution of
// their own mean and deviation, times 1 + 0.75/n + 2.25/n² (Stephens 1986, case 3).
func andersonDarling(v []float64, mean, sd float64) float64 {
	n := float64(len(v))
	if len(v) < leastNormal || sd == 0 {
		return math.NaN()
	}
	sum := 0.0
	for i := range v {
		below := distuv.UnitNormal.CDF((v[i] - mean) / sd)
		above := distuv.UnitNormal.CDF((mean - v[len(v)-1-i]) / sd)
		sum += float64(2*i+1) * (math.Log(below) + math.Log(above))
	}
	return (-n - sum/n) * (1 + 0.75/n + 2.25/(n*n))
}

// outlier is the bar farthest from the mean where it is too far for a normal
// sample of this size: Grubbs' test at 5 %, both sides (ASTM E178); nil where none is.
func (s *Set) outlier(mean, sd float64) *Bar {
	n := float64(len(s.Bars))
	if n < 3 || sd == 0 {
		return nil
	}
	far := &s.Bars[0]
	for i := range s.Bars {
		if b := &s.Bars[i]; math.Abs(b.Value-mean) > math.Abs(far.Value-mean) {
			far = b
		}
	}
	if math.Abs(far.Value-mean)/sd <= grubbs(n, grubbsLevel/2) {
		return nil
	}
	return far
}

// grubbs is the critical value of Grubbs' test for one side at a level.
func grubbs(n, level float64) float64 {
	t := distuv.StudentsT{Sigma: 1, Nu: n - 2}.Quantile(1 - level/n)
	return (n - 1) / math.Sqrt(n) * math.Sqrt(t*t/(n-2+t*t))
}

// bound is mean − k·s where the bars look normal. Else it is that of the least
// bars which does without a distribution, where there are enough of them.
func (s *Summary) bound(v []float64, coverage float64) Bound {
	out := Bound{coverage: coverage}
	if s.Normal() {
		out.Factor = Factor(s.N, coverage)
		out.Value = s.Mean - out.Factor*s.SD
		return out
	}
	if out.Rank = rank(len(v), coverage); out.Rank > 0 {
		out.Value = v[out.Rank-1]
		return out
	}
	why := "the bars do not look normal"
	switch {
	case s.N < leastNormal:
		why = fmt.Sprintf("%d bars are too few to see whether they are normal, which takes %d", s.N, leastNormal)
	case s.SD == 0:
		why = "the bars do not differ"
	}
	out.Refusal = fmt.Sprintf("no %s bound: %s; the least of %d bars is one whatever their distribution", out.Name(), why, Enough(coverage))
	return out
}

// Name is the coverage and confidence in percent, "90/95".
func (b *Bound) Name() string { return fmt.Sprintf("%.0f/%.0f", 100*b.coverage, 100*confidence) }

// Enough is the number of bars whose least is a bound whatever the distribution:
// 29 for a coverage of 0.90, 299 for 0.99.
func Enough(coverage float64) int {
	return int(math.Ceil(math.Log(1-confidence) / math.Log(coverage)))
}

// rank is the highest of the least bars that is a bound whatever the
// distribution, 0 where none is: more than rank−1 of n bars lie in the tail below
// the coverage with the confidence asked for.
func rank(n int, coverage float64) int {
	tail := distuv.Binomial{N: float64(n), P: 1 - coverage}
	r := 0
	for 1-tail.CDF(float64(r)) >= confidence {
		r++
	}
	return r
}

// Factor is k of the one-sided tolerance bound mean − k·s of n normal values,
// with 95 % confidence: t/√n, t being that quantile of the noncentral t
// distribution with n−1 degrees of freedom and noncentrality z·√n (ISO 16269-6).
// It is exact to five digits. n must be 2 or more.
func Factor(n int, coverage float64) float64 {
	nu, root := float64(n-1), math.Sqrt(float64(n))
	chi, z := distuv.ChiSquared{K: nu}, distuv.UnitNormal
	delta := z.Quantile(coverage) * root
	// T ≤ t means Z ≤ t·s − δ, with s the ratio of the sample's deviation to the
	// true one, whose density is that of √(χ²/ν).
	const ends = 1e-13
	from, to := math.Sqrt(chi.Quantile(ends)/nu), math.Sqrt(chi.Quantile(1-ends)/nu)
	chance := func(k float64) float64 {
		return quad.Fixed(func(s float64) float64 {
			return z.CDF(k*root*s-delta) * 2 * nu * s * chi.Prob(nu*s*s)
		}, from, to, 500, nil, 0)
	}
	lo, hi := 0.0, 1000.0
	for hi-lo > 1e-8*hi {
		if mid := (lo + hi) / 2; chance(mid) < confidence {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}
