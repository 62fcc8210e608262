package chart

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// writeSVG writes a file that stands alone and may also be pasted into a page: it has no ids and refers to nothing.
func (d *Drawing) writeSVG(w io.Writer) error {
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" class="dwc" role="img" aria-label="%s" width="%s" height="%s" viewBox="0 0 %[2]s %[3]s">`,
		escape(d.Title), number2(d.Width), number2(d.Height))
	fmt.Fprintf(&b, "\n<title>%s</title>\n<desc>%s</desc>\n<style>\n%s</style>\n", escape(d.Title), escape(d.Description), d.styles())
	for _, s := range d.shapes {
		switch s := s.(type) {
		case path:
			s.svg(&b)
		case disc:
			fmt.Fprintf(&b, `<circle cx="%s" cy="%s" r="%s"%s/>`, number2(s.centre.x), number2(s.centre.y), number2(s.radius), s.look.svg())
		case label:
			s.svg(&b)
		}
		b.WriteByte('\n')
	}
	b.WriteString("</svg>\n")
	_, err := w.Write(b.Bytes())
	return err
}

func (p path) svg(b *bytes.Buffer) {
	b.WriteString(`<path d="`)
	for _, run := range p.runs {
		for i, at := range run {
			b.WriteByte("ML"[min(i, 1)])
			b.WriteString(number2(at.x) + " " + number2(at.y))
		}
		if p.closed {
			b.WriteByte('Z')
		}
	}
	b.WriteString(`"` + p.look.svg())
	if p.tip == "" {
		b.WriteString("/>")
		return
	}
	fmt.Fprintf(b, "><title>%s</title></path>", escape(p.tip))
}

func (l label) svg(b *bytes.Buffer) {
	fmt.Fprintf(b, `<text x="%s" y="%s" font-size="%s" class="f-%s"`, number2(l.at.x), number2(l.at.y), number2(l.size), l.ink.tones().name)
	if l.bold {
		b.WriteString(` font-weight="bold"`)
	}
	if l.anchor != start {
		fmt.Fprintf(b, ` text-anchor="%s"`, []string{"start", "middle", "end"}[l.anchor])
	}
	if l.angle != 0 {
		fmt.Fprintf(b, ` transform="rotate(%s %s %s)"`, number2(-l.angle), number2(l.at.x), number2(l.at.y))
	}
	fmt.Fprintf(b, ">%s</text>", escape(l.words))
}

// svg gives the attributes of a look.
func (l look) svg() string {
	classes, more := []string{}, ""
	if l.fill != none {
		classes = append(classes, "f-"+l.fill.tones().name)
		if l.faint {
			classes = append(classes, "faint")
		}
	} else {
		more = ` fill="none"`
	}
	if l.line != none {
		classes = append(classes, "s-"+l.line.tones().name)
		more += ` stroke-width="` + number2(l.width) + `"`
		if len(l.dash) > 0 {
			var lengths []string
			for _, v := range l.dash {
				lengths = append(lengths, number2(v))
			}
			more += ` stroke-dasharray="` + strings.Join(lengths, " ") + `"`
		}
	}
	return ` class="` + strings.Join(classes, " ") + `"` + more
}

// number2 writes a coordinate with two decimals at most, the same on every processor.
func number2(v float64) string {
	v = math.Round(v*100) / 100
	if v == 0 {
		return "0"
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// escape makes words safe inside XML text and attributes and drops characters that XML can't hold.
func escape(words string) string {
	words = strings.Map(func(r rune) rune {
		switch {
		case r == '\n', r == '\t', r == '\r':
			return ' '
		case r < ' ', r == 0xFFFE, r == 0xFFFF:
			return -1
		}
		return r
	}, strings.ToValidUTF8(words, "?"))
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;").Replace(words)
}
