package report_test

import (
	"fmt"
	"strings"

	"alongside/data"
	"alongside/props"
	"alongside/props/compare"
	"alongside/props/report"
)

// A comparison as a document, in any of the formats; every figure has its source and
// the page its caution.
func ExampleCompareDoc() {
	bench := compare.NewBench()
	bench.Pin(data.Catalog().Material("gray-30")) // the baseline
	bench.Pin(data.Catalog().Material("a356-t6-pm"))
	bench.Only = []props.PropertyID{props.Density}
	text, err := report.CompareDoc(compare.Compare(bench), report.Scope{}, report.Limits{}).Render("text", 76)
	table := strings.Split(text, "\n\n")[1]
	fmt.Println(table, err)
	fmt.Println(strings.Contains(strings.Join(strings.Fields(text), " "), report.Caution))
	// Output:
	//                   Class 30  A356.0
	//                             T6
	//                   sand      permanent mold
	//                   baseline
	// PHYSICAL
	// Density lb/in³ ↓  0.260     0.097 −63 % ✓ <nil>
	// true
}
