package main

import (
	"strconv"
	"strings"
	"testing"
)

// casting is a catalog of invented figures whose families are real, so that
// the process data and the watch-outs apply to it.
var casting = catalogOf("../../testdata/foundry/invented.toml")

// Process cards and watch-outs whose whole output is kept in testdata/cmd.
func TestFoundryCommands(t *testing.T) {
	watch := []string{"watch", "gray-99", "399-t6-die", "--service", "-40..310 F", "--mate", "9999",
		"--with", "press-fit,anodize", "--dismiss", "stiffness"}
	for name, line := range map[string]struct {
		args []string
		code int
	}{
		"drawing-text":         {[]string{"drawing", "gray-99", "399-t6-die", "--with", "pressure-tight"}, exitOK},
		"drawing-json":         {[]string{"drawing", "399-t6-die", "--format", "json"}, exitOK},
		"process-text":         {[]string{"process", "399-t6-die", "gray-99", "9999", "--dimension", "5 in"}, exitOK},
		"process-mm":           {[]string{"process", "gray-99", "--dimension", "100 mm"}, exitOK},
		"process-markdown":     {[]string{"process", "gray-99", "--dimension", "4 in", "--format", "markdown"}, exitOK},
		"process-tsv":          {[]string{"process", "399-t6-die", "--format", "tsv"}, exitOK},
		"process-json":         {[]string{"process", "399-t6-die", "9999", "--dimension", "5 in", "--format", "json"}, exitOK},
		"process-help":         {[]string{"process", "--help"}, exitOK},
		"process-negative":     {[]string{"process", "gray-99", "--dimension", "-4 in"}, exitUsage},
		"process-no-unit":      {[]string{"process", "gray-99", "--dimension", "4"}, exitUsage},
		"process-wrong-unit":   {[]string{"process", "gray-99", "--dimension", "4 lb"}, exitUsage},
		"process-range":        {[]string{"process", "gray-99", "--dimension", "4-5 in"}, exitUsage},
		"process-unknown":      {[]string{"process", "gray-98"}, exitUsage},
		"watch-text":           {watch, exitOK},
		"watch-markdown":       {append(watch[:len(watch):len(watch)], "--format", "markdown"), exitOK},
		"watch-tsv":            {append(watch[:len(watch):len(watch)], "--format", "tsv", "--units", "si"), exitOK},
		"watch-json":           {append(watch[:len(watch):len(watch)], "--format", "json"), exitOK},
		"watch-plain":          {[]string{"watch", "399-t6-die", "gray-99"}, exitOK},
		"watch-help":           {[]string{"watch", "--help"}, exitOK},
		"watch-unknown-fact":   {[]string{"watch", "gray-99", "399-t6-die", "--with", "press-fits"}, exitUsage},
		"watch-unknown-id":     {[]string{"watch", "gray-99", "399-t6-die", "--dismiss", "stifness"}, exitUsage},
		"watch-unknown-mate":   {[]string{"watch", "gray-99", "399-t6-die", "--mate", "9998"}, exitUsage},
		"watch-wrong-service":  {[]string{"watch", "gray-99", "399-t6-die", "--service", "250 psi"}, exitUsage},
		"watch-same":           {[]string{"watch", "gray-99", "gray-99"}, exitUsage},
		"watch-one":            {[]string{"watch", "gray-99"}, exitUsage},
		"watch-unknown-format": {[]string{"watch", "gray-99", "399-t6-die", "--format", "pdf"}, exitUsage},
	} {
		t.Run(name, func(t *testing.T) { keep(t, name, try(casting, line.args...), line.code) })
	}
}

// Every record of the process data counts once, with its share from memory.
func TestProcessSources(t *testing.T) {
	r := try(casting, "sources", "--process")
	if r.code != exitOK || !strings.Contains(r.out, "ISO-8062-3 ") || !strings.Contains(r.out, "PRACTICE ") {
		t.Fatalf("%d %s%s", r.code, r.out, r.errors)
	}
	sum, all := [2]int{}, [2]int{}
	for _, line := range strings.Split(r.out, "\n")[1:] {
		f := strings.Fields(line)
		if len(f) == 0 {
			break
		}
		a, _ := strconv.Atoi(f[len(f)-4])
		b, _ := strconv.Atoi(f[len(f)-1])
		if f[0] == "all" {
			all = [2]int{a, b}
		} else {
			sum[0], sum[1] = sum[0]+a, sum[1]+b
		}
	}
	if sum != all || all[0] < 500 || all[1] >= all[0] {
		t.Errorf("lines add up to %v, all says %v", sum, all)
	}
}
