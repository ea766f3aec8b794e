package catalog

import (
	"strings"
	"testing"

	"alongside/props/cost"
)

const rates = `[[source]]
id = "RATES"
title = "Invented rates"
kind = "house"
[[rates]]
source = "RATES"
processes = ["sand"]
price_of_metal = "1.20 $/lb"
yield = "55-60 %"
conversion = "2 $/lb"
tool_cost = "4,000 $"
tool_life = "20,000 pieces"
[[rates]]
source = "RATES"
alloys = ["x1"]
tempers = ["T6"]
price_of_metal = "$1.50/lb"
`

func TestRates(t *testing.T) {
	base := shop(t)
	c, err := LoadFiles(base, []File{{"house.toml", []byte(rates)}})
	if err != nil {
		t.Fatal(err)
	}
	if len(base.Rates) > 0 {
		t.Error("the base was changed")
	}
	// The later record goes before the earlier one, for the metals it names.
	for id, want := range map[string]string{"x1-f-sand": "1.20 $/lb", "x1-t6-sand": "1.50 $/lb"} {
		r := cost.Of(get(t, c, id), c.Rates)
		if p, _ := r.Price(cost.Metal); p.String() != want {
			t.Errorf("%s: metal at %s, want %s", id, p, want)
		}
		if p, ok := r.Price(cost.ToolCost); !ok || p.Amount.Lo != 4000 {
			t.Errorf("%s: tool %v", id, p)
		}
	}
	// A further file is added to those before it, in the same currency.
	more := strings.NewReplacer("RATES", "MORE", "$", "EUR").Replace(rates)
	if _, err := LoadFiles(c, []File{{"more.toml", []byte(more)}}); err == nil || !strings.Contains(err.Error(), "more.toml:8: price_of_metal: \"1.20 EUR/lb\": the other rates are in $\n    remedy: state all rates in one currency") {
		t.Errorf("two currencies: %v", err)
	}
}

// Every mistake is told with its file, line, field and remedy.
func TestRatesErrors(t *testing.T) {
	for _, tt := range []struct{ from, to, want string }{
		{`"55-60 %"`, `"0 %"`, "house.toml:9: yield: \"0 %\": a yield is from 1 to 100 %\n    remedy: write it like 55-60 %"},
		{`"55-60 %"`, `"140 %"`, "a yield is from 1 to 100 %"},
		{`"55-60 %"`, `"60-55 %"`, "house.toml:9: yield"},
		{`"55-60 %"`, `"0.55"`, "house.toml:9: yield"},
		{`"55-60 %"`, `">= 55 %"`, "a limit is not a rate"},
		{`"20,000 pieces"`, `"0 pieces"`, "house.toml:12: tool_life: \"0 pieces\": a tool makes from 1 to"},
		{`"20,000 pieces"`, `"20,000 shots"`, "house.toml:12: tool_life"},
		{`"1.20 $/lb"`, `"-1.20 $/lb"`, "house.toml:8: price_of_metal: \"-1.20 $/lb\": must be above zero\n    remedy: write it like 1.35 $/lb"},
		{`"1.20 $/lb"`, `"0 $/lb"`, "must be above zero"},
		{`"1.20 $/lb"`, `"1.20 $"`, "it is no price of a mass"},
		{`"1.20 $/lb"`, `"1.20/lb"`, "the currency is missing"},
		{`"1.20 $/lb"`, `"1.20 $/ksi"`, `"ksi" is not a unit of mass`},
		{`"1.20 $/lb"`, `"free"`, "the amount is missing"},
		{`"1.20 $/lb"`, `"1.40-1.20 $/lb"`, "house.toml:8: price_of_metal"},
		{`"1.20 $/lb"`, `1.20`, "house.toml:8: price_of_metal: is 1.2, not text"},
		{`"2 $/lb"`, `"2 EUR/lb"`, "house.toml:10: conversion: \"2 EUR/lb\": the other rates are in $"},
		{`"2 $/lb"`, `"2 $"`, "is it for a piece or for a mass?"},
		{`"4,000 $"`, `"4,000 $/lb"`, "it is the money for one tool"},
		{`"4,000 $"`, `"-4,000 $"`, "house.toml:11: tool_cost: \"-4,000 $\": must be above zero"},
		{`processes = ["sand"]`, `processes = ["snad"]`, "house.toml:7: processes: \"snad\" is not a process"},
		{`alloys = ["x1"]`, `alloys = ["x9"]`, "house.toml:15: alloys: \"x9\" is no alloy of the catalog\n    remedy: did you mean x1?"},
		{`alloys = ["x1"]`, `families = ["x9"]`, "is no family of the catalog"},
		{`tempers = ["T6"]`, `tempers = ["T99"]`, "house.toml:13: no metal of the catalog is meant"},
		{`price_of_metal = "$1.50/lb"`, ``, "house.toml:13: the record holds no rate\n    remedy: add one of: price_of_metal"},
		{`price_of_metal = "$1.50/lb"`, `price = "$1.50/lb"`, "house.toml:17: price: is not a key of this record"},
		{`kind = "house"`, `kind = "trade"`, "house.toml:6: source: \"RATES\" is not of kind house"},
		{`source = "RATES"`, ``, "source: is missing"},
	} {
		_, err := LoadFiles(shop(t), []File{{"house.toml", []byte(strings.Replace(rates, tt.from, tt.to, 1))}})
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s\nhave: %v\nwant: %s", tt.to, err, tt.want)
		}
	}
}
