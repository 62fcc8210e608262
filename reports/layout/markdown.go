package layout

import (
	"bytes"
	"io"
	"strings"
)

// Markdown writes a page as a Markdown document.
func (p *Page) Markdown(w io.Writer) error {
	var out bytes.Buffer
	out.WriteString("# " + escapeText(p.Title) + "\n")
	for _, s := range p.Sections {
		if s.Data {
			continue
		}
		if err := s.markdown(&out); err != nil {
			return err
		}
	}
	_, err := w.Write(out.Bytes())
	return err
}

func (s *Section) markdown(out *bytes.Buffer) error {
	if s.Heading != "" {
		out.WriteString("\n## " + escapeText(s.Heading) + "\n")
	}
	for i, sentence := range s.Text {
		text := escapeText(sentence)
		if s.Answer && i == 0 {
			text = "**" + text + "**"
		}
		out.WriteString("\n" + text + "\n")
	}
	if !s.Table.empty() {
		out.WriteString("\n")
		if err := markdownTable(out, s.Table.seen()); err != nil {
			return err
		}
	}
	if len(s.Plain) > 0 {
		out.WriteString("\n```text\n" + strings.ReplaceAll(Printable(strings.Join(s.Plain, "\n")), "```", "'''") + "\n```\n")
	}
	if s.Verbatim != "" {
		out.WriteString("\n```text\n" + strings.ReplaceAll(Printable(s.Verbatim), "```", "'''") + "\n```\n")
	}
	for _, note := range s.Notes {
		out.WriteString("\n" + escapeText(note) + "\n")
	}
	return nil
}

// special are the characters that Markdown might take as its own anywhere in a line.
const special = "\\`*_<>[]|~&"

// escapeText makes a sentence safe in Markdown: names come from a user's file.
func escapeText(text string) string {
	escaped := escapeMarks(text)
	if strings.HasPrefix(escaped, "#") || strings.HasPrefix(escaped, "-") || strings.HasPrefix(escaped, "+") {
		return "\\" + escaped
	}
	return escaped
}

// escapeMarks escapes what Markdown might take as its own anywhere in a line.
func escapeMarks(text string) string {
	var out strings.Builder
	for _, r := range strings.Join(strings.Fields(Printable(text)), " ") {
		if strings.ContainsRune(special, r) {
			out.WriteByte('\\')
		}
		out.WriteRune(r)
	}
	return out.String()
}

// escapeCell makes the text of a table's cell safe in Markdown, a break in a head included.
func escapeCell(text string) string {
	text = strings.ReplaceAll(strings.ReplaceAll(text, "-\n", ""), "\n", " ")
	return escapeMarks(text)
}
