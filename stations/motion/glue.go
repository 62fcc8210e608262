package motion

import "fmt"

// Glue holds the times of a hot melt as its maker gives them; the terms are those of ASTM D4497: open time is how
// long after it was applied it still wets the other face, set time how long the joint must be pressed until it holds.
type Glue struct {
	Open        Seconds // more than 0
	Set         Seconds // more than 0
	Compression Seconds // for which the jaws press; 0: the set time
}

// Problems are times that make no sense, or a compression shorter than the set time.
func (g Glue) Problems() []Problem {
	var found []Problem
	add := func(path, message, hint string) {
		found = append(found, Problem{Axis: "glue", Path: path, Message: message, Hint: hint})
	}
	if !(g.Open > 0) {
		add("open", fmt.Sprintf("open time of %g s", float64(g.Open)), "more than 0")
	}
	if !(g.Set > 0) {
		add("set", fmt.Sprintf("set time of %g s", float64(g.Set)), "more than 0")
	}
	if g.Compression != 0 && g.Compression < g.Set {
		add("compression", fmt.Sprintf("compression of %g s is shorter than the set time of %g s", float64(g.Compression), float64(g.Set)),
			"press at least for the set time")
	}
	return found
}

// Dwell that the jaws need.
func (g Glue) Dwell() Seconds { return max(g.Compression, g.Set) }

// OpenTimeLeft is what remains of the open time when the faces meet so long after the glue was applied; negative: too
// late.
func (g Glue) OpenTimeLeft(applied Seconds) Seconds { return g.Open - applied }
