package decisions

import (
	"fmt"

	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// Figure is one of the figures that a forecast holds, by the name that a user gives it.
type Figure struct {
	Name string
	// Unit is cartons/h, cartons, stops/h, or empty for a share of 1.
	Unit string
	// Of takes the figure out of a forecast.
	Of func(*scenarios.Forecast) stats.Interval
	// Shift is the figure of a shift with so many good cartons, nil where that is not all it depends on.
	Shift func(good float64) float64
}

// Share says that the figure is a share of 1.
func (f Figure) Share() bool { return f.Unit == "" }

const figureHint = "give good_rate, good_per_shift, target_chance, stops_per_hour, crew_load, setting_share, master_share, " +
	"or of a station a share such as sealer.starved, sealer.bottleneck_share, sealer.rejects, or a loss such as sealer.rejected"

// ParseFigure finds the figure of that name: one of the line, or STATION.FIGURE, or WHERE.CAUSE for the cartons a shift of a row
// of the loss sheet, or WHERE.CAUSE.stops for how often an hour it stops.
func ParseFigure(name string, f *scenarios.File) (Figure, error) {
	known := append(lineFigures(f), stationFigures(f)...)
	causes, err := causeFigures(f)
	if err != nil {
		return Figure{}, err
	}
	known = append(known, causes...)
	var names []string
	var found []Figure
	for _, figure := range known {
		if figure.Name == name {
			found = append(found, figure)
		}
		names = append(names, figure.Name)
	}
	switch {
	case len(found) > 1:
		return Figure{}, mistake("give the station or the cause another name in the file", "%q is the name of %d figures", name, len(found))
	case len(found) == 1:
		return found[0], nil
	}
	hint := figureHint
	if near := quantity.Nearest(name, names); near != "" {
		hint = "did you mean " + near + "?"
	}
	return Figure{}, mistake(hint, "there is no figure %q", name)
}

func lineFigures(f *scenarios.File) []Figure {
	hours := f.Line.Shift.Length.Hours()
	figures := []Figure{
		{"good_rate", "cartons/h", func(r *scenarios.Forecast) stats.Interval { return r.GoodRate }, func(good float64) float64 { return good / hours }},
		{"good_per_shift", "cartons", func(r *scenarios.Forecast) stats.Interval { return r.GoodPerShift.Interval }, func(good float64) float64 { return good }},
		{"stops_per_hour", "stops/h", StopsPerHour, nil},
		{"crew_load", "", func(r *scenarios.Forecast) stats.Interval { return r.CrewLoad }, nil},
		{"setting_share", "", func(r *scenarios.Forecast) stats.Interval { return r.SettingShare }, nil},
		{"master_share", "", func(r *scenarios.Forecast) stats.Interval { return r.MasterShare }, nil},
	}
	if f.Target > 0 {
		figures = append(figures, Figure{"target_chance", "",
			func(r *scenarios.Forecast) stats.Interval { return r.Target.Chance },
			func(good float64) float64 { return madeIt(good, f.Target) }})
	}
	return figures
}

func madeIt(good, target float64) float64 {
	if good >= target {
		return 1
	}
	return 0
}

// StopsPerHour is the number of stops an hour over all causes, reloads that came too late included.
func StopsPerHour(r *scenarios.Forecast) stats.Interval {
	var parts []stats.Interval
	for _, stop := range r.Stops {
		parts = append(parts, stop.PerShift)
	}
	return divided(together(parts, r.Confidence), r.Scheduled.Hours())
}

// RejectsPerShift is the mean number of cartons rejected a shift.
func RejectsPerShift(r *scenarios.Forecast) float64 {
	sum := 0.0
	for _, st := range r.Stations {
		sum += st.Rejects
	}
	return sum
}

// together is the interval of a sum whose parts may depend on each other: as wide as all of them.
func together(parts []stats.Interval, confidence float64) stats.Interval {
	sum := stats.Interval{Confidence: confidence}
	for _, part := range parts {
		sum.Mean += part.Mean
		sum.Low += part.Low
		sum.High += part.High
		sum.N = part.N
	}
	return sum
}

// divided is an interval in a larger unit.
func divided(iv stats.Interval, by float64) stats.Interval {
	iv.Mean /= by
	iv.Low /= by
	iv.High /= by
	return iv
}

func stationFigures(f *scenarios.File) []Figure {
	var figures []Figure
	for i := range f.Line.Stations {
		name := f.Line.Stations[i].Name
		for state := range stations.NumStates {
			figures = append(figures, Figure{Name: name + "." + state.String(),
				Of: func(r *scenarios.Forecast) stats.Interval { return r.Stations[i].Shares[state] }})
		}
		figures = append(figures,
			Figure{Name: name + ".stopped", Of: func(r *scenarios.Forecast) stats.Interval {
				shares := r.Stations[i].Shares
				return together([]stats.Interval{shares[stations.Awaiting], shares[stations.Clearing]}, r.Confidence)
			}},
			Figure{Name: name + ".bottleneck_share", Of: func(r *scenarios.Forecast) stats.Interval { return r.Stations[i].BottleneckShare }},
			count(name+".rejects", func(r *scenarios.Forecast) float64 { return r.Stations[i].Rejects }),
			count(name+".misses", func(r *scenarios.Forecast) float64 { return r.Stations[i].Misses }))
	}
	return figures
}

// count is a mean number of cartons a shift, whose spread a forecast does not hold.
func count(name string, of func(*scenarios.Forecast) float64) Figure {
	return Figure{Name: name, Unit: "cartons", Of: func(r *scenarios.Forecast) stats.Interval {
		iv := stats.MeanInterval([]float64{of(r)}, r.Confidence)
		iv.N = r.Replications
		return iv
	}}
}

func causeFigures(f *scenarios.File) ([]Figure, error) {
	sim, err := stations.New(f.Line)
	if err != nil {
		return nil, fmt.Errorf("this line can't be simulated: %w", err)
	}
	var figures []Figure
	for _, cause := range sim.Causes() {
		name := cause.Where + "." + cause.What
		figures = append(figures, Figure{Name: name, Unit: "cartons", Of: func(r *scenarios.Forecast) stats.Interval { return lossOf(r, cause) }})
		if cause.Kind.Stands() {
			figures = append(figures, Figure{Name: name + ".stops", Unit: "stops/h", Of: func(r *scenarios.Forecast) stats.Interval { return stopOf(r, cause) }})
		}
	}
	return figures, nil
}

// lossOf is a row of the loss sheet; one that is not there is 0.
func lossOf(r *scenarios.Forecast, cause stations.Cause) stats.Interval {
	for _, loss := range r.Losses {
		if loss.Of == cause {
			return loss.Cartons
		}
	}
	return stats.Interval{N: r.Replications, Confidence: r.Confidence}
}

func stopOf(r *scenarios.Forecast, cause stations.Cause) stats.Interval {
	for _, stop := range r.Stops {
		if stop.Of == cause {
			return divided(stop.PerShift, r.Scheduled.Hours())
		}
	}
	return stats.Interval{N: r.Replications, Confidence: r.Confidence}
}
