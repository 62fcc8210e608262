package layout

import (
	"bytes"
	"io"
	"regexp"
	"strings"
	"unicode/utf8"
)

// Terminal lays a page out for a terminal.
func (p *Page) Terminal(w io.Writer, style Style) error {
	out := &screen{style: style}
	for _, line := range Wrap(p.Title, style.Columns()) {
		out.strong(line)
	}
	for _, s := range p.Sections {
		if s.Data || s.empty() {
			continue
		}
		out.line("")
		if err := out.section(s); err != nil {
			return err
		}
	}
	if answer := p.find(func(s *Section) bool { return s.Answer }); len(answer.Text) > 0 && bytes.Count(out.text.Bytes(), []byte{'\n'}) > longScreen {
		out.line("")
		for _, line := range Wrap("The answer: "+marksAtEnd.ReplaceAllString(answer.Text[0], ""), style.Columns()-2) {
			out.strong("  " + line)
		}
	}
	_, err := w.Write(out.text.Bytes())
	return err
}

// marksAtEnd are those of notes, which stand by the answer itself.
var marksAtEnd = regexp.MustCompile(`( \[\d+\])+$`)

// longScreen is the number of lines from which the answer is repeated at the foot, where the reader ends up.
const longScreen = 40

// screen collects the lines of a page for a terminal.
type screen struct {
	style Style
	text  bytes.Buffer
}

func (o *screen) section(s Section) error {
	if s.Heading != "" {
		for _, line := range Wrap(s.Heading, o.style.Columns()) {
			o.strong(line)
		}
	}
	for i, sentence := range s.Text {
		for _, line := range Wrap(sentence, o.style.Columns()-2) {
			if s.Answer && i == 0 {
				o.strong("  " + line)
			} else {
				o.line("  " + line)
			}
		}
	}
	if !s.Table.empty() {
		if len(s.Text) > 0 {
			o.line("")
		}
		if err := o.table(s.Table.seen()); err != nil {
			return err
		}
	}
	if len(s.Plain) > 0 && (len(s.Text) > 0 || !s.Table.empty()) {
		o.line("")
	}
	for _, line := range s.Plain {
		o.line("  " + line)
	}
	for _, note := range s.Notes {
		hang := 0
		if strings.HasPrefix(note, "[") {
			hang = 4
		}
		for i, line := range Wrap(note, o.style.Columns()-2-hang) {
			o.line("  " + strings.Repeat(" ", hang*min(i, 1)) + line)
		}
	}
	return nil
}

// layouts are tried in turn until a table fits: the spaces between columns, and the most letters in a line of a left-hand cell.
var layouts = []struct{ gap, fold int }{{3, 60}, {2, 60}, {2, 28}, {2, 20}, {1, 28}, {1, 18}, {1, 12}, {1, 8}}

// table writes a table in the roomiest layout that fits, or row below row where none does.
func (o *screen) table(t *Table) error {
	width := o.style.Columns() - 2
	lines := t.stacked(width)
	for _, layout := range layouts {
		var text bytes.Buffer
		if err := terminalTable(&text, t, layout.gap, layout.fold); err != nil {
			return err
		}
		if rows := strings.Split(strings.TrimRight(text.String(), "\n"), "\n"); widest(rows) <= width {
			lines = rows
			break
		}
	}
	for _, line := range lines {
		o.line("  " + line)
	}
	return nil
}

func (o *screen) line(text string) {
	o.text.WriteString(strings.TrimRight(text, " "))
	o.text.WriteByte('\n')
}

func (o *screen) strong(text string) {
	if o.style.Bold {
		text = "\x1b[1m" + text + "\x1b[0m"
	}
	o.line(text)
}

// Printable takes out what would disturb a terminal or deceive a reader: control characters, and marks that turn the direction of
// writing, which a name in a file may hold. Line breaks stay.
func Printable(text string) string {
	return strings.Map(func(r rune) rune {
		if r != '\n' && (r < ' ' || r >= 0x7f && r < 0xa0 || turnsWriting(r)) {
			return '?'
		}
		return r
	}, text)
}

// turnsWriting says that a letter has no look of its own but changes the direction of others (Unicode Standard Annex 9).
func turnsWriting(r rune) bool {
	return r == 0x061c || r == 0x200e || r == 0x200f || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == 0xfeff
}

func widest(lines []string) int {
	most := 0
	for _, line := range lines {
		most = max(most, utf8.RuneCountInString(strings.TrimRight(line, " ")))
	}
	return most
}

// unbroken divides a sentence into words, a number kept together with its unit or what follows it.
func unbroken(sentence string) []string {
	var words []string
	for _, word := range strings.Fields(Printable(sentence)) {
		if n := len(words); n > 0 && strings.ContainsAny(words[n-1][len(words[n-1])-1:], "0123456789") {
			words[n-1] += " " + word
			continue
		}
		words = append(words, word)
	}
	return words
}

// Wrap breaks a sentence into lines of at most width characters, between words.
func Wrap(sentence string, width int) []string {
	var lines []string
	line := ""
	for _, word := range unbroken(sentence) {
		switch {
		case line == "":
			line = word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) <= width:
			line += " " + word
		default:
			lines = append(lines, line)
			line = word
		}
	}
	return append(lines, line)
}

// fold breaks a text into lines of at most width letters, between words where it can.
func fold(text string, width int) string {
	if len([]rune(text)) <= width {
		return text
	}
	var lines []string
	for _, line := range Wrap(text, width) {
		for len([]rune(line)) > width {
			lines = append(lines, string([]rune(line)[:width]))
			line = string([]rune(line)[width:])
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n")
}
