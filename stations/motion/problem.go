package motion

import "fmt"

// Problem is one mistake in a description, with the path of the field at fault so that a caller can say where in its
// file it is.
type Problem struct {
	Axis    string // name of the axis or part
	Segment string // name of the segment, or "segment 2" if it has none; empty if the whole axis is meant
	Path    string // as "segments[1].to"; empty if the whole axis is meant
	Message string // what is wrong
	Hint    string // what to do; may be empty
}

// Error is the problem in one line.
func (p Problem) Error() string {
	where := p.Axis
	if p.Segment != "" {
		where += ": " + p.Segment
	}
	if p.Hint != "" {
		return fmt.Sprintf("%s: %s (%s)", where, p.Message, p.Hint)
	}
	return fmt.Sprintf("%s: %s", where, p.Message)
}

// problem is a Problem of the i-th segment and one of its fields.
func (a Axis) problem(i int, field, message, hint string) Problem {
	path := fmt.Sprintf("segments[%d]", i)
	if field != "" {
		path += "." + field
	}
	return Problem{Axis: a.Name, Segment: a.segmentName(i), Path: path, Message: message, Hint: hint}
}

func (a Axis) segmentName(i int) string {
	if name := a.Segments[i].Name; name != "" {
		return name
	}
	return fmt.Sprintf("segment %d", i+1)
}
