// Package bench lays out the table of the bench: columns measured and cells
// styled for a width and a theme. Which part of it is in sight, and where the
// cursor is, the screen says.
package bench
