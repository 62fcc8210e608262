package scenarios

import (
	"fmt"

	"dwellcast/scenarios/quantity"
)

// fewShifts is below what a spread over shifts, or an interval that leans on the normal law, should rest on.
const fewShifts = 30

// warnings says what to be careful of in a forecast, each with the figure that it concerns.
func (s *sample) warnings(out *Forecast, o Options) []Warning {
	var list []Warning
	warn := func(about, format string, args ...any) {
		list = append(list, Warning{about, fmt.Sprintf(format, args...)})
	}
	n := len(s.good)
	switch {
	case n < 2:
		warn("good_rate", "one shift gives no interval; run more shifts")
	case n < fewShifts && s.steady:
	case n < fewShifts:
		warn("good_rate", "only %d shifts: the interval and P10/P90 are rough; run at least %d", n, fewShifts)
	}
	if out.MakesNothing() {
		warn("good_rate", "not one good carton came out: the loss sheet says where they went; a stop or an act that never ends is one way")
	}
	if o.Precision > 0 && out.GoodRate.HalfWidth() > o.Precision*out.GoodRate.Mean {
		warn("good_rate", "the wanted precision of %g %% was not reached in %s", 100*o.Precision, counted(n, s.steady))
	}
	if t := out.Target; t != nil && out.GoodPerShift.Contains(t.PerShift) {
		warn("target", "the interval of the mean holds the target: this run can't tell whether the mean makes it")
	}
	for _, stop := range out.Stops {
		if stop.Seen == 0 && !stop.Reload {
			warn("stop "+stop.Where+"/"+stop.Cause, "never happened in %s: its loss is not estimated", counted(n, s.steady))
		}
	}
	return list
}

// MakesNothing says that not one good carton came out of any shift.
func (f *Forecast) MakesNothing() bool { return f.Replications > 0 && f.GoodPerShift.Mean == 0 }

// Counted is what a forecast rests on, in words: shifts, or batches of one long run.
func (f *Forecast) Counted() string { return counted(f.Replications, f.Steady != nil) }

func counted(n int, long bool) string {
	if long {
		return quantity.FormatCount(int64(n), "batch")
	}
	return quantity.FormatCount(int64(n), "shift")
}
