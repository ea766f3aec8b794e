package background_test

import (
	"image/color"
	"testing"
	"time"

	"alongside/tui/ptytest"
)

// BenchmarkFirstFrame measures the time from the start of a program to the
// first character on its screen. Bare is the smallest Bubble Tea program, desk
// one that uses this package. Bare on a mute terminal takes five seconds each:
//
//	go test -run '^$' -bench FirstFrame -benchtime 5x ./tui/background
func BenchmarkFirstFrame(b *testing.B) {
	for _, program := range []string{"bare", "desk"} {
		path := ptytest.Build(b, "./testdata/"+program)
		for _, terminal := range []struct {
			name    string
			answers ptytest.Answers
		}{
			{"mute", ptytest.Answers{}},
			{"prompt", ptytest.Answers{Background: color.White}},
			{"after 150 ms", ptytest.Answers{Background: color.White, After: 150 * time.Millisecond}},
		} {
			b.Run(program+"/"+terminal.name, func(b *testing.B) {
				var total time.Duration
				for range b.N {
					s := ptytest.Start(b, ptytest.Options{Answers: terminal.answers}, path)
					total += s.FirstFrame()
					s.Type("q")
					s.Exit()
				}
				b.ReportMetric(float64(total.Milliseconds())/float64(b.N), "ms/frame")
				b.ReportMetric(0, "ns/op")
			})
		}
	}
}
