package spelling

import (
	"regexp"
	"sync"
)

// Pattern is a regular expression that is compiled when it is first asked for,
// so that a program that does not come to it starts without the work.
type Pattern struct {
	Expr string

	once     sync.Once
	compiled *regexp.Regexp
}

// Regexp compiles the expression once; one that is wrong panics.
func (p *Pattern) Regexp() *regexp.Regexp {
	p.once.Do(func() { p.compiled = regexp.MustCompile(p.Expr) })
	return p.compiled
}
