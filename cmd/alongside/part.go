package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"alongside/props/catalog"
	"alongside/props/part"
)

// partFlags are fields of the part as typed on the command line, the same for
// every command; price and with may be given more than once.
type partFlags map[part.Field]*[]string

// partFlags adds the flags of the fields that a command can use.
func (p *program) partFlags(cmd *cobra.Command, fields ...part.Field) partFlags {
	typed := partFlags{}
	for _, f := range fields {
		info := f.Info()
		usage := fmt.Sprintf("%s, such as `%q`", info.Help, info.Example)
		if info.Words != nil {
			usage = fmt.Sprintf("%s: `%s`", info.Help, strings.Join(info.Words, "|"))
			_ = cmd.RegisterFlagCompletionFunc(info.Name, cobra.FixedCompletions(info.Words, cobra.ShellCompDirectiveNoFileComp))
		}
		typed[f] = cmd.Flags().StringArray(info.Name, nil, usage)
		switch f {
		case part.FieldMate:
			_ = cmd.RegisterFlagCompletionFunc(info.Name, p.completeMaterials)
		case part.FieldWith:
			_ = cmd.RegisterFlagCompletionFunc(info.Name, completeList((^part.Facts(0)).IDs()))
		}
	}
	return typed
}

// read reads all fields that were typed.
func (typed partFlags) read(c *catalog.Catalog) (part.Given, error) {
	var all part.Part
	for _, f := range part.Fields() {
		if typed[f] == nil {
			continue
		}
		texts := *typed[f]
		switch {
		case f == part.FieldWith:
			texts = []string{strings.Join(texts, ",")}
		case len(texts) > 1 && f != part.FieldPrice:
			return part.Given{}, fmt.Errorf("--%s is given twice: %q and %q", f, texts[0], texts[1])
		}
		for _, t := range texts {
			if err := all.Set(c, f, t); err != nil {
				return part.Given{}, fmt.Errorf("--%w", err)
			}
		}
	}
	return all.Read(c)
}
