package main

import "alongside/props"

// audit returns the findings that carry no explanation, a line each, and the
// number of those that do.
func audit(*props.Catalog) (open []string, explained int) { return nil, 0 }
