package scenarios_test

import (
	"context"
	"fmt"
	"math"
	"strings"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

func mirror(f *scenarios.File, seed uint64) *scenarios.Forecast {
	out, err := scenarios.Run(context.Background(), f, scenarios.Options{Seed: seed + 1000})
	if err != nil {
		panic(err)
	}
	return out
}

func unreliable(r row) (*plan, string) {
	switch {
	case strings.HasPrefix(r.id, "geo3"):
		return nil, "the slotted convention keeps a place free for a held part, which no station does; the bas-geo rows are its twin"
	case strings.HasPrefix(r.id, "inf"):
		return nil, "a bound for every buffer, not the throughput of one line"
	case strings.HasPrefix(r.id, "buz"):
		return rigid(r)
	case r.param("p") != "":
		return slotted(r)
	case r.param("speeds") != "", r.param("cycle") != "", r.param("means") != "":
		return failing(r)
	}
	return nil, "unknown model"
}

// slotted lines: an operation takes one slot, and with probability p a geometric number of slots more, blocking after service.
func slotted(r row) (*plan, string) {
	p, repair := numbers(r.param("p")), numbers(r.param("r"))
	buffers := numbers(r.param("b"))
	if len(buffers) == 0 {
		for _, n := range numbers(r.param("N")) {
			buffers = append(buffers, n-2)
		}
	}
	var cycles []string
	for range p {
		cycles = append(cycles, "1 s")
	}
	file := serialLine(longRun(60000, 10000), cycles, buffers, func(i int) string {
		return fmt.Sprintf(", stops: [{cause: fault, every: %.12g cartons, clear: {geometric: {mean: %.12g s, step: 1 s}}}]", 1/p[i], 1/repair[i])
	})
	out := &plan{file: file, expected: numbers(r.expected), figures: []figure{throughput}}
	if strings.Contains(r.parameters, "mean n") {
		out.slack = 0.002 // at slot ends against over time
		out.figures = []figure{func(f *scenarios.Forecast) float64 {
			return f.Buffers[0].MeanContent.Mean + 1 - f.Stations[1].Shares[stations.Starved].Mean + f.Stations[0].Shares[stations.Blocked].Mean
		}}
	}
	return out, ""
}

// rigid lines: one indexing conveyor with a short common cycle, on which any stop stands all.
func rigid(r row) (*plan, string) {
	ratios := numbers(r.param("MTTR/MTTF"))
	clock := "running"
	if strings.Contains(r.id, "tdf") {
		clock = "calendar"
	}
	const repair = 10.0
	file := longRun(11000, 1000) + "conveyor: {index: 0 s}\nstations:\n"
	for i, ratio := range ratios {
		after := ""
		if i > 0 {
			after = ", after: {pitches: 1}"
		}
		file += fmt.Sprintf("  - {name: m%d, kind: machine, cycle: 0.1 s%s, stops: [{cause: fault, every: %.12g s, clock: %s, clear: {exponential: %g s}}]}\n",
			i+1, after, repair/ratio, clock, repair)
	}
	return &plan{file: file, expected: numbers(r.expected), slack: 0.0015, // of a cycle lost at each stop
		figures: []figure{func(f *scenarios.Forecast) float64 { return throughput(f) * 0.1 }}}, ""
}

// failing lines: stops at a rate per running time, or per clock time, exponential repair.
func failing(r row) (*plan, string) {
	fails, repairs := numbers(r.param("fail rates")), numbers(r.param("repair rates"))
	if f := r.number("fail rate"); !math.IsNaN(f) {
		fails, repairs = []float64{f, f, f}, []float64{r.number("repair rate"), r.number("repair rate"), r.number("repair rate")}
	}
	var cycles []string
	buffers := numbers(r.param("b"))
	out := &plan{expected: numbers(r.expected)[:1], figures: []figure{throughput}}
	scale := 1.0
	switch {
	case r.param("speeds") != "":
		if 1/repairs[0] < 20 {
			return nil, "continuous flow with repairs shorter than 20 cycles: indicative only for whole cartons, as the row says"
		}
		for _, s := range numbers(r.param("speeds")) {
			cycles = append(cycles, fmt.Sprintf("%.9f s", 1/s))
		}
		buffers = []float64{r.number("N") - 2}
		out.slack, scale = 0.01, 10 // the row's own allowance for whole cartons
	case r.param("cycle") != "":
		c := numbers(r.param("cycle"))
		for i := range len(buffers) + 1 {
			cycles = append(cycles, fmt.Sprintf("%g s", c[min(i, len(c)-1)]))
		}
		scale = 3
		out.slack = 0.004 // the row's own: the value is simulated
	default:
		for _, m := range numbers(r.param("means")) {
			cycles = append(cycles, exponential(m))
		}
	}
	clock := "running"
	if strings.Contains(r.model, "calendar time") {
		clock = "calendar"
	}
	out.file = serialLine(longRun(scale*20000, scale*2000), cycles, buffers, func(i int) string {
		if fails[i] == 0 {
			return ""
		}
		return fmt.Sprintf(", stops: [{cause: fault, every: %.12g s, clock: %s, clear: {exponential: %.12g s}}]", 1/fails[i], clock, 1/repairs[i])
	})
	if strings.Contains(r.parameters, "starved fraction") || strings.Contains(r.parameters, "blocked fraction") {
		state := stations.Starved
		if strings.Contains(r.parameters, "blocked fraction") {
			state = stations.Blocked
		}
		out.figures, out.expected = nil, numbers(r.expected)
		for i := range cycles {
			out.figures = append(out.figures, share(i, state))
		}
	}
	return out, ""
}

// synchronous lines: one indexing conveyor on which all act at once and the slowest decides.
func synchronous(r row) (*plan, string) {
	text := r.parameters
	meanCycle := func(f *scenarios.Forecast) float64 { return 1 / throughput(f) }
	belt := func(index float64, acts []string, more func(int) string) string {
		file := longRun(14000, 1000) + fmt.Sprintf("conveyor: {index: %g s}\nstations:\n", index)
		for i, act := range acts {
			after, extra := "", ""
			if i > 0 {
				after = ", after: {pitches: 1}"
			}
			if more != nil {
				extra = more(i)
			}
			file += fmt.Sprintf("  - {name: m%d, kind: machine, cycle: %s%s%s}\n", i+1, act, after, extra)
		}
		return file
	}
	same := func(n int, act string) []string {
		acts := make([]string, n)
		for i := range acts {
			acts[i] = act
		}
		return acts
	}
	out := &plan{expected: numbers(r.expected), figures: []figure{meanCycle}}
	switch {
	case strings.Contains(text, "service exp"):
		var n int
		var m float64
		fmt.Sscanf(text, "n=%d/service exp mean %g", &n, &m)
		out.file, out.figures = belt(0, same(n, exponential(m)), nil), []figure{throughput}
	case strings.Contains(text, "service uniform"):
		var n int
		var lo, hi float64
		fmt.Sscanf(text, "n=%d/service uniform%g,%g", &n, &lo, &hi)
		out.file = belt(0, same(n, fmt.Sprintf("{uniform: {from: %g s, to: %g s}}", lo, hi)), nil)
	case strings.HasPrefix(text, "(mean,sd)"):
		x := numbers(r.param("(mean,sd)"))
		var acts []string
		for i := 0; i+1 < len(x); i += 2 {
			acts = append(acts, fmt.Sprintf("{normal: {mean: %g s, sd: %g s}}", x[i], x[i+1]))
		}
		out.file = belt(0, acts, nil)
	case r.param("m") != "":
		out.file = belt(0, same(int(r.number("n")), fmt.Sprintf("{normal: {mean: %g s, sd: %g s}}", r.number("m"), r.number("s"))), nil)
	case r.param("times") != "":
		var acts []string
		for _, a := range numbers(r.param("times")) {
			acts = append(acts, fmt.Sprintf("%g s", a))
		}
		out.file, out.slack, out.runs = belt(r.number("index"), acts, nil), 1e-4, 2
	case r.param("clear") != "":
		p, clear := numbers(r.param("p")), numbers(r.param("clear"))
		out.file = "crew: {attendants: 1}\n" + belt(0, same(len(p), fmt.Sprintf("%g s", r.number("T"))), func(i int) string {
			return fmt.Sprintf(", stops: [{cause: jam, every: %.12g cartons, clear: %g s}]", 1/p[i], clear[i])
		})
		out.figures = []figure{throughput}
	default:
		return nil, "unknown model"
	}
	return out, ""
}

// interference: identical machines side by side, each stopping by running time, and a crew that clears them.
func interference(r row) (*plan, string) {
	clear := fmt.Sprintf("{exponential: %.12g s}", 1/r.number("mu"))
	crew := r.number("c")
	if s := r.number("s"); !math.IsNaN(s) {
		clear, crew = fmt.Sprintf("%g s", s), 1
	}
	between := 1 / r.number("lambda")
	file := longRun(1050*between, 50*between) + fmt.Sprintf(`crew: {attendants: %g}
stations:
  - {name: machines, kind: machine, units: %g, cycle: %.12g s, stops: [{cause: stop, every: %.12g s, clear: %s}]}
`, crew, r.number("N"), between/5, between, clear)
	out := &plan{file: file, expected: numbers(r.expected), figures: []figure{share(0, stations.Working)}}
	if strings.Contains(r.parameters, "operator utilization") {
		out.figures = []figure{func(f *scenarios.Forecast) float64 { return f.CrewLoad.Mean }}
	}
	return out, ""
}
