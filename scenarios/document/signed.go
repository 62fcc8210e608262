package document

import (
	"fmt"
	"slices"

	"dwellcast/scenarios/quantity"
)

// isChange says that an override is signed, so that it changes what is there instead of replacing it.
func (n *Node) isChange() bool {
	return n.kind == Scalar && quantity.Signed(n.text)
}

// changed is a copy of a value after a signed change: of a single quantity, of a value with its range, whose bounds move alike, or of a
// distribution. A percentage scales all of a distribution, its spread too. An addition moves its mean, or, where it is given by places
// such as from and to, all of these.
func changed(old, by *Node, at Position) (*Node, error) {
	if sum, ok := plainSum(old, by); ok {
		return sum, nil
	}
	step, err := quantity.Parse(by.text)
	if err != nil {
		return nil, ProblemList{{At: at, Message: err.Error()}}
	}
	c := changing{step: step, scales: step.Is(quantity.Ratio), at: at}
	out := old.Clone()
	c.change(out)
	if c.changes == 0 && c.problems == nil {
		c.fail(old.text, "can't be changed by "+step.String(), "write the new value without a sign")
	}
	if c.problems != nil {
		return nil, c.problems
	}
	return out, nil
}

// plainSum adds plain numbers, such as a count of people; false where one of both has a unit.
func plainSum(old, by *Node) (*Node, bool) {
	a, errA := quantity.Number(old.text)
	b, errB := quantity.Number(by.text)
	if old.kind != Scalar || errA != nil || errB != nil {
		return nil, false
	}
	sum := old.Clone()
	sum.text, sum.at = a.Add(a, b).RatString(), by.at
	return sum, true
}

// changing walks through a value.
type changing struct {
	step     quantity.Quantity
	scales   bool // the step is a percentage
	at       Position
	changes  int
	problems ProblemList
}

// Keys whose values are no quantities of the value itself: counts, ratios and names.
var unchanged = []string{"source", "cv", "shape", "stages", "sigma", "weights", "tries"}

// Keys that say how wide a distribution is, and move only when it is scaled.
var widths = []string{"sd", "step"}

func (c *changing) change(n *Node) {
	switch n.kind {
	case List:
		for _, v := range n.values {
			c.change(v)
		}
	case Map:
		for i, key := range n.keys {
			if slices.Contains(unchanged, key.text) || !c.scales && slices.Contains(widths, key.text) {
				continue
			}
			if !c.scales && key.text == "scale" {
				c.fail(n.values[i].text, "is the scale of a distribution, which an addition does not move", "change it by a percentage, such as +10 %")
				continue
			}
			c.change(n.values[i])
		}
	default:
		c.scalar(n)
	}
}

// scalar changes a single quantity. A percentage of a share is added to it; within a distribution nothing else is a share.
func (c *changing) scalar(n *Node) {
	q, err := quantity.Parse(n.text)
	if err != nil {
		c.fail(n.text, "is no quantity that a change could be added to", "write the new value without a sign")
		return
	}
	next, err := q.Changed(c.step)
	if err != nil {
		c.problems = append(c.problems, Problem{At: c.at, Message: err.Error()})
		return
	}
	n.text, n.at = next.String(), c.at
	c.changes++
}

func (c *changing) fail(text, message, hint string) {
	c.problems = append(c.problems, Problem{At: c.at, Text: text, Message: message, Hint: hint})
}

// nothingThere says that there is no value to change.
func nothingThere(path string, by *Node, at Position) error {
	return ProblemList{{At: at, Text: by.text, Message: "is a change, but the file gives no value there",
		Hint: fmt.Sprintf("write the value without a sign, such as %s=%s", path, by.text[1:])}}
}
