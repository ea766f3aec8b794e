package sheets_test

import (
	"fmt"
	"os"

	"alongside/data"
	"alongside/props/call"
	"alongside/props/call/sheets"
)

// A call is kept whole in a file of its folder, and found by its name.
func ExampleFolder() {
	dir, err := os.MkdirTemp("", "")
	if err != nil {
		fmt.Println(err)
	}
	defer os.RemoveAll(dir)
	folder := &sheets.Folder{Path: dir, Catalog: data.Catalog}
	held := folder.New()
	c := call.Call{Name: "Pump bracket"}
	c.Bench.Pin(data.Catalog().Material("gray-30"))
	held.Put(c)
	fmt.Println(held.Close())
	found, err := folder.Find("pump")
	fmt.Println(found.Title(), err)
	// Output:
	// <nil>
	// Pump bracket <nil>
}
