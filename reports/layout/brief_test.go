package layout_test

import (
	"io"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/reports/layout"
)

// A brief answer takes ten lines at most, begins with the answer, and leaves out nothing that it may not be read without.
func TestBriefIsBrief(t *testing.T) {
	sentence := rapid.StringMatching(`([a-z]{1,9} ){1,24}[a-z]{1,9}`)
	rapid.Check(t, func(t *rapid.T) {
		p := &layout.Page{Title: rapid.StringMatching(`[a-z]{1,30}`).Draw(t, "title")}
		answer := layout.Section{Answer: true, Text: rapid.SliceOfN(sentence, 1, 6).Draw(t, "text"), Notes: rapid.SliceOfN(sentence, 0, 4).Draw(t, "notes"),
			But: rapid.SliceOfN(sentence, 0, 1).Draw(t, "but")}
		p.Add(answer)
		p.Add(layout.Section{Limits: true, Heading: "why", Text: rapid.SliceOfN(sentence, 0, 3).Draw(t, "why")})
		width := rapid.SampledFrom([]int{80, 120}).Draw(t, "width")
		var out strings.Builder
		if err := p.Write(io.Writer(&out), layout.ForTerminal, layout.Style{Brief: true, Width: width}); err != nil {
			t.Fatal(err)
		}
		if lines := strings.Count(out.String(), "\n"); lines > 10 {
			t.Fatalf("%d lines:\n%s", lines, out.String())
		}
		said := strings.Join(strings.Fields(out.String()), " ")
		for _, text := range append([]string{answer.Text[0]}, answer.But...) {
			if !strings.Contains(said, text) {
				t.Fatalf("%q is missing in\n%s", text, out.String())
			}
		}
	})
}
