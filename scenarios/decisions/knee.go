package decisions

import (
	"math"

	"dwellcast/sim/stats"
)

// Knee is where a curve bends at one place: its slope jumps there. See the definition in DEVELOPERS.md.
type Knee struct {
	// At is where, in the unit of the parameter; without width where it was found exactly.
	At stats.Interval
	// Before and After are the slopes on either side, in the figure's unit per unit of the parameter.
	Before, After stats.Interval
	// Level is the figure at the knee.
	Level float64
	// Exact says that nothing is left to chance, and that the bottleneck changes hands at that very value.
	Exact bool
	// From and To are who held most of the bottleneck before and after; the same where it does not change hands.
	From, To Holder
}

// Bend says how a sweep over one parameter bends.
type Bend int

// The ways in which a curve bends.
const (
	NotSought Bend = iota // a grid, or a figure that no knee is looked for in
	TooFew                // points to tell
	Level                 // the figure does not change at all
	Straight              // no change of slope shows
	Smooth                // the slope changes, but not at one place
	Stepped               // the figure itself jumps
	TooCoarse             // the parameter takes no values close enough to tell a knee from a smooth bend
	Unclear               // the slope changes, but these shifts don't tell whether at one place
	Kneed                 // there is a knee
)

// leastPoints is how many points a curve needs for a knee to be looked for.
const leastPoints = 5

// halvings is how often the window about a knee is halved before its slope counts as jumping: the change of slope is to be the same
// as over a window 2^halvings times as wide. Over a smooth bend it falls to 2^-halvings, and over a step it rises to 2^halvings.
const halvings = 3

// leastBend is the change of slope, over the whole range and as a share of the figure, below which nobody would speak of a knee.
const leastBend = 0.001

// sure is the confidence with which a change of slope must show before it is looked at any closer.
const sure = 0.999

// bendOf says how a curve bends that a zoom has looked at, and at which level a knee shows best.
func bendOf(levels []zoomed, coarse bool) (Bend, int) {
	bend := Unclear
	if coarse {
		bend = TooCoarse
	}
	if !levels[0].shows() {
		return Straight, 0
	}
	knee := 0
	for i, now := range levels[1:] {
		for j := range i + 1 {
			if now.most() < levels[j].least()/2 {
				bend = Smooth
			}
		}
		if i+1 < halvings || !now.shows() {
			continue
		}
		switch share := now.change.Mean / levels[i+1-halvings].change.Mean; {
		case share > 0.5 && share < 2:
			knee = i + 1
		case share >= 2:
			bend = Stepped
		}
	}
	if knee > 0 {
		bend = Kneed
	}
	return bend, knee
}

// most and least are what the change of slope may be, chance or whole cartons allowed for.
func (z *zoomed) most() float64  { return math.Abs(z.change.Mean) + z.noise }
func (z *zoomed) least() float64 { return math.Abs(z.change.Mean) - z.noise }

// shows says that a change of slope is more than chance, or counting whole cartons, explains.
func (z *zoomed) shows() bool { return math.Abs(z.change.Mean) > z.noise }

// kneeAt describes the knee at a level of the zoom.
func (b *bending) kneeAt(levels []zoomed, i int) *Knee {
	now, wide := levels[i], levels[i-halvings]
	k := &Knee{At: b.crossing(levels, i), Before: b.slope(wide.places, wide.cell-1), After: b.slope(wide.places, wide.cell+1)}
	k.Level = now.places[now.cell].y + (k.At.Mean-now.places[now.cell].x)*b.slope(now.places, now.cell-1).Mean
	k.From, k.To = now.places[0].holder, now.places[len(now.places)-1].holder
	return k
}
