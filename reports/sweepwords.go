package reports

import (
	"fmt"
	"math"
	"strings"

	"dwellcast/scenarios/decisions"
)

// sweepAnswer says what the curve does: where it bends and why, or that it doesn't.
func sweepAnswer(s *decisions.Sweep) []string {
	if len(s.Vary) == 2 {
		return []string{gridAnswer(s)}
	}
	first, last := s.Points[0], s.Points[len(s.Points)-1]
	span := fmt.Sprintf("%s: %s at %s, %s at %s", s.Figure.Name, amount(s.Figure, first.Figure), first.Values[0],
		amount(s.Figure, last.Figure), last.Values[0])
	k := s.Knee
	switch {
	case k == nil && isLevel(s):
		return []string{fmt.Sprintf("%s does not change between %s and %s of %s", s.Figure.Name, first.Values[0], last.Values[0], s.Vary[0].Path), span}
	case k == nil:
		return []string{span, "Too few points to look for a knee; take five or more"}
	case !k.Shows && k.At.Assessed():
		return []string{span, "No knee shows: within chance the curve is as good as straight (~)"}
	}
	return []string{kneeSentence(s), kneeBounds(s), span}
}

func isLevel(s *decisions.Sweep) bool {
	for _, p := range s.Points {
		if p.Figure.Mean != s.Points[0].Figure.Mean {
			return false
		}
	}
	return true
}

// amount is a figure with its unit.
func amount(f decisions.Figure, iv interval) string {
	_, unit := figureScale(f)
	return mean(shownFigure(f, iv)) + " " + unit
}

// kneeSentence is the answer: flat to 1.21 s, where the sealer becomes critical; then down by 9.4 cartons/h for every 10 ms.
func kneeSentence(s *decisions.Sweep) string {
	k := s.Knee
	step := niceStep(s)
	return fmt.Sprintf("%s of %s: %s to %s%s; then %s", s.Figure.Name, s.Vary[0].Path, slopeWords(s, k.Before, step),
		placeOf(s, k.At), reasonOf(k), slopeWords(s, k.After, step))
}

// reasonOf says who takes over at the knee.
func reasonOf(k *decisions.Knee) string {
	switch {
	case k.From == k.To:
		return ""
	case k.To == decisions.SettingHolds:
		return ", where the setting takes over from " + k.From
	case k.From == decisions.SettingHolds:
		return ", where " + k.To + " becomes critical"
	}
	return ", where " + k.To + " takes over from " + k.From
}

// slopeWords says how steep a branch is, over a step of the parameter.
func slopeWords(s *decisions.Sweep, slope interval, step float64) string {
	scale, unit := figureScale(s.Figure)
	if isNearlyFlat(s, slope) {
		return "flat"
	}
	change := slope
	change.Mean, change.Low, change.High = scale*step*slope.Mean, scale*step*slope.Low, scale*step*slope.High
	if steep := math.Max(math.Abs(s.Knee.Before.Mean), math.Abs(s.Knee.After.Mean)); math.Abs(slope.Mean) < 0.03*steep {
		return "almost flat"
	}
	direction := "up"
	if change.Mean < 0 {
		direction = "down"
	}
	return fmt.Sprintf("%s by %s %s for every %s", direction, significant(math.Abs(change.Mean), 2), unit, stepWords(s, step))
}

// isNearlyFlat says that a branch is not told from a level one, or that it changes the figure by less than a thousandth over
// the whole range.
func isNearlyFlat(s *decisions.Sweep, slope interval) bool {
	first, last := s.Points[0].Values[0].Number(), s.Points[len(s.Points)-1].Values[0].Number()
	change := math.Abs(slope.Mean * (last - first))
	if change < 0.001*math.Abs(s.Knee.Level) || s.Figure.Share() && change < 0.001 {
		return true
	}
	return slope.Assessed() && slope.HalfWidth() > 0 && slope.Contains(0)
}

// significant prints a number with so many digits that count.
func significant(x float64, digits int) string {
	if x == 0 {
		return "0"
	}
	return fixed(x, max(digits-1-int(math.Floor(math.Log10(x))), 0))
}

