package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
	"sync"

	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"alongside/data"
	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/report"
	"alongside/props/settings"
	"alongside/props/sheet"
)

// program is what a command works with: where it reads and writes, and the
// catalog.
type program struct {
	ctx      context.Context
	in       io.Reader
	out, err io.Writer
	env      func(string) string
	catalog  func() *catalog.Catalog
	builtIn  func() *catalog.Catalog   // the catalog without what the shop has of its own
	houses   []string                  // files of the shop named on the command line
	invented string                    // what to say of the demo, "" without it
	settings func() *settings.Settings // what the user likes; read once
}

// run carries out a command line and returns the exit code. It writes results
// to stdout and what went wrong to stderr, and reads the environment only
// through env.
func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer, env func(string) string) int {
	p := &program{ctx: ctx, in: stdin, out: stdout, err: stderr, env: env, catalog: data.Catalog}
	return p.run(args)
}

func (p *program) run(args []string) int {
	root := p.root(args)
	root.SetArgs(minusSigns(args))
	root.SetIn(p.in)
	out := &firstError{Writer: p.out}
	root.SetOut(out)
	root.SetErr(p.err)
	cmd, err := root.ExecuteContextC(p.ctx)
	if out.err != nil {
		err = writeFailure(out.err)
	}
	if err != nil && err.Error() != "" {
		fmt.Fprintln(p.err, "alongside: "+sheet.CleanLines(cutLines(err.Error())))
		if _, known := err.(*failure); !known && cmd != nil {
			fmt.Fprintf(p.err, "see: %s --help\n", cmd.CommandPath())
		}
	}
	return exitCode(err)
}

// firstError keeps the first error of writing, which help and completions drop.
type firstError struct {
	io.Writer
	err error
}

func (w *firstError) Write(b []byte) (int, error) {
	n, err := w.Writer.Write(b)
	w.err = cmp.Or(w.err, err)
	return n, err
}

// cutLines cuts lines that quote a very long text.
func cutLines(s string) string {
	const most = 8000 // bytes
	lines := strings.Split(s, "\n")
	for i, l := range lines {
		if len(l) > most {
			lines[i] = strings.ToValidUTF8(l[:most/8], "") + "…"
		}
	}
	return strings.Join(lines, "\n")
}

// material finds the material that a designation names, and says where a search
// found it instead.
func (p *program) material(typed string) (*props.Material, error) {
	m, named, err := p.catalog().ResolveNear(typed)
	if err == nil && !named {
		fmt.Fprintf(p.err, "alongside: %q is taken as %s\n", typed, m.ID)
	}
	return m, err
}

// negative reports whether an argument begins like a negative number, not like
// a flag.
func negative(arg string) bool {
	rest, minus := strings.CutPrefix(arg, "-")
	rest = strings.TrimPrefix(rest, ".")
	return minus && rest != "" && rest[0] >= '0' && rest[0] <= '9'
}

// minusSigns gives negative numbers a true minus sign, so that "-40 °F" is not
// taken for a flag.
func minusSigns(args []string) []string {
	out := make([]string, len(args))
	for i, a := range args {
		if negative(a) {
			a = "−" + a[1:]
		}
		out[i] = a
	}
	return out
}

// print writes a finished text to stdout.
func (p *program) print(text string) error {
	_, err := io.WriteString(p.out, text)
	return writeFailure(err)
}

// formatFlag adds the flag that every printing command has.
func formatFlag(cmd *cobra.Command) *choice {
	return choiceFlag(cmd, "format", "form of the output", report.Formats()...)
}

// printDoc writes an answer to stdout in the format asked for.
func (p *program) printDoc(d *report.Doc, format *choice) error {
	text, err := d.Render(format.value, p.width())
	if err != nil {
		return err
	}
	return p.print(text)
}

// pipeWidth is the line length where stdout is not a terminal.
const pipeWidth = 80

// width is the line length for texts: that of the terminal, or COLUMNS where
// it is set.
func (p *program) width() int {
	if n, err := strconv.Atoi(p.env("COLUMNS")); err == nil && n > 0 {
		return n
	}
	if f, ok := p.out.(*os.File); ok {
		if w, _, err := term.GetSize(f.Fd()); err == nil && w > 0 {
			return w
		}
	}
	return pipeWidth
}

// terminal reports whether the program reads from and draws on a terminal that
// can place its cursor.
func (p *program) terminal() bool {
	in, ok := p.in.(*os.File)
	if !ok || !term.IsTerminal(in.Fd()) {
		return false
	}
	out, ok := p.out.(*os.File)
	return ok && term.IsTerminal(out.Fd()) && p.env("TERM") != "dumb"
}

// root is the program with its commands; where the first word names one, with
// that one alone, since the others would be made for nothing.
func (p *program) root(args []string) *cobra.Command {
	root := p.benchCommand()
	root.SilenceErrors, root.SilenceUsage = true, true
	root.SetFlagErrorFunc(func(_ *cobra.Command, err error) error {
		var wrong *pflag.InvalidValueError
		if _, number := errors.AsType[*strconv.NumError](err); number && errors.As(err, &wrong) {
			return fmt.Errorf("--%s is %q: expected a whole number", wrong.GetFlag().Name, wrong.GetValue())
		}
		return err
	})
	house := root.PersistentFlags().StringArray("house", nil, "add the shop's own figures from a data `FILE`; may be given again")
	root.PersistentPreRunE = func(cmd *cobra.Command, _ []string) error {
		p.readSettings(cmd)
		return p.addHouse(*house)
	}
	all := []struct {
		name string
		make func() *cobra.Command
	}{
		{"compare", p.compareCommand}, {"show", p.showCommand}, {"find", p.findCommand}, {"convert", p.convertCommand},
		{"swap", p.swapCommand}, {"cost", p.costCommand}, {"brief", p.briefCommand}, {"report", p.reportCommand},
		{"picture", p.pictureCommand}, {"process", p.processCommand}, {"drawing", p.drawingCommand}, {"watch", p.watchCommand},
		{"call", p.callCommand}, {"bars", p.barsCommand}, {"doctor", p.doctorCommand}, {"settings", p.settingsCommand},
		{"check", p.checkCommand}, {"sources", p.sourcesCommand}, {"shelf", p.shelfCommand}, {"version", p.versionCommand},
	}
	for _, c := range all {
		if len(args) > 0 && args[0] == c.name {
			root.CompletionOptions.DisableDefaultCmd = true
			root.AddCommand(c.make())
			return root
		}
	}
	for _, c := range all {
		root.AddCommand(c.make())
	}
	return root
}

// addHouse lays what the shop checked and its own data files over the catalog,
// for every command.
func (p *program) addHouse(names []string) error {
	p.builtIn, p.houses = p.catalog, names
	p.catalog = sync.OnceValue(p.withChecks)
	if len(names) == 0 {
		return nil
	}
	c, err := p.load(names)
	if err != nil {
		return err
	}
	p.tellDropped(c, p.catalog())
	p.catalog = func() *catalog.Catalog { return c }
	return nil
}
