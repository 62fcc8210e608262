package stations_test

import (
	"fmt"
	"strings"
	"time"

	"pgregory.net/rapid"

	"dwellcast/sim/random"
	"dwellcast/stations"
)

// quantum divides every length of time of a random line, so that simultaneous events are common, and so that half of it,
// a third and a quarter are whole nanoseconds.
const quantum = 72 * time.Millisecond

// lines makes random lines that a line file could describe.
type lines struct {
	t *rapid.T
	// exact leaves out laws whose values are rounded to the nanosecond.
	exact bool
	lanes int
	n     int // stations so far
}

// randomLine draws a line of one to three sections.
func randomLine(t *rapid.T, exact bool) *stations.Line {
	line := rapid.Custom(func(t *rapid.T) *stations.Line { return drawLine(t, exact) }).Draw(t, "line")
	t.Log(describe(line))
	return line
}

// describe shows a line in a failed test.
func describe(line *stations.Line) string {
	var text strings.Builder
	fmt.Fprintf(&text, "setting %g, %d lanes, %v, crew %+v", line.Setting, line.Lanes, line.Shift, line.Crew)
	for _, c := range line.Conveyors {
		fmt.Fprintf(&text, "\nconveyor %+v", c)
	}
	for _, st := range line.Stations {
		fmt.Fprintf(&text, "\n%+v", st)
		if st.Feed.Buffer != nil {
			fmt.Fprintf(&text, "\n  buffer %+v", *st.Feed.Buffer)
		}
		if st.Glue != nil {
			fmt.Fprintf(&text, "\n  glue %+v", *st.Glue)
		}
		if st.Miss.Stop != nil {
			fmt.Fprintf(&text, "\n  stop %+v", *st.Miss.Stop)
		}
	}
	return text.String()
}

func drawLine(t *rapid.T, exact bool) *stations.Line {
	g := &lines{t: t, exact: exact, lanes: 1}
	sections := g.count("sections", 1, 3)
	belts := make([]bool, sections)
	for k := range belts {
		belts[k] = g.chance("belt", 2)
		if belts[k] {
			g.lanes = 0
		}
	}
	if g.lanes == 0 {
		g.lanes = g.count("lanes", 1, 3)
	}
	line := &stations.Line{Title: "random", Lanes: g.lanes, Shift: g.shift()}
	line.Crew = stations.Crew{Attendants: g.count("attendants", 0, 2), Reaction: g.time("reaction", 0, 200)}
	for k, belt := range belts {
		if belt {
			g.belt(line, k, k > 0 && belts[k-1])
		} else {
			line.Stations = append(line.Stations, g.machine(k))
		}
	}
	if g.chance("set", 2) {
		pace := time.Duration(g.count("pace", 2, 40)) * quantum
		line.Setting = float64(g.lanes) * 3600e9 / float64(pace)
	}
	return line
}

func (g *lines) count(label string, low, high int) int {
	return rapid.IntRange(low, high).Draw(g.t, label)
}

// chance is true once in n draws.
func (g *lines) chance(label string, n int) bool { return g.count(label, 1, n) == n }

func (g *lines) probability(label string) float64 {
	return rapid.SampledFrom([]float64{0, 0, 0, 0.004, 0.05, 0.3}).Draw(g.t, label)
}

// span is a fixed length of time in quanta.
func (g *lines) span(label string, low, high int) time.Duration {
	return time.Duration(g.count(label, low, high)) * quantum
}

// time is a fixed or random time of low to about high quanta.
func (g *lines) time(label string, low, high int) random.Sampler {
	q := g.span(label, low, high)
	families := 13
	if g.exact {
		families = 4
	}
	kind := g.count("family", 0, families-1)
	if q == 0 || kind < 2 {
		return random.Fixed(q)
	}
	if kind == 2 {
		values := make([]time.Duration, rapid.SampledFrom([]int{1, 2, 4}).Draw(g.t, "values"))
		for i := range values {
			values[i] = g.span("value", max(low, 1), high)
		}
		return must(random.Recorded(values))
	}
	return random.Drawn(law(kind, q.Seconds()))
}

// law is a law of about the given mean, one of each family.
func law(family int, mean float64) random.Distribution {
	q := quantum.Seconds()
	switch family {
	case 3:
		return must(random.Empirical([]float64{mean, mean + q, mean + 2*q, mean + 5*q}, []float64{2, 1, 1, 1}))
	case 4:
		return must(random.Uniform(mean/2, 1.5*mean))
	case 5:
		return must(random.Triangular(mean/2, mean, 2*mean))
	case 6:
		return must(random.Exponential(mean))
	case 7:
		return must(random.Erlang(3, mean))
	case 8:
		return must(random.Gamma(mean, 0.7))
	case 9:
		return must(random.Weibull(mean, 1.4))
	case 10:
		return must(random.Lognormal(mean, 0.9))
	case 11:
		return must(random.Normal(mean, mean/3))
	}
	return must(random.Geometric(mean, min(q, mean)))
}

func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}

func (g *lines) shift() stations.Shift {
	s := stations.Shift{Length: time.Duration(g.count("minutes", 2, 15)) * time.Minute}
	at := time.Duration(0)
	for i := range g.count("windows", 0, 3) {
		from := at + g.span("gap", 0, 1500)
		to := from + g.span("stand", 1, 1200)
		if to > s.Length {
			break
		}
		s.Planned = append(s.Planned, stations.Window{Name: fmt.Sprintf("plan %d", i%2), From: from, To: to})
		at = to
	}
	return s
}

