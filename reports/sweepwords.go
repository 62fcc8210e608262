package reports

import (
	"fmt"
	"math"
	"strings"

	"dwellcast/reports/layout"
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
	if s.Bend == decisions.Kneed {
		return []string{kneeSentence(s), kneeBounds(s), span}
	}
	return []string{span, noKnee(s)}
}

// noKnee says why there is no knee.
func noKnee(s *decisions.Sweep) string {
	switch s.Bend {
	case decisions.TooFew:
		return "Too few points to look for a knee; take five or more"
	case decisions.Level:
		return fmt.Sprintf("No knee: the figure is the same at all %d values of %s", len(s.Points), s.Vary[0].Path)
	case decisions.Straight:
		if s.Fixed {
			return "No knee: to a carton the curve is as good as straight"
		}
		return "No knee shows: within chance the curve is as good as straight (~)"
	case decisions.Smooth:
		return "No knee: the curve bends smoothly, and not at one place"
	case decisions.Stepped:
		return "No knee: the figure steps, rather than bends"
	case decisions.TooCoarse:
		return fmt.Sprintf("No knee shows: %s takes no values close enough to tell a knee from a smooth bend (~)", s.Vary[0].Path)
	case decisions.Unclear:
		if s.Fixed {
			return "The curve bends, but in whole cartons it does not show whether at one place (~); take a wider range, or a longer shift"
		}
		return "The curve bends, but it does not show whether at one place (~); run more shifts"
	}
	return fmt.Sprintf("No knee is looked for in %s", s.Figure.Name)
}

// amount is a figure with its unit.
func amount(f decisions.Figure, iv interval) string {
	_, unit := figureScale(f)
	return layout.Mean(shownFigure(f, iv)) + " " + unit
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
		return ", where the setting takes over from " + k.From.Name
	case k.From == decisions.SettingHolds:
		return ", where " + k.To.Name + " becomes critical"
	}
	return ", where " + k.To.Name + " takes over from " + k.From.Name
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
	return fmt.Sprintf("%s by %s %s for every %s", direction, significant(change, 2), unit, stepWords(s, step))
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

// significant prints the size of an estimate with so many digits that count, fewer where its interval does not support them.
func significant(iv interval, digits int) string {
	x := math.Abs(iv.Mean)
	if x == 0 {
		return "0"
	}
	most := max(digits-1-int(math.Floor(math.Log10(x))), 0)
	if iv.HalfWidth() > 0 {
		most = min(most, placeDecimals(iv))
	}
	return layout.Fixed(x, most)
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
	if at.HalfWidth() > 0 {
		return strings.TrimSpace(layout.Fixed(at.Mean, placeDecimals(at)) + " " + unit)
	}
	return strings.TrimSpace(fmt.Sprintf("%.12g %s", at.Mean, unit))
}

// placeDecimals is decimals for a parameter, whose unit may be large: as many as its interval supports, six at most.
func placeDecimals(at interval) int {
	return min(max(int(-math.Floor(math.Log10(at.HalfWidth()/2))), 0), 6)
}

// kneeBounds says how well the place of the knee is known. Its bounds are rounded outwards.
func kneeBounds(s *decisions.Sweep) string {
	at := s.Knee.At
	switch bounds := fmt.Sprintf("%s to %s", roundedTo(at.Low, placeDecimals(at), math.Floor), roundedTo(at.High, placeDecimals(at), math.Ceil)); {
	case s.Knee.Exact:
		return "The knee is exact: nothing in this line is left to chance, and the bottleneck changes hands there"
	case s.Fixed:
		return fmt.Sprintf("Knee at %s (%s): nothing in this line is left to chance, but cartons are whole", placeOf(s, at), bounds)
	default:
		return fmt.Sprintf("Knee at %s (%s interval %s)", placeOf(s, at), layout.Confidence(s.Confidence), bounds)
	}
}

// roundedTo prints a number with so many decimals, rounded downwards or upwards.
func roundedTo(x float64, decimals int, round func(float64) float64) string {
	unit := math.Pow10(decimals)
	if near := math.Round(x * unit); math.Abs(x*unit-near) < 1e-6 {
		return layout.Fixed(near/unit, decimals)
	}
	return layout.Fixed(round(x*unit)/unit, decimals)
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
	if !s.Fixed {
		notes = append(notes, "All points share their luck, so that they differ by less than their own ± suggest")
	}
	return notes
}
