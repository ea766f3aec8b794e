package props

// Process is the casting process, or wrought.
type Process uint8

// The processes, in the order in which the bench steps through them.
const (
	NoProcess Process = iota
	Sand
	PermanentMold
	Die
	Investment
	Continuous
	Centrifugal
	Wrought
	processCount
)

var processes = [processCount]struct{ id, name, words string }{
	NoProcess:     {"", "", ""},
	Sand:          {"sand", "sand", "sand cast casting green dry"},
	PermanentMold: {"pm", "permanent mold", "permanent mold mould gravity die"},
	Die:           {"die", "die", "die pressure high hpdc"},
	Investment:    {"inv", "investment", "investment lost wax"},
	Continuous:    {"cont", "continuous", "continuous"},
	Centrifugal:   {"cent", "centrifugal", "centrifugal"},
	Wrought:       {"wrought", "wrought", "wrought bar machined billet"},
}

// ID is the short form used in material ids: sand, pm, die, inv, cont, cent, wrought.
func (p Process) ID() string { return processes[p].id }

func (p Process) String() string { return processes[p].name }

// ParseProcess reads a process by its id or its name.
func ParseProcess(s string) (Process, bool) {
	for i, p := range processes[1:] {
		if s == p.id || s == p.name {
			return Process(i + 1), true
		}
	}
	return 0, false
}

// ProcessIDs lists the short forms of the processes.
func ProcessIDs() []string {
	var ids []string
	for _, p := range processes[1:] {
		ids = append(ids, p.id)
	}
	return ids
}

// Words are what a person may type for the process, with blanks between them.
func (p Process) Words() string { return processes[p].words }

// ProcessWords lists the ids and names that ParseProcess reads.
func ProcessWords() []string {
	var words []string
	for _, p := range processes[1:] {
		words = append(words, p.id)
		if p.name != p.id {
			words = append(words, p.name)
		}
	}
	return words
}
