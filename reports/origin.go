package reports

import (
	"fmt"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/quantity"
)

// Origin says how a decision was come by, so that anyone can repeat it.
type Origin struct {
	// Command is the name of the command, and Study the file that it read.
	Command, Study string
	// Line is the whole command line.
	Line    string
	Version string
}

// CommandLine puts a command line together so that a shell reads it back as it was given.
func CommandLine(args []string) string {
	words := []string{"dwellcast"}
	for _, arg := range args {
		words = append(words, quoteWord(arg))
	}
	return strings.Join(words, " ")
}

// quoteWord puts a word into quotes where a shell would take it apart.
func quoteWord(word string) string {
	plain := func(r rune) bool {
		return strings.ContainsRune("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_=+.,:/@%", r)
	}
	if word != "" && !strings.ContainsFunc(word, func(r rune) bool { return !plain(r) }) {
		return word
	}
	return "'" + strings.ReplaceAll(word, "'", `'\''`) + "'"
}

// foot says how to repeat a decision that rests on so many shifts of each line.
func (o Origin) foot(replications int, seed uint64, conf float64) layout.Section {
	return layout.Section{Notes: []string{
		fmt.Sprintf("%s of each line on common random numbers, seed %d, intervals at %s, dwellcast %s", quantity.FormatCount(int64(replications), "shift"),
			seed, layout.Confidence(conf), o.Version),
		"Repeat it: " + o.Line,
		caution,
	}}
}
