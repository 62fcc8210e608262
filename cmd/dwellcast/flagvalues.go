package main

import (
	"errors"
	"fmt"
	"strings"

	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
)

// share reads a flag such as 0.5% and demands that it lie within bounds.
func share(flag, text string, least, most float64) (float64, error) {
	q, err := quantity.ParseAs(text, quantity.Ratio)
	if err != nil {
		return 0, usage("write it like "+quantity.FormatRatio(least), "%s: %w", flag, err)
	}
	x, err := q.Ratio()
	if err != nil {
		return 0, usage("write it like "+quantity.FormatRatio(least), "%s: %w", flag, err)
	}
	if !(x >= least && x <= most) {
		return 0, usage(fmt.Sprintf("give %s to %s", quantity.FormatRatio(least), quantity.FormatRatio(most)), "%s is %s", flag, text)
	}
	return x, nil
}

// rate reads a flag such as 1450cartons/h; 0 where it is not given.
func rate(flag, text string) (float64, error) {
	if text == "" {
		return 0, nil
	}
	q, err := quantity.ParseAs(text, quantity.Rate)
	if err != nil {
		return 0, quantityComplaint(flag, err)
	}
	x, err := q.PerHour()
	if err != nil || !(x > 0) || x > 1e6 {
		return 0, usage("give a rate above 0, such as 1450cartons/h", "%s is %s", flag, text)
	}
	return x, nil
}

// perShift reads a target, as cartons per shift or as a rate over the whole shift; 0 where it is not given.
func perShift(flag, text string, file *scenarios.File) (float64, error) {
	if text == "" {
		return 0, nil
	}
	q, err := quantity.Parse(text)
	switch {
	case err != nil:
		return 0, quantityComplaint(flag, err)
	case q.Is(quantity.Rate):
		perHour, err := rate(flag, text)
		return perHour * file.Line.Shift.Length.Hours(), err
	}
	x, err := q.In("cartons")
	if err != nil || !(x > 0) {
		return 0, usage("write it like 9500cartons or 1200cartons/h", "%s is %s", flag, text)
	}
	return x, nil
}

// quantityComplaint says what is wrong with a quantity in a flag.
func quantityComplaint(flag string, err error) error {
	hint := ""
	if e, ok := errors.AsType[*quantity.Error](err); ok {
		hint = e.Hint
		return usage(hint, "%s: %s", flag, strings.TrimSpace("\""+e.Text+"\" "+e.Message))
	}
	return usage(hint, "%s: %w", flag, err)
}
