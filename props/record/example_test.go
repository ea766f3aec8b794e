package record_test

import (
	"fmt"

	"alongside/props/record"
)

// Every mistake is told with its line and a remedy, and does not hide the next.
func ExampleReadRecords() {
	var errs record.Errors
	for _, r := range record.ReadRecords("x.toml", []byte(`[[alloy]]
id = "a356"
nmae = "A356.0"

[[aloy]]
id = "319"
`), &errs, "alloy") {
		r.Label = r.Text("id", true)
		r.Text("name", true)
		fmt.Println("read:", r.Label)
		r.Finish()
	}
	fmt.Println(errs.Sorted())
	// Output:
	// read: a356
	// x.toml:1: a356, name: is missing
	//     remedy: add name = "…"
	// x.toml:3: a356, nmae: is not a key of this record
	//     remedy: did you mean name?
	// x.toml:5: aloy: is not a kind of record
	//     remedy: did you mean alloy?
}
