package reports

import (
	"fmt"

	"dwellcast/scenarios/decisions"
)

// worthSection says what the absence of each cause of loss would bring.
func worthSection(x *decisions.Explanation) section {
	s := section{heading: "Explained: what fixing each cause would bring, good cartons a shift"}
	if len(x.Worths) == 0 {
		s.text = []string{"There is no cause of loss that could be left out"}
		return s
	}
	if w := x.Worths[0]; shows(w.Brings) && w.Brings.Mean > 0 && !w.Planned {
		s.text = append(s.text, fmt.Sprintf("Worth most: %s: %s brings %s cartons a shift%s", w.Where, w.Cause, mean(w.Brings), bounds(w.Brings, "", "")))
	}
	s.text = append(s.text, fmt.Sprintf("All of them at once bring %s%s; %s", mean(x.Together), bounds(x.Together, "", ""), interactionWords(x)))
	t := &table{columns: []column{left("cause"), left("left out as"), right("charged"), right("brings"), right("interval")}}
	for _, w := range x.Worths {
		brings := none
		if shows(w.Brings) {
			brings = mean(w.Brings)
		}
		t.add(w.Where+": "+w.Cause, w.Without, fixed(w.Charged, sheetDecimals(w.Brings)), brings, band(w.Brings))
	}
	s.table = t
	s.notes = []string{"charged: by the loss sheet. brings: the same shifts without the cause, less those with it. ~: no difference shows"}
	return s
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
		return "that is " + mean(i) + " more than one by one" + bounds(i, "", "") + ": some hide behind others"
	}
	less := interval{Mean: -i.Mean, Low: -i.High, High: -i.Low, N: i.N, Confidence: i.Confidence}
	return "that is " + mean(less) + " less than one by one" + bounds(less, "", "") + ": they stand for the same lost time"
}
