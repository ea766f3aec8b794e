// Package ui is the parts that the screens are made of: a list with a cursor,
// a text field, a text that scrolls, tables of keys, themes, and the measuring
// of texts. It knows nothing of metals.
package ui
