package background

import (
	"strconv"
	"strings"
)

// shadeOf reads the color in an answer: "rgb:1e1e/1e1e/1e1e" with one to four
// hexadecimal digits a part, "rgba:" with a fourth part, or "#1e1e1e" (X11
// color specifications). A color is light from half of full luma on, by the
// weights of Recommendation ITU-R BT.709.
func shadeOf(color string) Shade {
	parts, ok := strings.CutPrefix(color, "rgb:")
	want := 3
	if !ok {
		if parts, ok = strings.CutPrefix(color, "rgba:"); ok {
			want = 4
		}
	}
	var fields []string
	if ok {
		fields = strings.Split(parts, "/")
	} else if digits, hash := strings.CutPrefix(color, "#"); hash && digits != "" && len(digits)%3 == 0 {
		n := len(digits) / 3
		fields = []string{digits[:n], digits[n : 2*n], digits[2*n:]}
	}
	if len(fields) != want {
		return Unknown
	}
	luma := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		value, err := strconv.ParseUint(fields[i], 16, 16)
		if err != nil || len(fields[i]) > 4 {
			return Unknown
		}
		luma += weight * float64(value) / float64(uint64(1)<<(4*len(fields[i]))-1)
	}
	if luma >= 0.5 {
		return Light
	}
	return Dark
}
