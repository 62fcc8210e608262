package reports

import (
	"fmt"
	"math"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/quantity"
)

// comparisonAnswer says which case is best, then what the others cost or bring, then what is too small to matter, and where no
// difference shows.
func comparisonAnswer(c *decisions.Comparison) []string {
	best := bestCase(c)
	var gains, costs, small, unseen, beyond []string
	for i := range c.Cases {
		switch r := &c.Cases[i]; {
		case !r.Shows:
			unseen = append(unseen, r.Name)
		case isSmall(r):
			small = append(small, fmt.Sprintf("%s (%s)", r.Name, difference(*r)))
		case r == best:
		case r.Difference.Mean > 0:
			gains = append(gains, differenceWords(r))
		default:
			costs = append(costs, differenceWords(r))
		}
	}
	var words []string
	switch {
	case best != nil:
		words = append(words, "Most is to be had from: "+differenceWords(best))
	case len(unseen) == len(c.Cases):
		words = append(words, "No difference shows (~) between the base and any case")
		unseen = nil
	case len(small) > 0:
		words = append(words, "No case "+within(c)+"makes more than the base by an amount that matters")
	default:
		words = append(words, "No case "+within(c)+"makes more than the base")
	}
	words = appendList(words, "Also more: ", gains)
	words = appendList(words, "Less: ", costs)
	words = appendList(words, "Sure, but below the "+quantity.FormatRatio(c.Spec.Smallest)+" worth knowing of: ", small)
	words = appendList(words, "No difference shows (~): ", unseen)
	for i := range c.Cases {
		if r := &c.Cases[i]; r.Refused != "" {
			beyond = append(beyond, r.Name+", "+r.Refused)
		}
	}
	words = appendList(words, "(!) Beyond a limit, so no choice as it stands: ", beyond)
	if c.BaseRefused != "" {
		words = append(words, "(!) The base itself is beyond a limit: "+c.BaseRefused)
	}
	g := c.Base.GoodPerShift
	return append(words, fmt.Sprintf("The base makes %s good cartons a shift%s", layout.Mean(g.Interval), bounds(g.Interval, layout.Confidence(c.Spec.Confidence)+" interval ", "")))
}

// within says that only cases within their limits are spoken of, where there are others.
func within(c *decisions.Comparison) string {
	for i := range c.Cases {
		if c.Cases[i].Refused != "" {
			return "within its limits "
		}
	}
	return ""
}

// bestCase is the case that makes most more than the base, by an amount that may matter; nil for none.
func bestCase(c *decisions.Comparison) *decisions.CaseResult {
	var best *decisions.CaseResult
	for i := range c.Cases {
		if r := &c.Cases[i]; r.Refused == "" && r.Shows && !isSmall(r) && r.Difference.Mean > 0 && (best == nil || r.Difference.Mean > best.Difference.Mean) {
			best = r
		}
	}
	return best
}

// isSmall says that a difference is surely below the smallest worth knowing of.
func isSmall(r *decisions.CaseResult) bool { return mostDifference(r) < r.SmallestCartons }

// mostDifference is how large a difference may be either way, by its interval.
func mostDifference(r *decisions.CaseResult) float64 {
	return math.Max(math.Abs(r.Difference.Low), math.Abs(r.Difference.High))
}

func appendList(words []string, head string, list []string) []string {
	if len(list) == 0 {
		return words
	}
	return append(words, head+strings.Join(list, "; "))
}

// differenceWords is: longer dwell, -225 cartons a shift (-2.3 %).
func differenceWords(r *decisions.CaseResult) string {
	return fmt.Sprintf("%s%s, %s cartons a shift (%s %%)", r.Name, refusedMark(r.Refused), difference(*r), differencePercent(*r))
}

// comparisonNotes are the caveats: what does not show, what would, and what was not reached.
func comparisonNotes(c *decisions.Comparison) []string {
	var notes []string
	if c.Base.Replications < mostShifts(c) {
		notes = append(notes, "Shifts were added case by case: the column shifts says how many a case rests on")
	}
	smallest := quantity.FormatRatio(c.Spec.Smallest)
	for i := range c.Cases {
		r := &c.Cases[i]
		if !r.Shows {
			notes = append(notes, r.Name+": "+unseenWords(r, smallest))
		}
		if !r.Met {
			notes = append(notes, fmt.Sprintf("%s: the wanted half-width of %s of the base's output was not reached in %d shifts, the ceiling; give --ceiling more",
				r.Name, quantity.FormatRatio(c.Spec.Precision), r.Replications))
		}
		if r.Replications < 30 && r.SD > 0 {
			notes = append(notes, fmt.Sprintf("%s: only %d shifts, the interval is rough", r.Name, r.Replications))
		}
	}
	return notes
}

// unseenWords says how large a difference may still be, and what would show it.
func unseenWords(r *decisions.CaseResult, smallest string) string {
	size := fmt.Sprintf("%s (%s cartons a shift)", smallest, layout.Fixed(r.SmallestCartons, 0))
	switch {
	case r.SD == 0 && r.Difference.Mean == 0:
		return "every shift comes out the same to the carton"
	case r.Needed == 0:
		return "no number of shifts within reach would show a difference of " + size
	case isSmall(r):
		return fmt.Sprintf("any difference is smaller than %s; %s would show one of that size, %d were run", size,
			quantity.FormatCount(int64(r.Needed), "shift"), r.Replications)
	}
	return fmt.Sprintf("to show a difference of %s takes %s, %d were run: give --shifts %d", size,
		quantity.FormatCount(int64(r.Needed), "shift"), r.Replications, max(r.Needed, 2*r.Replications))
}
