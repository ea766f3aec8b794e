package report

import (
	"math"
	"strconv"
	"strings"

	"alongside/props/compare"
	"alongside/units"
)

// deltaText writes a difference in the chosen mode with no more digits than
// the two figures carry.
func deltaText(mode compare.DeltaMode, in *compare.Cell) string {
	d := in.Delta
	if d.Bound != nil {
		return boundText(mode, in)
	}
	if math.IsNaN(d.Percent) && mode != compare.NoDelta {
		mode = compare.Amount
	}
	switch mode {
	case compare.Percent:
		prec := 0
		if math.Abs(d.Percent) < 10 && significant(in) >= 3 {
			prec = 1
		}
		return signed(threeDigits(d.Percent), prec) + " %"
	case compare.Ratio:
		return trimRatio(d.Ratio, significant(in)) + "×"
	case compare.Amount:
		return signed(d.Mid, amountDecimals(in))
	}
	return ""
}

// boundText writes the end of a bound that is nearest to the baseline, rounded
// towards it so that it stays true: ">+16 %" where it is at least so much more,
// "<−30 %" where it is at least so much less.
func boundText(mode compare.DeltaMode, in *compare.Cell) string {
	b, sign, end := in.Delta.Bound, ">", in.Delta.Bound.Least
	switch {
	case b.Most < 1:
		sign, end = "<", b.Most
	case b.Least <= 1:
		return "" // the ranges overlap: neither end says anything
	}
	inward := func(v, unit float64) float64 { return math.Trunc(v/unit*(1+1e-12)) * unit }
	switch mode {
	case compare.Percent:
		return sign + signed(inward(threeDigits(100*(end-1)), 1), 0) + " %"
	case compare.Ratio:
		return sign + strconv.FormatFloat(1+inward(end-1, 0.01), 'f', 2, 64) + "×"
	case compare.Amount:
		n := amountDecimals(in)
		d := in.Delta.Lo
		if end < 1 {
			d = in.Delta.Hi
		}
		return sign + signed(inward(d, math.Pow10(-n)), n)
	}
	return ""
}

// amountDecimals is how many decimals both figures carry in the row's unit.
func amountDecimals(in *compare.Cell) int {
	place := in.Value.Place
	if v, err := in.Against.Value.In(in.Value.Unit); err == nil {
		place = max(place, v.Place)
	}
	return int(max(0, -place))
}

// threeDigits rounds what has more than three digits before the point: no pair
// of published figures carries a percentage further.
func threeDigits(v float64) float64 {
	for unit := 10.0; math.Abs(v) >= 100*unit; unit *= 10 {
		if math.Abs(v) < 1000*unit {
			return math.Round(v/unit) * unit
		}
	}
	return v
}

// significant is the smaller number of significant digits of the two figures.
func significant(in *compare.Cell) int {
	digits := func(q units.Quantity) int {
		v := math.Max(math.Abs(q.Lo), math.Abs(q.Hi))
		if v == 0 {
			return 1
		}
		return int(math.Floor(math.Log10(v))) - int(q.Place) + 1
	}
	return min(digits(in.Figure.Value), digits(in.Against.Value))
}

func trimRatio(r float64, digits int) string {
	digits = min(max(digits, 2), 3)
	decimals := max(0, digits-1-int(math.Floor(math.Log10(math.Abs(r)))))
	return strconv.FormatFloat(r, 'f', decimals, 64)
}

// signed writes a number with its sign, and never a signed zero.
func signed(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	if v > 0 {
		return "+" + s
	}
	return "−" + s[1:]
}
