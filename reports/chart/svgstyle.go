package chart

import (
	"fmt"
	"strings"
)

// styles gives the rules for the inks in use: on a light ground, on a dark one where the reader prefers that, and on paper.
func (d *Drawing) styles() string {
	var b strings.Builder
	b.WriteString(".dwc{max-width:100%;height:auto;color-scheme:light dark}\n")
	b.WriteString(`.dwc text{font-family:Arial,Helvetica,"Liberation Sans",Arimo,sans-serif}` + "\n")
	fmt.Fprintf(&b, ".dwc path,.dwc circle{stroke-linejoin:round}.dwc .faint{fill-opacity:%g}\n", faintness)
	fills, lines := d.inks()
	rules := func(tone func(tones) uint32) {
		for i := range inkCount {
			t := i.tones()
			if fills[i] {
				fmt.Fprintf(&b, ".dwc .f-%s{fill:#%06x}", t.name, tone(t))
			}
			if lines[i] {
				fmt.Fprintf(&b, ".dwc .s-%s{stroke:#%06x}", t.name, tone(t))
			}
		}
		b.WriteByte('\n')
	}
	rules(func(t tones) uint32 { return t.light })
	b.WriteString("@media screen and (prefers-color-scheme:dark){\n")
	rules(func(t tones) uint32 { return t.dark })
	b.WriteString("}\n@media print{\n.dwc{print-color-adjust:exact;-webkit-print-color-adjust:exact}\n")
	rules(func(t tones) uint32 { return t.print })
	b.WriteString("}\n")
	return b.String()
}

// inks says which inks fill and which draw lines.
func (d *Drawing) inks() (fills, lines [inkCount]bool) {
	for _, s := range d.shapes {
		switch s := s.(type) {
		case path:
			fills[s.look.fill], lines[s.look.line] = true, true
		case disc:
			fills[s.look.fill], lines[s.look.line] = true, true
		case label:
			fills[s.ink] = true
		}
	}
	fills[none], lines[none] = false, false
	return fills, lines
}
