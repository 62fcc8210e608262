package reports

import (
	"fmt"
	"math"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
)

// bottleneckWords says for each case who holds the bottleneck, and whether it moved.
func bottleneckWords(c *decisions.Comparison) []string {
	var words []string
	for _, r := range c.Cases {
		from, to := layout.Fixed(100*r.FromShare, 0), layout.Fixed(100*r.ToShare, 0)
		switch {
		case r.From != r.To:
			words = append(words, fmt.Sprintf("%s: the bottleneck moves from %s (%s %%) to %s (%s %%)", r.Name, r.From, from, r.To, to))
		case from == to:
			words = append(words, fmt.Sprintf("%s: %s stays the bottleneck (%s %%)", r.Name, r.From, from))
		default:
			words = append(words, fmt.Sprintf("%s: %s stays the bottleneck (%s %%, then %s %%)", r.Name, r.From, from, to))
		}
	}
	return words
}

// mostMoves is how many moves of a case are shown one by one.
const mostMoves = 4

// moveTable lists what the moves of the losses do to good output. They sum to the difference.
func moveTable(c *decisions.Comparison) *layout.Table {
	t := &layout.Table{Columns: []layout.Column{layout.Words("case"), layout.Words("loss"), layout.Aside("cartons a shift"), layout.Hidden("moves", "cartons")}}
	for _, r := range c.Cases {
		digits := moveDecimals(r)
		total := rounded(r.Difference.Mean, digits)
		rest, name := total, layout.Word(r.Name)
		add := func(loss string, x float64, exact layout.Cell) {
			t.Add(name, layout.Word(loss), layout.Number(x, digits).Signed(), exact)
			name = name.Again()
		}
		row := func(where, cause string, x float64) {
			loss, exact := where+": "+cause, layout.Number(x, digits).In(cartonsAShift)
			if x = rounded(x, digits); x == 0 {
				t.Spare(layout.Word(r.Name), layout.Word(loss), layout.Blank, exact)
				return
			}
			rest -= x
			add(loss, x, exact)
		}
		row("setting", "ideal output", r.Ideal)
		for _, m := range r.Moves[:min(mostMoves, len(r.Moves))] {
			row(m.Where, m.Cause, m.Cartons)
		}
		for _, m := range r.Moves[min(mostMoves, len(r.Moves)):] {
			t.Spare(layout.Word(r.Name), layout.Word(m.Where+": "+m.Cause), layout.Blank, layout.Number(m.Cartons, digits).In(cartonsAShift))
		}
		if rest = rounded(rest, digits); rest != 0 {
			add("all others", rest, layout.Blank)
		}
		add("difference", total, layout.Blank)
	}
	return t
}

// moveDecimals is one where the moves are small.
func moveDecimals(r decisions.CaseResult) int {
	if math.Abs(r.Difference.Mean) < 20 {
		return 1
	}
	return 0
}
