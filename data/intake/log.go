package main

import (
	"encoding/csv"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"alongside/props"
)

// results are the columns of log.csv.
var results = []string{asRead, asAgreed, noMaterial, absent, otherValue, doubtful, otherTest, shared, noRule, unreadable,
	heldSame, heldOther, heldNone}

type intakeLog struct {
	counts map[[2]string]map[string]int // source and page → result → rows
	left   [][]string
}

func newLog() *intakeLog { return &intakeLog{counts: map[[2]string]map[string]int{}} }

func (l *intakeLog) add(r *row, result string, figure *props.Figure) {
	key := [2]string{r.Source, r.Page}
	if l.counts[key] == nil {
		l.counts[key] = map[string]int{}
	}
	l.counts[key][result]++
	switch result {
	case otherValue, doubtful, shared, noRule, heldOther:
		have := ""
		if figure != nil {
			have = figure.Value.String() + " [" + figure.Source.ID + "]"
		}
		l.left = append(l.left, []string{r.Material, r.Property, r.Basis, strings.TrimSpace(r.Value + " " + r.Unit), r.Conditions, r.Source, have, result})
	}
}

// summary is the count of rows by result.
func (l *intakeLog) summary() string {
	var b strings.Builder
	for _, result := range results {
		n := 0
		for _, counts := range l.counts {
			n += counts[result]
		}
		fmt.Fprintf(&b, "%6d %s\n", n, result)
	}
	return b.String()
}

// write puts log.csv and left.csv into a folder.
func (l *intakeLog) write(folder string) error {
	table := [][]string{append([]string{"source", "page", "rows"}, results...)}
	keys := slices.SortedFunc(maps.Keys(l.counts), func(a, b [2]string) int {
		return strings.Compare(a[0]+"\x00"+a[1], b[0]+"\x00"+b[1])
	})
	for _, key := range keys {
		sum, record := 0, []string{}
		for _, result := range results {
			n := l.counts[key][result]
			sum += n
			record = append(record, strconv.Itoa(n))
		}
		table = append(table, append([]string{key[0], key[1], strconv.Itoa(sum)}, record...))
	}
	if err := writeCSV(filepath.Join(folder, "log.csv"), table); err != nil {
		return err
	}
	head := []string{"material", "property", "basis", "value", "conditions", "source", "catalog", "why"}
	return writeCSV(filepath.Join(folder, "left.csv"), append([][]string{head}, l.left...))
}

func writeCSV(name string, table [][]string) error {
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	w := csv.NewWriter(f)
	if err := w.WriteAll(table); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}
