package main

import (
	"strings"
	"testing"

	"alongside/data"
	"alongside/props/report"
)

// The cost of a piece in every form, and in the swap, by rates that say that they are
// invented.
func TestCostCommand(t *testing.T) {
	const rates = goldenFolder + "/rates.toml"
	cost := func(more ...string) []string {
		return append([]string{"cost", "l30", "t1-f-sand", "t2-die", "--mass", "12 lb", "--house", rates}, more...)
	}
	for name, args := range map[string][]string{
		"cost-text": cost("--quantity", "3,000 a year"),
		"cost-json": {"cost", "l30", "t2-die", "--mass", "12 lb", "--quantity", "3,000 a year", "--units", "si", "--house", rates, "--format", "json"},
		"cost-csv":  cost("--format", "csv"),
		"cost-swap": {"swap", "l30", "t2-die", "--mass", "12 lb", "--quantity", "3,000 a year", "--house", rates},
		"cost-help": {"cost", "--help"},
	} {
		t.Run(name, func(t *testing.T) { keep(t, name, try(invented, args...), exitOK) })
	}
	for _, tt := range []struct {
		args []string
		want string
	}{
		{[]string{"cost", "l30", "t2-die", "--mass", "12 lb"}, "no rates: name the file of the shop with --house"},
		{[]string{"cost", "l30", "t2-die", "--house", rates}, "say what the part weighs today: --mass or --volume"},
		{cost("--quantity", "2000-3000"), "one size is needed"},
		{cost("--quantity", "0 a year"), "must be above zero"},
		{cost("--quantity", "some"), "quantity"},
	} {
		if r := try(invented, tt.args...); r.code != exitUsage || !strings.Contains(r.errors, tt.want) {
			t.Errorf("%v: exit code %d, %s", tt.args, r.code, r.errors)
		}
	}
}

// Rates stay in the house: what goes to the customer holds none of them.
func TestRatesStayInTheHouse(t *testing.T) {
	for _, command := range []string{"brief", "report"} {
		for _, format := range []string{"text", "html", "json"} {
			r := try(data.Catalog, command, "gray-30", "a356-t6-pm", "--mass", "11.5 lb", "--quantity", "2000", "--house", "../../data/demo/house.toml", "--format", format)
			if r.code != exitOK || strings.Contains(r.out, "$") || strings.Contains(r.out, "Invented rates") {
				t.Errorf("%s as %s: exit code %d, or it tells the rates", command, format, r.code)
			}
		}
	}
}

// The demo's foundry has rates for its metals, all said to be invented.
func TestDemoRates(t *testing.T) {
	for _, format := range []string{"text", "json"} {
		r := try(data.Catalog, "cost", "gray-30", "a356-t6-pm", "319-t6-sand", "zn-3-die", "az91d-die", "--mass", "11.5 lb", "--quantity", "2000 a year", "--house", "../../data/demo/house.toml", "--format", format)
		if r.code != exitOK || !strings.Contains(r.out, "Invented rates of an invented foundry") || strings.Contains(r.out, "no rate for") {
			t.Errorf("exit code %d:\n%s%s", r.code, r.out, r.errors)
		}
	}
	for _, format := range report.Formats() {
		if r := try(data.Catalog, "cost", "gray-30", "a356-t6-pm", "--mass", "12 lb", "--demo", "--format", format); !strings.Contains(r.out, "the foundry, its figures,") {
			t.Errorf("%s does not say that it is a demo:\n%s%s", format, r.out, r.errors)
		}
	}
	if len(data.Catalog().Rates) > 0 {
		t.Error("a price is built in")
	}
}
