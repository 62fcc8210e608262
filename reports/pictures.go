package reports

import (
	"fmt"
	"io"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
)

// show puts charts behind the answer of a page, where a browser finds them; one that cannot be drawn says why.
func show(p *layout.Page, charts []chart.Chart) {
	s := layout.Section{}
	s.Pictures, s.Notes = picturesOf(charts)
	if len(s.Pictures)+len(s.Notes) == 0 {
		return
	}
	for i := range p.Sections {
		if p.Sections[i].Answer {
			p.Sections = append(p.Sections[:i+1:i+1], append([]layout.Section{s}, p.Sections[i+1:]...)...)
			return
		}
	}
	p.Sections = append([]layout.Section{s}, p.Sections...)
}

// picturesOf draws charts, and says of which it can't.
func picturesOf(charts []chart.Chart) (pictures []layout.Picture, notes []string) {
	for _, c := range charts {
		drawing, err := c.Draw()
		if err != nil {
			notes = append(notes, "A picture can't be drawn: "+err.Error())
			continue
		}
		pictures = append(pictures, layout.Picture{SVG: func(w io.Writer) error { return drawing.Write(w, chart.SVG) }})
	}
	return pictures, notes
}

// finding is the caption of a chart: its title a sentence that says what was found.
func finding(sentence, about, made string) chart.Caption {
	return chart.Caption{Title: sentence, Subtitle: titleOf(about), Foot: made}
}

// madeBy says on what a chart rests.
func madeBy(shifts int, seed uint64, version string) string {
	return fmt.Sprintf("%d shifts of each line, seed %d, dwellcast %s", shifts, seed, version)
}
