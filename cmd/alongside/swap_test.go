package main

import "testing"

// Swaps whose whole output is kept in testdata/cmd, on the invented catalog.
func TestSwapCommand(t *testing.T) {
	part := []string{"--mass", "4.2 lb", "--wall", "3/8 in", "--length", "12 in", "--case", "plate", "--service", "68..400 F",
		"--mate", "t1-f-sand", "--stress", "5 ksi", "--fit", "1.5 in", "--price", "l30=0.60 USD/lb", "--price", "t1-t6-pm=1.20 USD/lb"}
	for name, line := range map[string]struct {
		args []string
		code int
	}{
		"swap-text":      {append([]string{"swap", "l30", "t1-f-sand", "t1-t6-pm"}, part...), exitOK},
		"swap-si":        {append([]string{"swap", "l30", "t1-f-sand", "--units", "si"}, part...), exitOK},
		"swap-markdown":  {append([]string{"swap", "t1-f-sand", "t2-die", "--format", "markdown"}, part...), exitOK},
		"swap-html":      {append([]string{"swap", "t1-f-sand", "t2-die", "--format", "html"}, part...), exitOK},
		"swap-tsv":       {append([]string{"swap", "t1-f-sand", "t2-die", "--format", "tsv"}, part...), exitOK},
		"swap-json":      {append([]string{"swap", "l30", "t1-f-sand", "--format", "json"}, part...), exitOK},
		"swap-nothing":   {[]string{"swap", "l30", "t1-f-sand"}, exitOK},
		"swap-yield":     {[]string{"swap", "l30", "t1-f-sand", "--strength", "yield", "--keep", "strength", "--case", "beam"}, exitOK},
		"swap-hot":       {[]string{"swap", "t1-f-sand", "t1-t6-pm", "--service", "-40..900 F", "--length", "12 in"}, exitOK},
		"swap-help":      {[]string{"swap", "--help"}, exitOK},
		"swap-negative":  {[]string{"swap", "l30", "t1-f-sand", "--mass", "-3 lb"}, exitUsage},
		"swap-no-unit":   {[]string{"swap", "l30", "t1-f-sand", "--wall", "3/8"}, exitUsage},
		"swap-one-end":   {[]string{"swap", "l30", "t1-f-sand", "--service", "250 F"}, exitOK},
		"swap-bad-case":  {[]string{"swap", "l30", "t1-f-sand", "--case", "girder"}, exitUsage},
		"swap-bad-mate":  {[]string{"swap", "l30", "t1-f-sand", "--mate", "unobtainium"}, exitUsage},
		"swap-bad-price": {[]string{"swap", "l30", "t1-f-sand", "--price", "1.20/lb"}, exitUsage},
		"swap-twice":     {[]string{"swap", "l30", "t1-f-sand", "--mass", "4 lb", "--mass", "5 lb"}, exitUsage},
		"swap-alone":     {[]string{"swap", "l30"}, exitUsage},
		"swap-unknown":   {[]string{"swap", "l30", "l31"}, exitUsage},
	} {
		t.Run(name, func(t *testing.T) { keep(t, name, try(invented, line.args...), line.code) })
	}
}
