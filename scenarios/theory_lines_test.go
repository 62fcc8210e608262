package scenarios_test

import (
	"fmt"
	"math"
	"strings"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

// express turns a row into a line file, or says why a line file can't be what it describes. A row of a topic that has nothing
// to do with lines gives neither.
func express(r row) (*plan, string) {
	switch r.topic {
	case "serial-exp", "serial-erlang", "serial-general":
		return serial(r)
	case "transient":
		return transient(r)
	case "unreliable":
		return unreliable(r)
	case "synchronous":
		return synchronous(r)
	case "interference":
		return interference(r)
	case "renewal-oee":
		return renewal(r)
	case "station-time":
		return stationTime(r)
	case "single":
		return single(r)
	}
	return nil, ""
}

// longRun heads a file for a long run; times are in seconds.
func longRun(length, warmUp float64) string {
	return fmt.Sprintf("run: {length: %g s, warm_up: %g s, batches: 20}\n", length, warmUp)
}

// station is a free-running machine; before is the buffer in front of it, empty for the head.
func station(i int, cycle, before, more string) string {
	s := fmt.Sprintf("  - {name: m%d, kind: machine, cycle: %s", i+1, cycle)
	if before != "" {
		s += fmt.Sprintf(", after: {buffer: %s}", before)
	}
	return s + more + "}\n"
}

func exponential(mean float64) string { return fmt.Sprintf("{exponential: %g s}", mean) }

func erlang(mean float64, k float64) string {
	if k == 1 {
		return exponential(mean)
	}
	return fmt.Sprintf("{erlang: {mean: %g s, stages: %g}}", mean, k)
}

// repeated is the list in a parameter, stretched to n where it says "all 1" or "2 each".
func (r row) repeated(key string, n int) []float64 {
	xs := numbers(strings.NewReplacer("all", "", "each", "").Replace(r.param(key)))
	for len(xs) > 0 && len(xs) < n {
		xs = append(xs, xs[len(xs)-1])
	}
	return xs
}

// serialLine writes a serial line with the given cycles and buffers.
func serialLine(head string, cycles []string, buffers []float64, more func(int) string) string {
	out := head + "stations:\n"
	for i, c := range cycles {
		before := ""
		if i > 0 {
			before = fmt.Sprintf("%g cartons", buffers[i-1])
		}
		extra := ""
		if more != nil {
			extra = more(i)
		}
		out += station(i, c, before, extra)
	}
	return out
}

func serial(r row) (*plan, string) {
	switch {
	case r.param("services") != "":
		return services(r)
	case strings.Contains(r.parameters, "line A"):
		return reversed(r)
	case strings.Contains(r.parameters, "optimal mean"):
		return nil, "asks for the best division of work, which is a search over runs"
	case r.param("miss p") != "":
		return missRepeat(r)
	}
	n := len(numbers(r.param("means")))
	if s := r.number("stations"); !math.IsNaN(s) {
		n = int(s)
	}
	if n < 2 && strings.Contains(r.id, "ser") { // "means=1" stands for all, the number is in the expected list
		n = len(numbers(r.expected))
	}
	if strings.Contains(r.parameters, "mean buffer content") {
		n = len(numbers(r.expected)) + 1
	}
	means, stages := r.repeated("means", n), r.repeated("erlang k", n)
	if k := r.number("k"); !math.IsNaN(k) {
		stages = []float64{k}
	}
	if len(means) == 0 {
		means = []float64{1}
	}
	var cycles []string
	for i := range n {
		k := 1.0
		if len(stages) > 0 {
			k = stages[min(i, len(stages)-1)]
		}
		cycles = append(cycles, erlang(means[min(i, len(means)-1)], k))
	}
	return measured(r, cycles, r.repeated("b", n-1), nil)
}

// measured is a serial line with the figure that the row's measure names.
func measured(r row, cycles []string, buffers []float64, more func(int) string) (*plan, string) {
	p := &plan{file: serialLine(longRun(13000, 1000), cycles, buffers, more), expected: numbers(r.expected)}
	measure := r.parameters[strings.LastIndex(r.parameters, "measure=")+len("measure="):]
	n := len(cycles)
	switch {
	case strings.HasPrefix(measure, "throughput"):
		p.figures = []figure{throughput}
	case strings.HasPrefix(measure, "starved"), strings.HasPrefix(measure, "blocked"):
		state := stations.Starved
		if strings.HasPrefix(measure, "blocked") {
			state = stations.Blocked
		}
		for i := range n {
			p.figures = append(p.figures, share(i, state))
		}
	case strings.HasPrefix(measure, "mean buffer content"):
		for i := range n - 1 {
			p.figures = append(p.figures, func(f *scenarios.Forecast) float64 { return f.Buffers[i].MeanContent.Mean })
		}
	case strings.HasPrefix(measure, "asymptotic variance rate"):
		const length = 1000.0
		p.file = serialLine(fmt.Sprintf("shift: {length: %g s}\n", length), cycles, buffers, more)
		p.variance, p.runs = true, 1
		p.figures = []figure{func(f *scenarios.Forecast) float64 { return f.GoodPerShift.SD * f.GoodPerShift.SD / length }}
	default:
		return nil, "measure " + measure
	}
	return p, ""
}

// services reads "uniform0,2 x2", "det 1.2 + uniform0.5,1.5", "det1,exp1", "det 1.0,1.4,0.9".
func services(r row) (*plan, string) {
	text := r.param("services")
	var cycles []string
	switch {
	case strings.Contains(r.parameters, "departure time of part"):
		n := int(numbers(text[strings.LastIndex(text, "x")+1:])[0])
		var part int
		fmt.Sscanf(r.parameters[strings.Index(r.parameters, "part ")+5:], "%d", &part)
		for range n {
			cycles = append(cycles, fmt.Sprintf("%g s", numbers(text)[0]))
		}
		buffers := make([]float64, n)
		at := numbers(r.expected)[0]
		// The part has left by then, and not a nanosecond sooner.
		p := &plan{exact: true, runs: 1, expected: []float64{float64(part)},
			file:    serialLine(fmt.Sprintf("shift: {length: %g s}\n", at), cycles, buffers, nil),
			figures: []figure{func(f *scenarios.Forecast) float64 { return f.GoodPerShift.Mean }}}
		return p, ""
	case strings.HasPrefix(text, "det ") && !strings.Contains(text, "+"):
		for _, x := range numbers(text) {
			cycles = append(cycles, fmt.Sprintf("%g s", x))
		}
		p, why := measured(r, cycles, r.repeated("b", len(cycles)-1), nil)
		p.slack, p.runs = 1e-4, 2 // cartons in a finite time are whole
		return p, why
	case strings.HasSuffix(text, "x2"):
		cycles = []string{service(strings.TrimSuffix(text, " x2")), service(strings.TrimSuffix(text, " x2"))}
	case strings.Contains(text, "+"):
		for _, one := range strings.Split(text, "+") {
			cycles = append(cycles, service(strings.TrimSpace(one)))
		}
	default:
		for _, one := range strings.Split(text, ",") {
			cycles = append(cycles, service(one))
		}
	}
	return measured(r, cycles, r.repeated("b", len(cycles)-1), nil)
}

func service(text string) string {
	letters := strings.TrimRight(text, "0123456789., ")
	x := numbers(text[len(letters):])
	switch strings.TrimSpace(letters) {
	case "det":
		return fmt.Sprintf("%g s", x[0])
	case "exp":
		return exponential(x[0])
	case "uniform":
		return fmt.Sprintf("{uniform: {from: %g s, to: %g s}}", x[0], x[1])
	}
	panic("unknown service " + text)
}

// reversed compares a line with its mirror image: a difference of zero between runs with the same seed.
func reversed(r row) (*plan, string) {
	cut := strings.Index(r.parameters, "line B")
	rest, _, _ := strings.Cut(r.parameters[cut:], ";")
	line := func(text string) string {
		means, b, _ := strings.Cut(text[strings.Index(text, "means=")+len("means="):], " b=")
		var cycles []string
		for _, m := range numbers(means) {
			cycles = append(cycles, exponential(m))
		}
		return serialLine(longRun(13000, 1000), cycles, numbers(b), nil)
	}
	other, err := scenarios.Read("mirror", strings.NewReader(line(rest)), nil)
	if err != nil {
		panic(err)
	}
	return &plan{file: line(strings.TrimRight(r.parameters[:cut], "; ")), expected: []float64{0}, figures: []figure{
		func(f *scenarios.Forecast) float64 { return throughput(f) - throughput(mirror(other, f.Seed)) }}}, ""
}

func missRepeat(r row) (*plan, string) {
	cycle, chance := numbers(r.param("cycle")), numbers(r.param("miss p"))
	var cycles []string
	for _, c := range cycle {
		cycles = append(cycles, fmt.Sprintf("%g s", c))
	}
	return measured(r, cycles, r.repeated("b", len(cycle)-1), func(i int) string {
		return fmt.Sprintf(", miss: {chance: %g %%, tries: unlimited}", 100*chance[i])
	})
}

func transient(r row) (*plan, string) {
	means := numbers(r.param("means"))
	var cycles []string
	for _, m := range means {
		cycles = append(cycles, exponential(m))
	}
	head := fmt.Sprintf("shift: {length: %g s}\n", r.number("T"))
	return &plan{file: serialLine(head, cycles, numbers(r.param("b")), nil), expected: numbers(r.expected),
		figures: []figure{func(f *scenarios.Forecast) float64 { return f.GoodPerShift.Mean }}}, ""
}
