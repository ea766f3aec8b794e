package report

import (
	"strconv"

	"alongside/props"
)

// KnownText says at length how a statement is known: where it was read, or the
// document that a figure from memory agrees with. Where may be empty, agrees
// nil.
func KnownText(k props.Known, where string, agrees *props.Source) string {
	switch {
	case k == props.Agreed:
		return "from memory; the same digits were read in another document: " + SourceText(agrees)
	case k == props.Memory && where != "":
		return "from memory, not read (" + where + ")"
	case k == props.Memory:
		return "from memory, not read: check it against the source"
	case where != "":
		return "read: " + where
	}
	return "read"
}

// unread follows the citation of a statement that was not read in its source;
// it is "" for one that was. Agrees names the document that a figure from
// memory agrees with.
func unread(k props.Known, agrees string) string {
	switch k {
	case props.Memory:
		return "from memory, not read"
	case props.Agreed:
		return "from memory, agrees with " + agrees
	}
	return ""
}

// unread is the aside for a figure whose sources are cited by number.
func (n *numbering) unread(f *props.Figure) string {
	if f.Known() == props.Agreed {
		return unread(props.Agreed, "S"+strconv.Itoa(n.source(f.Agrees)))
	}
	return unread(f.Known(), "")
}
