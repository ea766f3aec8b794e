package watch

import "alongside/props"

// Conditions are what the caller knows of the part. Everything may be left
// out; a rule that needs what is left out is not raised.
type Conditions struct {
	LowestC, HighestC *float64        // service temperature, °C
	Mate              *props.Material // what the part touches, is pressed into or bolted to
	With              Facts           // what is planned with it
	Dismissed         []string        // ids of cautions that the user has put aside
}
