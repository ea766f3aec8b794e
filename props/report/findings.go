package report

import "alongside/props/sheet"

// Found is one thing that the program finds where it runs, with what to do where
// it is not as it should be.
type Found struct{ What, Is, Remedy string }

// FindingsDoc lists what was found, and below what is to be done.
func FindingsDoc(list []Found) *Doc {
	return &Doc{
		text: func(*numbering) *sheet.Doc {
			t := &sheet.Table{Columns: sheet.Columns("", "found", "what to do")}
			for _, f := range list {
				t.Add(f.What, f.Is, f.Remedy)
			}
			return &sheet.Doc{Blocks: []sheet.Block{t}}
		},
		json: func() object {
			return object{{"found", each(list, func(f *Found) object {
				return object{{"what", f.What}, {"is", f.Is}, {"remedy", f.Remedy}}
			})}}
		},
	}
}
