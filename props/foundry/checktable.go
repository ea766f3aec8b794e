package foundry

import "fmt"

// checkTables reports tolerance tables that cannot be right: a coarser grade
// or a greater size never has the smaller tolerance, and no cell stands
// twice.
func (l *loader) checkTables() {
	for _, table := range [][]gradeRow{l.book.dctg, l.book.rma} {
		for i := range table {
			checkRow(&table[i], table[:i])
			table[i].at = nil
		}
	}
}

func checkRow(row *gradeRow, before []gradeRow) {
	fail := func(format string, args ...any) {
		row.at.Fail("full", fmt.Sprintf(format, args...), "check the row against the standard's table")
	}
	for n, q := range row.full {
		if n > 0 && q.Lo < row.full[n-1].Lo {
			fail("%s stands after %s, but a coarser grade cannot be finer", q, row.full[n-1])
		}
		for i := range before {
			b := &before[i]
			m := row.first + n - b.first
			if m < 0 || m >= len(b.full) {
				continue
			}
			switch {
			case b.over.Lo == row.over.Lo:
				fail("grade %d stands twice for this size", row.first+n)
			case b.over.Lo < row.over.Lo && b.full[m].Lo > q.Lo:
				fail("%s is less than the %s of a smaller size", q, b.full[m])
			}
		}
	}
}
