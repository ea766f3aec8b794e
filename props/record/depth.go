package record

// deepest is how many brackets may stand in each other, and how many parts a
// dotted key may have. The TOML reader takes memory and time out of proportion
// for more, and no record needs so many.
const deepest = 16

// tooDeep is the first line of a chunk, from 1, on which brackets or the parts
// of a key go beyond deepest; 0 where none does. What stands in quotes or behind
// # does not count. Its branches are the characters that mean something in TOML.
func tooDeep(lines []string) int {
	depth, dots, quote := 0, 0, ""
	for n, l := range lines {
		dots = 0
		for i := 0; i < len(l); i++ {
			switch c := l[i]; {
			case quote != "":
				if c == '\\' && quote[0] == '"' {
					i++
				} else if hasAt(l, i, quote) {
					i += len(quote) - 1
					quote = ""
				}
			case c == '"' || c == '\'':
				quote = l[i : i+1]
				if three := quote + quote + quote; hasAt(l, i, three) {
					quote = three
				}
				i += len(quote) - 1
			case c == '#':
				i = len(l)
			case c == '[' || c == '{':
				depth++
				dots = 0
			case c == ']' || c == '}':
				depth--
			case c == '.':
				dots++
			case c == '=' || c == ',':
				dots = 0
			}
			if depth > deepest || dots > deepest {
				return n + 1
			}
		}
		if len(quote) == 1 { // a slip that the TOML reader tells of
			quote = ""
		}
	}
	return 0
}

func hasAt(s string, i int, part string) bool {
	return len(s)-i >= len(part) && s[i:i+len(part)] == part
}
