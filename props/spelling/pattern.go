package spelling

import (
	"regexp"
	"sync"
)

// Pattern is a regular expression that is compiled when it is first asked for,
// so that a program that does not come to it starts without the work.
func Pattern(expr string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expr) })
}
