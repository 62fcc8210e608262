package motion

import (
	"fmt"
	"math"
	"slices"
	"sort"
)

// Problems are all mistakes in the description; none means that NewCam can use it.
func (a Axis) Problems() []Problem {
	if len(a.Segments) == 0 {
		return []Problem{{Axis: a.Name, Path: "segments", Message: "has no segments"}}
	}
	var found []Problem
	for i := range a.Segments {
		found = append(found, a.segmentProblems(i)...)
	}
	if found = append(found, a.mixProblems()...); len(found) > 0 {
		return found // angles and travels that are wrong in themselves make no sense together
	}
	if found = a.tilingProblems(); len(found) > 0 {
		return found
	}
	return a.closingProblems()
}

// segmentProblems are the mistakes in one segment by itself.
func (a Axis) segmentProblems(i int) []Problem {
	var found []Problem
	add := func(field, message, hint string) { found = append(found, a.problem(i, field, message, hint)) }
	s := a.Segments[i]
	if !(s.From >= 0 && s.From < fullTurn) {
		add("from", fmt.Sprintf("starts at %g deg", s.From), "give an angle from 0 to less than 360 deg")
	}
	switch {
	case !(s.To >= 0 && s.To <= 2*fullTurn):
		add("to", fmt.Sprintf("ends at %g deg", s.To), "give an angle from 0 to 360 deg")
	case s.To == s.From:
		add("to", fmt.Sprintf("has no length: it starts and ends at %g deg", s.From), "a move needs an angle to happen in")
	case s.Span() > fullTurn:
		add("to", fmt.Sprintf("is %g deg long", s.Span()), "a revolution has 360 deg")
	}
	switch s.Kind {
	case Dwell:
		if s.Travel != 0 {
			add("travel", fmt.Sprintf("a dwell travels %g", s.Travel), "name it rise, return or index, or drop the travel")
		}
		return found
	case Rise, Return, Index:
	default:
		add("kind", fmt.Sprintf("unknown kind %q", s.Kind), "rise, dwell, return or index")
	}
	if !(s.Travel > 0) || math.IsInf(s.Travel, 0) {
		add("travel", fmt.Sprintf("a %s with a travel of %g", s.Kind, s.Travel), "a moving segment travels more than 0")
	}
	if s.Law.IsZero() {
		add("law", "has no motion law", "for example modified sine")
	}
	return found
}

// mixProblems: an axis feeds or reciprocates, and does not return without a rise.
func (a Axis) mixProblems() []Problem {
	count := map[SegmentKind]int{}
	first := map[SegmentKind]int{}
	for i, s := range a.Segments {
		if count[s.Kind] == 0 {
			first[s.Kind] = i
		}
		count[s.Kind]++
	}
	switch {
	case count[Index] > 0 && count[Rise]+count[Return] > 0:
		return []Problem{a.problem(first[Index], "kind", "an axis that feeds cannot also rise or return", "make it two axes")}
	case count[Return] > 0 && count[Rise] == 0:
		return []Problem{a.problem(first[Return], "kind", "a return without a rise", "give the rise that it undoes")}
	case count[Rise] > 0 && count[Return] == 0:
		return []Problem{a.problem(first[Rise], "kind", "does not close: a rise without a return", "give the return that undoes it")}
	}
	return nil
}

// inOrder are the indices of the segments by starting angle.
func (a Axis) inOrder() []int {
	order := make([]int, len(a.Segments))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(x, y int) bool { return a.Segments[order[x]].From < a.Segments[order[y]].From })
	return order
}

// angleRounding is the gap or overlap in degrees that is put down to rounding of decimal angles.
const angleRounding = 1e-9

// tilingProblems are overlaps, and gaps where the dwells are named.
func (a Axis) tilingProblems() []Problem {
	var found []Problem
	order := a.inOrder()
	complete := a.namesDwells()
	for k, i := range order {
		next := order[(k+1)%len(order)]
		start := float64(a.Segments[next].From)
		if k == len(order)-1 {
			start += fullTurn
		}
		gap := start - float64(a.Segments[i].From+a.Segments[i].Span())
		switch {
		case gap < -angleRounding:
			message := fmt.Sprintf("overlaps %s by %.6g deg", a.segmentName(next), -gap)
			found = append(found, a.problem(i, "to", message, "end it earlier, or start the other one later"))
		case gap > angleRounding && complete:
			message := fmt.Sprintf("does not close: nothing is said of the %.6g deg before %s", gap, a.segmentName(next))
			found = append(found, a.problem(i, "to", message, "add a dwell, or name no dwells at all"))
		}
	}
	return found
}

func (a Axis) namesDwells() bool {
	for _, s := range a.Segments {
		if s.Kind == Dwell {
			return true
		}
	}
	return false
}

// closingTolerance is the share of an axis's rises by which its returns may be off: what is lost in writing them to three or four digits,
// as where a dose goes out in two shots.
const closingTolerance = 1e-3

// closed is an axis whose returns make up what they are off the rises by.
func (a Axis) closed() Axis {
	var rises, returns float64
	for _, s := range a.Segments {
		switch s.Kind {
		case Rise:
			rises += s.Travel
		case Return:
			returns += s.Travel
		}
	}
	if math.Abs(rises-returns) <= 1e-9*rises {
		return a
	}
	a.Segments = slices.Clone(a.Segments)
	for i := range a.Segments {
		if s := &a.Segments[i]; s.Kind == Return {
			s.Travel *= rises / returns
		}
	}
	return a
}

// closingProblems: rises and returns must cancel over the revolution.
func (a Axis) closingProblems() []Problem {
	net, gross, last := 0.0, 0.0, -1
	for i, s := range a.Segments {
		switch s.Kind {
		case Rise:
			net += s.Travel
		case Return:
			net -= s.Travel
			last = i
		default:
			continue
		}
		gross += s.Travel
	}
	if math.Abs(net) <= closingTolerance*gross/2 {
		return nil
	}
	message := fmt.Sprintf("does not close: rises and returns differ by %.6g", net)
	return []Problem{a.problem(last, "travel", message, "make the returns undo the rises")}
}

// Cautions are what is legal but odd: a law whose velocity steps.
func (a Axis) Cautions() []Problem {
	var found []Problem
	for i, s := range a.Segments {
		if s.Kind != Dwell && !s.Law.IsZero() && s.Law.Coefficients().VelocitySteps {
			message := fmt.Sprintf("a %s jolts at both ends: its acceleration there is without bound", s.Law.Name())
			found = append(found, a.problem(i, "law", message, "modified sine moves as far in the same time without a jolt"))
		}
	}
	return found
}
