package reports

import (
	"fmt"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
)

// worthSection says what the absence of each cause of loss would bring.
func worthSection(x *decisions.Explanation) layout.Section {
	s := layout.Section{Key: "cause", Heading: "Explained: what fixing each cause would bring, good cartons a shift"}
	if len(x.Worths) == 0 {
		s.Text = []string{"There is no cause of loss that could be left out"}
		return s
	}
	if w := x.Worths[0]; shows(w.Brings) && w.Brings.Mean > 0 && !w.Planned {
		s.Text = append(s.Text, fmt.Sprintf("Worth most: %s: %s brings %s cartons a shift%s", w.Where, w.Cause, layout.Mean(w.Brings), bounds(w.Brings, "", "")))
	}
	s.Text = append(s.Text, fmt.Sprintf("All of them at once bring %s%s; %s", layout.Mean(x.Together), bounds(x.Together, "", ""), interactionWords(x)))
	t := &layout.Table{Columns: []layout.Column{layout.Words("cause"), layout.Told("left out as", "without"), layout.Figures("charged", "charged"),
		layout.Figures("brings", "brings"), layout.Aside("interval")}}
	for _, w := range x.Worths {
		brings := layout.Estimate(w.Brings)
		if !shows(w.Brings) {
			brings = brings.Hazy()
		}
		t.Add(layout.Word(w.Where+": "+w.Cause), layout.Word(w.Without), layout.Number(w.Charged, sheetDecimals(w.Brings)).In(cartonsAShift), brings.In(cartonsAShift),
			layout.Word(layout.Band(w.Brings)))
	}
	t.Spare(layout.Word("all causes"), layout.Blank, layout.Blank, layout.Estimate(x.Together).In(cartonsAShift))
	t.Spare(layout.Word("interaction"), layout.Blank, layout.Blank, layout.Estimate(x.Interaction).In(cartonsAShift))
	s.Table = t
	s.Notes = []string{"charged: what was lost to it, by the loss sheet. brings: what fixing it gives: the same shifts without the cause, less those with it. ~: no difference shows"}
	if part := partWords(x); part != "" {
		s.Notes = append(s.Notes, part)
	}
	return s
}

// partWords says where what was charged and what fixing brings are not the same.
func partWords(x *decisions.Explanation) string {
	var less, more []string
	for _, w := range x.Worths {
		switch name := w.Where + ": " + w.Cause; {
		case !w.Brings.Assessed() || w.Charged < 1 && w.Brings.High < 1 || w.Brings.Contains(w.Charged):
		case w.Brings.High < w.Charged:
			less = append(less, name)
		default:
			more = append(more, name)
		}
	}
	var words []string
	if len(less) > 0 {
		words = append(words, "Fixing brings less than was charged of "+someOf(less, 3)+": other losses take the rest")
	}
	if len(more) > 0 {
		words = append(words, "Fixing brings more than was charged of "+someOf(more, 3)+": part of what that delays is charged to others")
	}
	return strings.Join(words, ". ")
}

// shows says that an interval leaves out 0.
func shows(iv interval) bool { return iv.Assessed() && !iv.Contains(0) }

// interactionWords says what is left between the whole and the sum of its parts.
func interactionWords(x *decisions.Explanation) string {
	i := x.Interaction
	switch {
	case !shows(i):
		return "no interaction shows (~) between them"
	case i.Mean > 0:
		return "that is " + layout.Mean(i) + " more than one by one" + bounds(i, "", "") + ": some hide behind others"
	}
	less := interval{Mean: -i.Mean, Low: -i.High, High: -i.Low, N: i.N, Confidence: i.Confidence}
	return "that is " + layout.Mean(less) + " less than one by one" + bounds(less, "", "") + ": they stand for the same lost time"
}
