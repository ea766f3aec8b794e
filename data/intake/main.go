// Intake takes a collection of figures that were read on pages into the data
// files: a figure from memory whose source a page reproduces becomes read, one
// whose digits stand in another document becomes agreed with it. Which page
// gives which degree is said in rules.toml. It never changes a value.
//
//	go run ./data/intake FOLDER...
//
// Each FOLDER holds CSV files with the columns of pages.csv; name all of them,
// since the log covers only those named. A tenth of
// the rows, always the same, is kept out and only compared with the catalog,
// unless -all is given.
// Log.csv tells what became of the rows, left.csv which of them were not taken
// and why. Running it again changes nothing.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"alongside/props"
	"alongside/props/catalog"
)

func main() {
	data := flag.String("data", "data", "folder of the data files")
	all := flag.Bool("all", false, "take the tenth that is held out too, once it has been compared")
	flag.Parse()
	if flag.NArg() == 0 {
		fmt.Fprintln(os.Stderr, "intake: name the folders that hold the CSV files: go run ./data/intake FOLDER...")
		os.Exit(2)
	}
	var rs rules
	err := rs.read(rulesText)
	if err == nil {
		err = take(&rs, *data, flag.Args(), filepath.Join(*data, "intake"), *all)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "intake:", err)
		os.Exit(1)
	}
}

// take puts the rows of the folders into the data files, as the rules allow, and
// writes the log.
func take(rs *rules, data string, folders []string, logs string, all bool) error {
	c, err := catalog.Load(os.DirFS(data))
	if err != nil {
		return err
	}
	if err := rs.check(c); err != nil {
		return err
	}
	rows, err := readRows(folders)
	if err != nil {
		return err
	}
	parse(c, rows)
	matches, verdicts := judge(c, rs, rows, all)
	log := newLog()
	for i, r := range rows {
		result, figure := matches[i].outcome(r, verdicts)
		log.add(r, result, figure)
	}
	if err := edit(c, data, verdicts); err != nil {
		return err
	}
	fmt.Print(log.summary())
	return log.write(logs)
}

// matching is a row's place in the catalog.
type matching struct {
	rule    *rule
	found   []*props.Figure // figures with the row's value
	nearest *props.Figure   // without one: another of the same property and basis
	reason  string          // without one: why
}

// judge finds for each row its figures in the catalog and works out what may
// be said of these.
func judge(c *catalog.Catalog, rs *rules, rows []*row, all bool) ([]matching, map[*props.Figure]*verdict) {
	matches := make([]matching, len(rows))
	verdicts := map[*props.Figure]*verdict{}
	for i, r := range rows {
		m := &matches[i]
		m.found, m.nearest, m.reason = match(c, r)
		m.rule = rs.of(r)
		if m.rule == nil || (r.held() && !all) {
			continue
		}
		for _, f := range m.found {
			if f.Known() == props.Read {
				continue
			}
			v := verdicts[f]
			if v == nil {
				v = &verdict{agrees: f.Agrees}
			}
			if v.judge(c, m.rule, f) {
				verdicts[f] = v
			}
		}
	}
	return matches, verdicts
}

// outcome is what became of a row, and the figure of the catalog it met.
func (m *matching) outcome(r *row, verdicts map[*props.Figure]*verdict) (string, *props.Figure) {
	switch {
	case r.held() && len(m.found) > 0:
		return heldSame, m.found[0]
	case r.held() && m.reason == otherValue:
		return heldOther, m.nearest
	case r.held():
		return heldNone, m.nearest
	case len(m.found) == 0:
		return m.reason, m.nearest
	case m.rule == nil:
		return noRule, m.found[0]
	}
	best := noRule
	for _, f := range m.found {
		v := verdicts[f]
		switch {
		case f.Known() == props.Read || (v != nil && v.read):
			return asRead, f
		case v != nil && v.agrees != nil:
			best = asAgreed
		}
	}
	return best, m.found[0]
}