func (g *lines) name() string {
	g.n++
	return string(rune('A' + g.n - 1))
}

// belt adds an indexing conveyor with its stations.
func (g *lines) belt(line *stations.Line, section int, afterBelt bool) {
	c := stations.Conveyor{Index: g.span("index", 1, 12), RunOut: g.count("run-out", 0, 2)}
	if g.chance("master", 2) {
		c.Revolution = g.span("revolution", 1, 30)
		c.Release = stations.Release(g.count("release", 0, 1))
	}
	c.RunsEmpty = section > 0 && g.chance("runs empty", 2)
	number, first := len(line.Conveyors), len(line.Stations)
	line.Conveyors = append(line.Conveyors, c)
	for i := range g.count("stations", 1, 3) {
		st := g.station()
		st.Feed = stations.Feed{Conveyor: number}
		switch {
		case i > 0:
			st.Feed.Pitches = g.count("pitches", 1, 3)
		case section > 0:
			st.Feed.Buffer = g.buffer(c.RunsEmpty)
		case g.chance("erects", 2):
			st.Kind, st.Turns = stations.Erect, g.count("turns", 0, 3)
		}
		if st.Kind == stations.Offload {
			st.Units = g.count("robots", 1, 3)
			st.Away = g.span("away", 0, 10)
		}
		st.ActsEmpty = st.Kind == stations.Fill && g.chance("acts empty", 2)
		if g.chance("glue", 3) {
			st.Glue = g.glue(first, len(line.Stations), len(st.Parts))
		}
		line.Stations = append(line.Stations, st)
	}
}

// glue is closed after some of the parts of an act, and was laid by a station from the first of the conveyor to the one that closes it.
func (g *lines) glue(first, last, parts int) *stations.Glue {
	return &stations.Glue{From: g.count("laid at", first, last), Open: g.span("open", 1, 200), Closes: g.count("closes", 0, parts), Scraps: g.chance("scraps", 2)}
}

func (g *lines) machine(section int) stations.Station {
	st := g.station()
	st.Feed = stations.Feed{Conveyor: -1}
	st.Units = g.count("units", 1, 3)
	if section > 0 {
		st.Feed.Buffer = g.buffer(false)
	} else if g.chance("erects", 2) {
		st.Kind = stations.Erect
	}
	return st
}

// buffer has room enough for the lanes: smaller ones can bring a line to a standstill.
func (g *lines) buffer(waitsForNothing bool) *stations.Buffer {
	b := &stations.Buffer{Transit: g.span("transit", 0, 30)}
	switch least := 2*g.lanes - 1; g.count("room", 0, 3) {
	case 0:
		b.Capacity = stations.Unlimited
	case 1:
		if b.Capacity = least; g.lanes == 1 && !waitsForNothing {
			b.Capacity = 0
		}
	default:
		b.Capacity = g.count("capacity", least, least+6)
	}
	return b
}

// station draws what a station does, wherever it stands.
func (g *lines) station() stations.Station {
	kinds := []stations.Kind{stations.Fill, stations.Seal, stations.Offload, stations.Machine}
	st := stations.Station{Name: g.name(), Kind: rapid.SampledFrom(kinds).Draw(g.t, "kind"), Units: 1}
	for i := range g.count("parts", 1, 2) {
		st.Parts = append(st.Parts, stations.Part{Name: fmt.Sprint("part ", i), Time: g.time("part", 1, 15)})
	}
	st.Miss = stations.Miss{Chance: g.probability("miss"), Tries: rapid.SampledFrom([]int{1, 2, 3, stations.Endless}).Draw(g.t, "tries")}
	if st.Miss.Chance > 0 && g.chance("stop after misses", 2) {
		stop := g.stop("after misses")
		st.Miss.Stop = &stop
	}
	st.Reject, st.Ejects = g.probability("reject"), g.chance("ejects", 2)
	for i := range g.count("stops", 0, 2) {
		st.Stops = append(st.Stops, g.stop(fmt.Sprint("cause ", i)))
	}
	for i := range max(0, g.count("materials", -1, 2)) {
		st.Materials = append(st.Materials, g.material(i))
	}
	if g.chance("stand limit", 4) {
		st.StandLimit = g.span("limit", 5, 300)
	}
	return st
}

func (g *lines) stop(cause string) stations.Stop {
	s := stations.Stop{Cause: cause, Trigger: stations.Trigger(g.count("trigger", 0, 2)), Clear: g.time("clear", 0, 600),
		Unattended: g.chance("unattended", 3), Scrap: max(0, g.count("scrap", -2, 3)), Repeat: g.chance("repeat", 2), Afresh: g.chance("afresh", 2)}
	switch {
	case s.Trigger != stations.ByCartons:
		s.Every = g.time("every", 20, 3000)
	case g.chance("counted", 2):
		s.Acts = must(random.Uniform(1, float64(g.count("acts", 2, 200))))
	default:
		s.Chance = rapid.SampledFrom([]float64{0.002, 0.02, 0.2}).Draw(g.t, "jam")
	}
	return s
}

func (g *lines) material(i int) stations.Material {
	m := stations.Material{Name: fmt.Sprint("material ", i), Holds: g.count("holds", 1, 150), Takes: g.time("takes", 0, 300),
		Unattended: g.chance("unattended", 3)}
	m.Low = g.count("low", 0, m.Holds-1)
	m.Reload = g.count("reload", 1, m.Holds)
	return m
}
