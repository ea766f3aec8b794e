package main

import (
	"encoding/json"
	"slices"
	"strconv"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props/report"
)

// every is a command line of each command that prints an answer, without its
// format, and the kind of document by the schema of the output.
var every = []struct {
	kind string
	args []string
}{
	{"compare", []string{"compare", "gray-30", "a356-t6-pm", "319-f-sand", "--need", "yield >= 20 ksi", "--need", "family = aluminum"}},
	{"compare", []string{"compare", "gray-30", "a356-t6-pm", "--service", "300 °F", "--delta", "amount", "--units", "si"}},
	{"compare", []string{"picture", "tensile", "gray-30", "a356-t6-pm", "319-f-sand"}},
	{"show", []string{"show", "a356-t6-pm"}},
	{"show", []string{"show", "gray-30", "--units", "si"}},
	{"list", []string{"find", "a356", "t6"}},
	{"find", []string{"find", "aluminum", "--need", "yield >= 26 ksi; elongation >= 3 %", "--near", "3"}},
	{"find", []string{"find", "--need", "family = aluminum", "--duty", "plate-stiffness", "--baseline", "gray-30", "--front", "yield,density"}},
	{"swap", []string{"swap", "gray-30", "a356-t6-pm", "--mass", "4.2 lb", "--wall", "3/8 in", "--case", "plate", "--length", "12 in", "--service", "70..250 F"}},
	{"cost", []string{"cost", "gray-30", "a356-t6-pm", "a380-f-die", "--mass", "4.2 lb", "--quantity", "2345", "--demo"}},
	{"brief", []string{"brief", "gray-30", "a356-t6-pm", "a380-f-die", "--mass", "4.2 lb", "--need", "yield >= 20 ksi", "--service", "70..250 F"}},
	{"process", []string{"process", "a356-t6-pm", "gray-30", "--dimension", "4 in"}},
	{"watch", []string{"watch", "gray-30", "a356-t6-pm", "a380-f-die", "--service", "250 F", "--with", "press-fit,threads", "--dismiss", "stiffness"}},
	{"convert", []string{"convert", "37-40 ksi"}},
	{"convert", []string{"convert", ">= 37 ksi", "MPa"}},
	{"sources", []string{"sources"}},
	{"process_sources", []string{"sources", "--process"}},
	{"waiting", []string{"sources", "--waiting"}},
	{"shelf_sources", []string{"shelf"}},
	{"shelf", []string{"shelf", "AA-ADS", "--agreed"}},
	{"report", []string{"report", "gray-30", "a356-t6-pm", "a380-f-die", "--mass", "4.2 lb", "--need", "yield >= 20 ksi"}},
	{"drawing", []string{"drawing", "gray-30", "a356-t6-pm", "--with", "pressure-tight"}},
	{"bars", []string{"bars", "../../data/demo/invented-bars.csv"}},
}

// Every command prints every format, and its help names them.
func TestEveryCommandInEveryFormat(t *testing.T) {
	for _, e := range every {
		args := e.args
		for _, format := range report.Formats() {
			if r := try(data.Catalog, append(slices.Clone(args), "--format", format)...); r.code != exitOK || r.out == "" {
				t.Errorf("%v as %s: exit code %d, %s", args, format, r.code, r.errors)
			}
		}
		if r := try(data.Catalog, args[0], "--help"); !strings.Contains(r.out, "form of the output: "+strings.Join(report.Formats(), ", ")) {
			t.Errorf("%s --help does not name the formats", args[0])
		}
	}
}

// What is known from memory alone is offered when asked for, and counted until then.
func TestFindOffersMemoryWhenAsked(t *testing.T) {
	count := func(args ...string) (met, left int) {
		var have struct {
			Met     []struct{ Material string }
			LeftOut []string `json:"left_out"`
		}
		r := try(data.Catalog, append([]string{"find", "aluminum", "--need", "yield >= 20 ksi", "--near", "0", "--format", "json"}, args...)...)
		if err := json.Unmarshal([]byte(r.out), &have); err != nil {
			t.Fatal(err, r.errors)
		}
		return len(have.Met), len(have.LeftOut)
	}
	met, left := count()
	all, none := count("--memory")
	if left == 0 || none != 0 || all != met+left {
		t.Errorf("%d met and %d left out; with --memory %d and %d", met, left, all, none)
	}
	if r := try(data.Catalog, "find", "aluminum", "--need", "yield >= 20 ksi"); !strings.Contains(r.out, "Left out, known from memory alone: "+strconv.Itoa(left)+"; --memory offers") {
		t.Errorf("nothing says what is left out:\n%s", r.out)
	}
}
