package background

import (
	"errors"
	"testing"
)

// environment returns a getenv over the given pairs.
func environment(pairs map[string]string) func(string) string {
	return func(name string) string { return pairs[name] }
}

func TestDecide(t *testing.T) {
	type env = map[string]string
	tests := []struct {
		name  string
		flag  string
		env   env
		want  Shade
		wrong string // Where of the error
	}{
		{"nothing said", "", nil, Unknown, ""},
		{"flag first", "light", env{Variable: "dark", "COLORFGBG": "15;0"}, Light, ""},
		{"then variable", "", env{Variable: " Dark ", "COLORFGBG": "0;15"}, Dark, ""},
		{"then terminal", "", env{"COLORFGBG": "0;15"}, Light, ""},
		{"auto passes on", "auto", env{Variable: "AUTO", "COLORFGBG": "15;0"}, Dark, ""},
		{"three fields", "", env{"COLORFGBG": "0;default;15"}, Light, ""},
		{"light gray", "", env{"COLORFGBG": "0;7"}, Light, ""},
		{"dark gray", "", env{"COLORFGBG": "0;8"}, Dark, ""},
		{"default says nothing", "", env{"COLORFGBG": "15;default"}, Unknown, ""},
		{"out of range", "", env{"COLORFGBG": "15;16"}, Unknown, ""},
		{"negative", "", env{"COLORFGBG": "15;-1"}, Unknown, ""},
		{"no background part", "", env{"COLORFGBG": "15"}, Unknown, ""},
		{"wrong flag", "beige", env{Variable: "light"}, Light, "--background"},
		{"wrong variable", "", env{Variable: "white", "COLORFGBG": "15;0"}, Dark, Variable},
		{"wrong variable not reached", "light", env{Variable: "white"}, Light, ""},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			have, err := Decide(test.flag, environment(test.env))
			if have != test.want {
				t.Errorf("have %v, want %v", have, test.want)
			}
			var wrong *Error
			if errors.As(err, &wrong); (wrong != nil) != (test.wrong != "") || wrong != nil && wrong.Where != test.wrong {
				t.Errorf("error %v, want one about %q", err, test.wrong)
			}
		})
	}
}

func TestAskable(t *testing.T) {
	type env = map[string]string
	tests := []struct {
		env  env
		want bool
	}{
		{env{"TERM": "xterm-256color"}, true},
		{env{"TERM": "foot"}, true},
		{env{}, false},
		{env{"TERM": "dumb"}, false},
		{env{"TERM": "linux"}, false},
		{env{"TERM": "screen.xterm-256color"}, false},
		{env{"TERM": "tmux-256color"}, false},
		{env{"TERM": "xterm-256color", "TMUX": "/tmp/tmux-0/default,1,0"}, false},
		{env{"TERM": "xterm", "STY": "1.pts-0"}, false},
	}
	for _, test := range tests {
		if have := askable(environment(test.env)); have != test.want {
			t.Errorf("askable with %v: %v, want %v", test.env, have, test.want)
		}
	}
}
