package decisions

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"dwellcast/scenarios"
	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
)

// Vary is a parameter of a line file, by its path, and the values that it takes in turn, rising.
type Vary struct {
	Path   string
	Values []Value
}

// How many values a range has when it does not say, and at the most.
const (
	usualValues = 11
	mostValues  = 1000
)

// A Mistake is a wrong request, with a hint that says what to write instead.
type Mistake struct{ Text, Hint string }

// Error is the mistake without its hint.
func (m *Mistake) Error() string { return m.Text }

func mistake(hint, format string, values ...any) error {
	return &Mistake{fmt.Sprintf(format, values...), hint}
}

const rangeHint = "write it like sealer.dwell=0.6s..1.6s/11: from, to, number of values"

// ParseVary reads a range such as "sealer.dwell=0.6s..1.6s/11", or values in rising order: "setting=1400 cartons/h,1450 cartons/h".
func ParseVary(text string) (Vary, error) {
	path, values, ok := strings.Cut(text, "=")
	if path = strings.TrimSpace(path); !ok || path == "" || strings.TrimSpace(values) == "" {
		return Vary{}, mistake(rangeHint, "%q is no range", text)
	}
	v := Vary{Path: path}
	var err error
	if from, to, isRange := strings.Cut(values, ".."); isRange {
		v.Values, err = parseRange(from, to)
	} else {
		v.Values, err = parseValues(values)
	}
	if err != nil {
		text, hint := message(err)
		if m, ok := errors.AsType[*Mistake](err); ok {
			text, hint = m.Text, m.Hint
		}
		return Vary{}, mistake(hint, "%s: %s", path, text)
	}
	return v, checkRising(v)
}

// parseRange reads what stands on both sides of the two points; a number behind the last slash is how many values to take.
func parseRange(from, to string) ([]Value, error) {
	n := usualValues
	if i := strings.LastIndex(to, "/"); i >= 0 {
		if count, err := strconv.Atoi(strings.TrimSpace(to[i+1:])); err == nil {
			n, to = count, to[:i]
		}
	}
	if n < 2 || n > mostValues {
		return nil, mistake(fmt.Sprintf("give 2 to %d", mostValues), "a range of %d values", n)
	}
	first, err := ParseValue(from)
	if err != nil {
		return nil, err
	}
	last, err := ParseValue(to)
	if err != nil {
		return nil, err
	}
	if first.plain != last.plain {
		return nil, mistake("give both ends a unit, or none", "%s..%s has a unit at one end only", first, last)
	}
	spaced, err := quantity.Spaced(first.Quantity, last.Quantity, n)
	if err != nil {
		return nil, err
	}
	return shortened(spaced, first)
}

// shortened leaves the values between the ends of a range seven digits, so that what is printed is what was run.
func shortened(spaced []quantity.Quantity, like Value) ([]Value, error) {
	values := []Value{{spaced[0], like.plain}}
	for _, q := range spaced[1 : len(spaced)-1] {
		v := Value{q, like.plain}
		short, err := valueOf(tidy(v.Number(), 7), v)
		if err != nil {
			return nil, err
		}
		values = append(values, short)
	}
	return append(values, Value{spaced[len(spaced)-1], like.plain}), nil
}

func parseValues(list string) ([]Value, error) {
	var values []Value
	for text := range strings.SplitSeq(list, ",") {
		v, err := ParseValue(text)
		if err != nil {
			return nil, err
		}
		values = append(values, v)
	}
	if len(values) < 2 || len(values) > mostValues {
		return nil, mistake(rangeHint, "%d values", len(values))
	}
	return values, nil
}

func checkRising(v Vary) error {
	for i := 1; i < len(v.Values); i++ {
		a, b := v.Values[i-1], v.Values[i]
		switch sign, err := a.Compare(b.Quantity); {
		case err != nil || a.plain != b.plain:
			return mistake("give all values the same kind of unit", "%s: %s and %s can't be compared", v.Path, a, b)
		case sign == 0:
			return mistake("give two different ends", "%s: %s stands there twice", v.Path, a)
		case sign > 0:
			return mistake(fmt.Sprintf("begin with %s", v.Values[len(v.Values)-1]), "%s runs backwards, from %s to %s", v.Path, v.Values[0], v.Values[len(v.Values)-1])
		}
	}
	return nil
}

// with changes one parameter of a line. Problems name the parameter as one that is varied.
func with(f *scenarios.File, path string, v Value) (*scenarios.File, error) {
	return retitled(f.With(path + "=" + v.String()))
}

// retitled lets the problems of a change name --vary, which made it.
func retitled(f *scenarios.File, err error) (*scenarios.File, error) {
	list, ok := errors.AsType[document.ProblemList](err)
	if !ok {
		return f, err
	}
	changed := make(document.ProblemList, len(list))
	for i, problem := range list {
		problem.At.Override = strings.Replace(problem.At.Override, "--set ", "--vary ", 1)
		changed[i] = problem
	}
	return nil, changed
}

// valueAt is what a line file gives for a parameter.
func valueAt(f *scenarios.File, path string) (Value, error) {
	n, err := document.Find(f.Document, path)
	if err != nil {
		_, err = retitled(nil, relabelled(err, path))
		return Value{}, err
	}
	var p document.Problems
	n = n.Assumed(&p)
	if n.Kind() != document.Scalar {
		return Value{}, mistake("give one of its parts, such as "+path+"."+firstPart(n), "%s is %s, not one quantity", path, n.Kind())
	}
	v, err := ParseValue(n.Raw())
	if err != nil {
		return Value{}, mistake("give the path of a number", "%s is %q, which is no quantity", path, n.Raw())
	}
	return v, nil
}

// relabelled gives problems of a path the flag that it came by.
func relabelled(err error, path string) error {
	list, _ := errors.AsType[document.ProblemList](err)
	for i := range list {
		list[i].At.Override = "--set " + path
	}
	return err
}

// firstPart is the way from a node to its first quantity.
func firstPart(n *document.Node) string {
	for _, leaf := range n.Leaves() {
		if _, err := ParseValue(leaf.Raw()); err == nil {
			return strings.TrimPrefix(strings.TrimPrefix(leaf.Path(), n.Path()), ".")
		}
	}
	return "mean"
}
