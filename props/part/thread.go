package part

import (
	"strconv"
	"strings"

	"alongside/props/spelling"
	"alongside/units"
)

// Thread is a 60° screw thread read from its designation: basic major diameter and
// pitch in m.
type Thread struct {
	Major, Pitch float64
	Metric       bool
}

var (
	metricThread = spelling.Pattern{Expr: `(?i)^M\s*(\d+(?:\.\d+)?)(?:\s*[x×*]\s*(\d+(?:\.\d+)?))?(?:\s*-?\s*6[Hg])?$`}
	inchThread   = spelling.Pattern{Expr: `(?i)^(#|no\.?\s*)?((?:\d+[ -])?\d+/\d+|\d*\.\d+|\d+)\s*(?:"|in)?\s*-\s*(\d+(?:\.\d+)?)(?:\s*UN[A-Z]*)?(?:\s*-?\s*2[AB])?$`}
)

// ReadThread understands "1/2-13 UNC", "#10-24" and "M12x1.75", with or without the
// usual class of fit. The error is an *Error.
func ReadThread(typed string) (Thread, error) {
	t, problem := readThread(typed)
	switch {
	case problem != "":
	case t.Major < 0.5e-3 || t.Major > 0.4:
		problem = "no thread is of that size"
	case t.Pitch <= t.Major/500 || t.Pitch > t.Major/3:
		problem = "the pitch does not fit the diameter"
	default:
		return t, nil
	}
	return Thread{}, &Error{Field: FieldThread, Typed: typed, Problem: problem, Remedy: "type it like 1/2-13 UNC or M12x1.75"}
}

func readThread(typed string) (t Thread, problem string) {
	if m := metricThread.Regexp().FindStringSubmatch(typed); m != nil {
		if m[2] == "" {
			return t, "the pitch is missing"
		}
		return Thread{decimal(m[1]) * 1e-3, decimal(m[2]) * 1e-3, true}, ""
	}
	m := inchThread.Regexp().FindStringSubmatch(typed)
	if m == nil {
		return t, "no 60° thread of the usual class of fit, 2A and 2B or 6g and 6H"
	}
	size, perInch := decimal(m[2]), decimal(m[3])
	if perInch == 0 {
		return t, "the threads per inch are missing"
	}
	// Number sizes are 0.060 in and 0.013 in a number; whole inches have coarser threads.
	const finest, largest = 24, 12
	numbered := size <= largest && !strings.ContainsAny(m[2], "./")
	switch {
	case numbered && (m[1] != "" || perInch >= finest):
		size = 0.060 + 0.013*size
	case m[1] != "":
		return t, "number sizes go from #0 to #12"
	}
	return Thread{units.Inch.ToSI(size), units.Inch.ToSI(1 / perInch), false}, ""
}

// decimal reads "12", "0.5", "1/2" and "1 1/8"; 0 where it is no number.
func decimal(s string) float64 {
	whole, fraction, two := strings.Cut(strings.ReplaceAll(s, "-", " "), " ")
	if two {
		return decimal(whole) + decimal(fraction)
	}
	top, bottom, cut := strings.Cut(s, "/")
	v, _ := strconv.ParseFloat(top, 64)
	if cut {
		b, _ := strconv.ParseFloat(bottom, 64)
		if b == 0 {
			return 0
		}
		v /= b
	}
	return v
}
