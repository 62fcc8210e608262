package decisions

import (
	"slices"

	"dwellcast/sim/stats"
)

// Ranges is what becomes of an answer at the ends of the ranges in the file, each input moved alone, the others at their likely values and
// all on the same luck.
type Ranges struct {
	// Inputs is how many inputs carry a range, and Replications how many shifts were run of every line at every end.
	Inputs, Replications int
	// Overturns are the ends at which the answer would be another one, in the order of the file.
	Overturns []Overturn
}

// Overturn is an end of an input's range at which the answer would be another one.
type Overturn struct {
	Input
	// At is the value there, as the file has it.
	At  string
	How Upset
	// Why is the limit that is broken, of Forbidden.
	Why string
	// Setting, cartons/h, makes Gain good cartons a shift more; of Outdone by another setting.
	Setting float64
	Gain    stats.Interval
	// Candidate that would be taken instead, of Outdone by another candidate.
	Candidate string
}

// Upset is how an answer is overturned.
type Upset uint8

// The ways.
const (
	Forbidden Upset = iota + 1 // it is beyond a limit
	Outdone                    // another is better
	Fails                      // it no longer makes what is wanted
	Reaches                    // what no setting or candidate made is made
)

// String is the way in a word.
func (u Upset) String() string {
	return [...]string{Forbidden: "forbidden", Outdone: "outdone", Fails: "fails", Reaches: "reaches"}[u]
}

// end is one end of an input's range.
type end struct {
	input *Input
	value string
}

// endsOf lists the ends of the ranges of inputs, and counts the inputs that have one.
func endsOf(inputs []Input, leave ...string) (ends []end, ranged int) {
	for i := range inputs {
		in := &inputs[i]
		if !in.Ranged() || slices.Contains(leave, in.Path) {
			continue
		}
		ranged++
		for _, value := range []string{in.Low, in.High} {
			if value != "" && value != in.Value {
				ends = append(ends, end{in, value})
			}
		}
	}
	return ends, ranged
}

func (e end) overturn(how Upset) *Overturn { return &Overturn{Input: *e.input, At: e.value, How: how} }