// niceStep is a round step of the parameter, about a hundredth of its range.
func niceStep(s *decisions.Sweep) float64 {
	first, last := s.Points[0].Values[0].Number(), s.Points[len(s.Points)-1].Values[0].Number()
	return math.Pow10(int(math.Round(math.Log10((last - first) / 100))))
}

func stepWords(s *decisions.Sweep, step float64) string {
	unit := s.Vary[0].Values[0].Unit()
	if unit == "s" && step < 1 {
		step, unit = step*1000, "ms"
	}
	return strings.TrimSpace(fmt.Sprintf("%.6g %s", step, unit))
}

// placeOf is a value of the parameter to the digits that its interval supports.
func placeOf(s *decisions.Sweep, at interval) string {
	unit := s.Vary[0].Values[0].Unit()
	text := fmt.Sprintf("%.9g", at.Mean)
	if !at.Assessed() {
		text = significant(at.Mean, 3)
	} else if at.HalfWidth() > 0 {
		text = fixed(at.Mean, placeDecimals(at))
	}
	return strings.TrimSpace(text + " " + unit)
}

// placeDecimals is decimals for a parameter, whose unit may be large: as many as its interval supports, six at most.
func placeDecimals(at interval) int {
	return min(max(int(-math.Floor(math.Log10(at.HalfWidth()/2))), 0), 6)
}

func kneeBounds(s *decisions.Sweep) string {
	k := s.Knee
	switch {
	case !k.At.Assessed():
		return "The place of the knee is that of the two straight lines which fit best; its interval is not assessed (~)"
	case k.At.HalfWidth() == 0:
		return "The knee is exact: nothing in this line is left to chance"
	}
	d := placeDecimals(k.At)
	return fmt.Sprintf("Knee at %s (%s interval %s to %s), of the two straight lines that fit best about it", placeOf(s, k.At), confidence(s.Confidence),
		fixed(k.At.Low, d), fixed(k.At.High, d))
}

func gridAnswer(s *decisions.Sweep) string {
	best, worst := s.Points[0], s.Points[0]
	for _, p := range s.Points {
		if p.Figure.Mean > best.Figure.Mean {
			best = p
		}
		if p.Figure.Mean < worst.Figure.Mean {
			worst = p
		}
	}
	if best.Figure.Mean == worst.Figure.Mean {
		return s.Figure.Name + " does not change over the grid: " + amount(s.Figure, best.Figure)
	}
	return fmt.Sprintf("%s: highest at %s, %s (limited by %s), lowest at %s, %s (limited by %s)", s.Figure.Name,
		placeWords(s, best), amount(s.Figure, best.Figure), best.Holder, placeWords(s, worst), amount(s.Figure, worst.Figure), worst.Holder)
}

func placeWords(s *decisions.Sweep, p decisions.Point) string {
	var words []string
	for i, v := range p.Values {
		words = append(words, s.Vary[i].Path+" "+v.String())
	}
	return strings.Join(words, " and ")
}

// sweepNotes are the caveats.
func sweepNotes(s *decisions.Sweep) []string {
	var notes []string
	k := s.Knee
	if k != nil && k.Shows && isCrooked(s) {
		notes = append(notes, fmt.Sprintf("The curve is not just two straight lines: it lies up to %s off them; look at the chart, or at a shorter range",
			amount(s.Figure, interval{Mean: k.Misfit, Low: k.Misfit / 2, High: k.Misfit * 3 / 2, N: 2})))
	}
	if !s.Fixed {
		notes = append(notes, "All points share their luck, so that they differ by less than their own ± suggest")
	}
	return notes
}

// isCrooked says that two straight lines miss the curve by more than a twentieth of its height.
func isCrooked(s *decisions.Sweep) bool {
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range s.Points {
		low, high = min(low, p.Figure.Mean), max(high, p.Figure.Mean)
	}
	return s.Knee.Misfit > 0.05*(high-low)
}
