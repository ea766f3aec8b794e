package main

import (
	"fmt"
	"go/constant"
	"go/importer"
	"go/token"
	"go/types"
	"reflect"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/units"
)

// writer writes values of the model as Go composite literals without maps and
// function calls, which the linker lays out as they are.
type writer struct {
	constants map[reflect.Type]map[int64]string // "props.Typical" by type and value
	pointers  map[any]string                    // what a pointer is written as
}

func newWriter(c *catalog.Catalog) (*writer, error) {
	w := &writer{constants: map[reflect.Type]map[int64]string{}, pointers: map[any]string{}}
	importing := importer.ForCompiler(token.NewFileSet(), "source", nil)
	for _, t := range []reflect.Type{
		reflect.TypeFor[props.PropertyID](), reflect.TypeFor[props.Basis](), reflect.TypeFor[props.Known](),
		reflect.TypeFor[props.Process](), reflect.TypeFor[units.Unit](), reflect.TypeFor[units.Qualifier](),
	} {
		p, err := importing.Import(t.PkgPath())
		if err != nil {
			return nil, err
		}
		w.constants[t] = constantsOf(p, t.Name())
	}
	for _, s := range c.Sources {
		w.pointers[s] = "&source" + variable("-"+s.ID)
	}
	for _, f := range c.Families {
		w.pointers[f] = "&family" + variable("-"+f.ID)
	}
	return w, nil
}

// constantsOf lists the exported constants of a type by their value.
func constantsOf(p *types.Package, name string) map[int64]string {
	out := map[int64]string{}
	for _, n := range p.Scope().Names() {
		k, ok := p.Scope().Lookup(n).(*types.Const)
		if named, is := types.Unalias(p.Scope().Lookup(n).Type()).(*types.Named); !ok || !is || !k.Exported() || named.Obj().Name() != name {
			continue
		}
		if v, exact := constant.Int64Val(k.Val()); exact {
			out[v] = p.Name() + "." + n
		}
	}
	return out
}

// shared writes what all alloys refer to, and the lists of everything.
func (w *writer) shared(b *strings.Builder, c *catalog.Catalog) {
	for _, s := range c.Sources {
		fmt.Fprintf(b, "var %s = %s\n\n", w.pointers[s][1:], w.literal(reflect.ValueOf(*s)))
	}
	var stated []props.Figure
	for _, f := range c.Families {
		stated = append(stated, f.Stated...)
	}
	w.blocks(b, "family", stated)
	for _, f := range c.Families {
		fmt.Fprintf(b, "var %s = %s\n\n", w.pointers[f][1:], w.literal(reflect.ValueOf(*f)))
	}
	fmt.Fprintf(b, "// SourceList lists every source.\nvar SourceList = %s\n\n", w.literal(reflect.ValueOf(c.Sources)))
	fmt.Fprintf(b, "// FamilyList lists every family.\nvar FamilyList = %s\n\n", w.literal(reflect.ValueOf(c.Families)))
	fmt.Fprintf(b, "// AlloyList lists every alloy.\nvar AlloyList = %s\n\n", w.literal(reflect.ValueOf(c.Alloys)))
	fmt.Fprintf(b, "// MaterialList lists every material.\nvar MaterialList = %s\n", w.literal(reflect.ValueOf(c.Materials)))
}

// alloys writes the alloys of one data file and their materials. The materials
// refer to the alloys and not the other way: the linker lays out no circle.
func (w *writer) alloys(b *strings.Builder, name string, c *catalog.Catalog, list []*props.Alloy) {
	var stated []props.Figure
	var alloys, materials strings.Builder
	n := 0
	for i, a := range list {
		w.pointers[a] = fmt.Sprintf("&%sAlloys[%d]", name, i)
		stated = append(stated, a.Stated...)
		for _, m := range c.Variants(a) {
			w.pointers[m] = fmt.Sprintf("&%sMaterials[%d]", name, n)
			stated = append(stated, m.Stated...)
			n++
		}
	}
	w.blocks(b, name, stated)
	for _, a := range list {
		alloys.WriteString(w.fields(reflect.ValueOf(*a)) + ",\n")
		for _, m := range c.Variants(a) {
			materials.WriteString(w.fields(reflect.ValueOf(*m)) + ",\n")
		}
	}
	fmt.Fprintf(b, "var %sAlloys = [...]props.Alloy{\n%s}\n\nvar %sMaterials = [...]props.Material{\n%s}\n", name, &alloys, name, &materials)
}

// blocks writes what figures share, each block and each set of conditions once.
func (w *writer) blocks(b *strings.Builder, name string, stated []props.Figure) {
	var blocks, conditions strings.Builder
	same := map[props.Conditions]string{}
	n := 0
	for i := range stated {
		f := &stated[i]
		if _, known := w.pointers[f.Block]; !known {
			w.pointers[f.Block] = fmt.Sprintf("&%sBlocks[%d]", name, n)
			n++
			blocks.WriteString(w.fields(reflect.ValueOf(*f.Block)) + ",\n")
		}
		if _, known := same[*f.Cond]; !known {
			same[*f.Cond] = fmt.Sprintf("&%sConditions[%d]", name, len(same))
			conditions.WriteString(w.fields(reflect.ValueOf(*f.Cond)) + ",\n")
		}
		w.pointers[f.Cond] = same[*f.Cond]
	}
	if n > 0 {
		fmt.Fprintf(b, "var %sBlocks = [...]props.Block{\n%s}\n\nvar %sConditions = [...]props.Conditions{\n%s}\n\n", name, &blocks, name, &conditions)
	}
}

// literal writes a value with its type.
func (w *writer) literal(v reflect.Value) string {
	switch v.Kind() {
	case reflect.Struct:
		return v.Type().String() + w.fields(v)
	case reflect.Slice:
		parts := make([]string, v.Len())
		for i := range parts {
			parts[i] = w.element(v.Index(i))
		}
		if k := v.Type().Elem().Kind(); k == reflect.Struct || k == reflect.Pointer {
			return v.Type().String() + "{\n" + strings.Join(parts, ",\n") + ",\n}"
		}
		return v.Type().String() + "{" + strings.Join(parts, ", ") + "}"
	case reflect.Pointer:
		return w.pointers[v.Interface()]
	case reflect.Float64:
		return strconv.FormatFloat(v.Float(), 'g', -1, 64)
	case reflect.Uint8:
		return w.constants[v.Type()][int64(v.Uint())]
	}
	return fmt.Sprintf("%#v", v.Interface())
}

// element writes a value in a list, which names its type already.
func (w *writer) element(v reflect.Value) string {
	if v.Kind() == reflect.Struct {
		return w.fields(v)
	}
	return w.literal(v)
}

// fields writes the fields of a struct that are not zero. Where a record stands in
// its file is left out.
func (w *writer) fields(v reflect.Value) string {
	var parts []string
	for i := range v.NumField() {
		name := v.Type().Field(i).Name
		if v.Field(i).IsZero() || name == "File" || name == "Line" {
			continue
		}
		parts = append(parts, name+": "+w.literal(v.Field(i)))
	}
	return "{" + strings.Join(parts, ", ") + "}"
}
