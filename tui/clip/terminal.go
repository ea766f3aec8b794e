package clip

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/aymanbagabas/go-osc52/v2"
)

// longestOSC52 is the most text, in bytes, that is sent to a terminal. Many
// terminals drop a sequence of more than 100,000 bytes without a word (common
// practice, no source); base64 makes 4 bytes of 3.
const longestOSC52 = 100_000/4*3 - 12

var errNoTerminal = errors.New("no terminal here that has one")

// tooLong says that text exceeds what a terminal's clipboard can be trusted with.
type tooLong struct{ bytes int }

func (e tooLong) Error() string {
	return fmt.Sprintf("%d bytes, and many take %d at most", e.bytes, longestOSC52)
}

// copyToTerminal sends text by OSC 52, in one write.
func copyToTerminal(_ context.Context, p Payload, env Env) (Report, error) {
	if env.Terminal == nil {
		return Report{}, errNoTerminal
	}
	if p.HTML != "" {
		return Report{}, errNoHTML
	}
	if len(p.Text) > longestOSC52 {
		return Report{}, tooLong{len(p.Text)}
	}
	through, sequence := osc52Sequence(p.Text, env.Getenv)
	if _, err := env.Terminal.Write([]byte(sequence)); err != nil {
		return Report{}, err
	}
	return Report{Where: TerminalClipboard, Name: through}, nil
}

// osc52Sequence returns what to send and the multiplexer it has to pass, if
// any. A multiplexer gets the plain form, which it may act on itself (tmux
// with set-clipboard on), and the form wrapped to be passed on (tmux with
// allow-passthrough on; screen always): each ignores what it does not take,
// and the clipboard ends up with the same text.
func osc52Sequence(text string, getenv func(string) string) (through, sequence string) {
	plain := osc52.New(text)
	name := getenv("TERM")
	switch {
	case getenv("TMUX") != "" || strings.HasPrefix(name, "tmux"):
		return "tmux's pass-through", plain.String() + plain.Tmux().String()
	case getenv("STY") != "" || strings.HasPrefix(name, "screen"):
		return "screen", plain.String() + plain.Screen().String()
	}
	return "", plain.String()
}
