package scenarios_test

import (
	"fmt"
	"math"
	"strings"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

// renewal rows: one station with stops, misses or rejects.
func renewal(r row) (*plan, string) {
	one := func(more string) string { return longRun(52000, 2000) + "stations:\n" + more }
	out := &plan{expected: numbers(r.expected), figures: []figure{throughput}}
	perPart := func(f *scenarios.Forecast) float64 { return 1 / throughput(f) }
	switch {
	case r.param("MTTF") != "":
		out.file = one(station(0, fmt.Sprintf("%g s", r.number("c")), "", fmt.Sprintf(", stops: [{cause: f, every: %g s, clear: {exponential: %g s}}]", r.number("MTTF"), r.number("MTTR"))))
	case strings.Contains(r.model, "no retry"):
		out.file = one(station(0, fmt.Sprintf("%g s", r.number("c")), "", fmt.Sprintf(", miss: %g %%", 100*r.number("p"))))
		out.figures = []figure{func(f *scenarios.Forecast) float64 { return f.GoodRate.Mean / 60 }}
	case strings.Contains(r.model, "3 consecutive misses"):
		out.file = one(station(0, fmt.Sprintf("%g s", r.number("c")), "",
			fmt.Sprintf(", miss: {chance: %g %%, tries: 3, then: {cause: no pick, clear: %g s}}", 100*r.number("p"), r.number("r"))))
		out.figures = []figure{perPart}
	case strings.Contains(r.model, "preempt-repeat"):
		out.file = one(station(0, fmt.Sprintf("%g s", r.number("c")), "",
			fmt.Sprintf(", stops: [{cause: f, every: %.12g s, clear: {exponential: %g s}, after: repeat}]", 1/r.number("lam"), r.number("R"))))
		out.figures = []figure{perPart}
	case strings.Contains(r.model, "calendar time"):
		var rate, length, speed float64
		fmt.Sscanf(r.parameters, "s=%g/h;d=%g;v=%g/min", &rate, &length, &speed)
		out.file = one(station(0, fmt.Sprintf("%.9f s", 60/speed), "", fmt.Sprintf(", stops: [{cause: f, every: %.9f s, clock: calendar, clear: %g s}]", 3600/rate, length)))
		out.figures = []figure{func(f *scenarios.Forecast) float64 { return f.GoodRate.Mean }}
	case strings.Contains(r.model, "asymptotic variance rate"):
		var cycle, p, mean float64
		fmt.Sscanf(r.model[strings.Index(r.model, "det cycle"):], "det cycle %g + Bernoulli(%g)*Exp(%g)", &cycle, &p, &mean)
		out.file = "shift: {length: 2000 s}\nstations:\n" + station(0, fmt.Sprintf("%g s", cycle), "",
			fmt.Sprintf(", stops: [{cause: f, every: %.12g cartons, clear: {exponential: %g s}}]", 1/p, mean))
		out.variance, out.runs = true, 1
		out.figures = []figure{func(f *scenarios.Forecast) float64 { return f.GoodPerShift.SD * f.GoodPerShift.SD / 2000 }}
	default:
		return nil, "arithmetic of a state log, checked with the indicators"
	}
	return out, ""
}

// stationTime rows: timers, sensors and cams of one cycle.
func stationTime(r row) (*plan, string) {
	out := &plan{expected: numbers(r.expected), figures: []figure{throughput}}
	belt := func(conveyor string, acts ...string) string {
		file := longRun(14000, 1000) + "conveyor: " + conveyor + "\nstations:\n"
		for i, act := range acts {
			after := ""
			if i > 0 {
				after = ", after: {pitches: 1}"
			}
			file += fmt.Sprintf("  - {name: m%d, kind: machine, cycle: %s%s}\n", i+1, act, after)
		}
		return file
	}
	switch {
	case strings.Contains(r.model, "max(timer"):
		// The timer is the pace of an indexing conveyor, the sensor an exponential act on it.
		out.file = fmt.Sprintf("setting: %.12g cartons/h\n", 3600/r.number("c")) + belt("{index: 0 s}", exponential(r.number("m")))
		out.figures = []figure{func(f *scenarios.Forecast) float64 { return 1 / throughput(f) }}
	case strings.Contains(r.model, "in sequence"):
		out.file = longRun(14000, 1000) + fmt.Sprintf(`stations:
  - {name: m1, kind: seal, lag: %s, close: 0 s, dwell: %g s, open: 0 s}
`, exponential(r.number("m")), r.number("c"))
		out.figures = []figure{func(f *scenarios.Forecast) float64 { return 1 / throughput(f) }}
	case strings.HasPrefix(r.model, "cam gate: n stations"):
		n := int(r.number("n"))
		acts := make([]string, n)
		for i := range acts {
			acts[i] = exponential(r.number("m"))
		}
		out.file = belt(fmt.Sprintf("{index: 0 s, revolution: %g s, release: at cam zero}", r.number("T")), acts...)
	case strings.HasPrefix(r.model, "cam gate"):
		out.file = belt(fmt.Sprintf("{index: 0 s, revolution: %g s, release: at cam zero}", r.number("T")), fmt.Sprintf("%g s", r.number("work")))
		out.figures = []figure{func(f *scenarios.Forecast) float64 { return 1 / throughput(f) }}
		out.slack, out.runs = 1e-4, 2
	case strings.Contains(r.model, "timeout"), strings.Contains(r.parameters, "measure=variance"):
		return nil, "a figure of one act that no report shows"
	default:
		return nil, "cam arithmetic, checked in stations/motion"
	}
	return out, ""
}

// single rows: a source, a buffer without limit, and a station of one or more units.
func single(r row) (*plan, string) {
	switch {
	case strings.Contains(r.model, "loss"), strings.Contains(r.model, "accepted rate") && r.number("K") < 2:
		return nil, "a line has no source that throws its cartons away when there is no room"
	case strings.Contains(r.model, "accepted rate"):
		// Held back at its source, a Poisson stream of K places behaves as a line of two with K-2 between (Hillier and Boling 1967).
		head := longRun(22000, 2000)
		return &plan{file: serialLine(head, []string{exponential(1 / r.number("lambda")), exponential(1 / r.number("mu"))}, []float64{r.number("K") - 2}, nil),
			expected: numbers(r.expected), figures: []figure{throughput}}, ""
	case strings.Contains(r.model, "VUT"), strings.Contains(r.parameters, "ce2"):
		return nil, "a formula, or the spread of one act, that no report shows"
	case strings.Contains(r.model, "effective process time"):
		return effective(r)
	}
	arrival, units := 1/r.number("lambda"), 1.0
	between := exponential(arrival)
	if i := r.number("interarrival"); !math.IsNaN(i) {
		arrival, between = i, fmt.Sprintf("%g s", i)
	}
	if c := r.number("c"); !math.IsNaN(c) {
		units = c
	}
	work := exponential(1 / r.number("mu"))
	if s := r.param("service"); s != "" && len(numbers(s)) > 0 && !strings.Contains(s, "Erlang") {
		work = fmt.Sprintf("%g s", numbers(s)[0])
	} else if strings.Contains(s, "Erlang") {
		work = erlang(r.number("mean service"), numbers(strings.TrimPrefix(s, "Erlang-"))[0])
	}
	file := longRun(44000*arrival, 4000*arrival) + "stations:\n" + station(0, between, "", "") +
		station(1, work, "unlimited", fmt.Sprintf(", units: %g", units))
	out := &plan{file: file, expected: numbers(r.expected)}
	content := func(f *scenarios.Forecast) float64 { return f.Buffers[0].MeanContent.Mean }
	busy := func(f *scenarios.Forecast) float64 { return units * f.Stations[1].Shares[stations.Working].Mean }
	switch r.param("measure") {
	case "Lq":
		out.figures = []figure{content}
	case "Wq":
		out.figures = []figure{func(f *scenarios.Forecast) float64 { return content(f) * arrival }}
	case "L":
		out.figures = []figure{func(f *scenarios.Forecast) float64 { return content(f) + busy(f) }}
	case "W":
		out.figures = []figure{func(f *scenarios.Forecast) float64 { return (content(f) + busy(f)) * arrival }}
	case "P(wait)":
		out.figures = []figure{func(f *scenarios.Forecast) float64 { return f.Buffers[0].WaitedShare }}
	case "Wq for every part":
		out.figures, out.exact, out.runs = []figure{content}, true, 1
	default:
		return nil, "measure " + r.param("measure")
	}
	return out, ""
}

// effective process times: a station with stops by running time (Hopp and Spearman, Factory Physics).
func effective(r row) (*plan, string) {
	law := func(mean, scv float64) string {
		switch scv {
		case 0:
			return fmt.Sprintf("%g s", mean)
		case 1:
			return exponential(mean)
		}
		return fmt.Sprintf("{gamma: {mean: %g s, cv: %.12g}}", mean, math.Sqrt(scv))
	}
	file := longRun(400*(r.number("mf")+r.number("mr")), 10*r.number("mf")) + "stations:\n" + station(0, law(r.number("t0"), r.number("c0^2")), "",
		fmt.Sprintf(", stops: [{cause: f, every: %g s, clear: %s}]", r.number("mf"), law(r.number("mr"), r.number("cr^2"))))
	return &plan{file: file, expected: numbers(r.expected), figures: []figure{func(f *scenarios.Forecast) float64 { return 1 / throughput(f) }}}, ""
}
