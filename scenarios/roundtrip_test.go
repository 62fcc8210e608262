package scenarios_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"dwellcast/scenarios/quantity"
	"dwellcast/sim/random"
	"dwellcast/stations"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// TestRandomLines: a line that is written as a file is read back as it was.
func TestRandomLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := &lineWriter{t: t, line: &stations.Line{Title: "random"}}
		w.write()
		f := readLine(t, w.text.String())
		if diff := cmp.Diff(w.line, f.Line, wholly); diff != "" {
			t.Fatalf("%s\n%s", w.text.String(), diff)
		}
	})
}

// lineWriter makes up a line and its file side by side.
type lineWriter struct {
	t    *rapid.T
	text strings.Builder
	line *stations.Line
}

func (w *lineWriter) put(format string, values ...any) { fmt.Fprintf(&w.text, format, values...) }

func (w *lineWriter) n(low, high int) int { return rapid.IntRange(low, high).Draw(w.t, "n") }
func (w *lineWriter) yes() bool           { return rapid.Bool().Draw(w.t, "yes") }

// ms is a time of whole milliseconds, and how it is written.
func (w *lineWriter) ms(low, high int) (time.Duration, string) {
	d := time.Duration(w.n(low, high)) * time.Millisecond
	return d, quantity.FormatDuration(d)
}

// write makes up sections of stations, each on a conveyor or alone.
func (w *lineWriter) write() {
	w.put("title: random\n")
	w.line.Lanes = w.n(1, 3)
	w.put("lanes: %d\n", w.line.Lanes)
	if w.yes() {
		setting := w.n(100, 5000)
		w.line.Setting = float64(setting)
		w.put("setting: %d cartons/h\n", setting)
	}
	length, text := w.ms(3_600_000, 40_000_000)
	startUp, startText := w.ms(1, 600_000)
	w.line.Shift = stations.Shift{Length: length, Planned: []stations.Window{{Name: "start-up", To: startUp}}}
	w.put("shift: {length: %s, start_up: %s}\n", text, startText)
	if w.yes() {
		w.line.Crew.Attendants = w.n(1, 9)
		w.put("crew: {attendants: %d, reaction: ", w.line.Crew.Attendants)
		w.line.Crew.Reaction = w.time(1, 30_000)
		w.put("}\n")
	}
	w.put("stations:\n")
	sections := w.n(1, 4)
	for k := range sections {
		w.section(k, k == sections-1)
	}
}

func (w *lineWriter) section(k int, last bool) {
	feed := stations.Feed{Conveyor: -1}
	if k > 0 {
		transit, text := w.ms(0, 9000)
		feed.Buffer = &stations.Buffer{Capacity: w.n(5, 99), Transit: transit}
		text = fmt.Sprintf("{buffer: %d cartons, transit: %s}", feed.Buffer.Capacity, text)
		w.station(feed, text, !w.yes(), last)
		return
	}
	if w.yes() {
		w.station(feed, "", false, last)
		return
	}
	w.station(feed, "", true, last)
}

// station makes up a station, and more on its conveyor if it has one.
func (w *lineWriter) station(feed stations.Feed, after string, onConveyor, last bool) {
	if !onConveyor {
		w.one(feed, after, "", w.n(1, 3), last)
		return
	}
	index, indexText := w.ms(1, 900)
	turn, turnText := w.ms(1000, 3000)
	c := stations.Conveyor{Index: index, Revolution: turn, RunOut: w.n(0, 4)}
	own := fmt.Sprintf("{index: %s, revolution: %s, run_out: %d", indexText, turnText, c.RunOut)
	if w.yes() {
		c.Release = stations.AtCamZero
		own += ", release: at cam zero"
	}
	if last {
		c.RunOut = 0
	}
	feed.Conveyor = len(w.line.Conveyors)
	w.line.Conveyors = append(w.line.Conveyors, c)
	w.one(feed, after, own+"}", 1, false)
	for range w.n(0, 2) {
		pitches := w.n(1, 5)
		w.one(stations.Feed{Conveyor: feed.Conveyor, Pitches: pitches}, fmt.Sprintf("{pitches: %d}", pitches), "", 1, false)
	}
}

// one makes up one station; offload may end the line only.
func (w *lineWriter) one(feed stations.Feed, after, own string, units int, last bool) {
	kind := stations.Kind(w.n(0, int(stations.Machine)))
	if kind == stations.Offload && !last {
		kind = stations.Machine
	}
	s := stations.Station{Name: fmt.Sprintf("station-%c", 'a'+len(w.line.Stations)), Kind: kind, Feed: feed, Units: units}
	w.put("  - name: %s\n    kind: %s\n    units: %d\n", s.Name, kind, units)
	if after != "" {
		w.put("    after: %s\n", after)
	}
	if own != "" {
		w.put("    conveyor: %s\n", own)
	}
	w.act(&s)
	s.Miss.Chance = w.share("miss")
	s.Reject = w.share("reject")
	if w.yes() {
		s.ActsEmpty = feed.Conveyor >= 0
		s.Ejects = true
		w.put("    acts_empty: %t\n    ejects: yes\n", s.ActsEmpty)
	}
	w.stops(&s)
	w.material(&s)
	w.line.Stations = append(w.line.Stations, s)
}

func (w *lineWriter) act(s *stations.Station) {
	add := func(key, name string) {
		w.put("    %s: ", key)
		s.Parts = append(s.Parts, stations.Part{Name: name, Does: sealParts[key], Time: w.time(1, 5000)})
		w.put("\n")
	}
	switch s.Kind {
	case stations.Seal:
		for _, key := range []string{"lag", "close", "dwell", "open"} {
			add(key, key)
		}
		return
	case stations.Erect:
		if s.Feed.Conveyor >= 0 {
			s.Turns = w.n(0, 5)
			w.put("    turns: %d\n", s.Turns)
		}
		add("bottom_seal", "bottom seal")
		return
	case stations.Fill:
		add("fill", "fill")
		return
	}
	add("cycle", "cycle")
}

// share is a probability of so many tenths of a percent.
func (w *lineWriter) share(key string) float64 {
	tenths := w.n(0, 900)
	w.put("    %s: %d.%d %%\n", key, tenths/10, tenths%10)
	return float64(tenths) / 1000
}

func (w *lineWriter) stops(s *stations.Station) {
	w.put("    stops: [")
	for i := range w.n(0, 3) {
		stop := stations.Stop{Cause: fmt.Sprint("cause-", i), Scrap: w.n(0, 3), Unattended: w.yes()}
		w.put("{cause: %s, scrap: %d, attendant: %t, clear: ", stop.Cause, stop.Scrap, !stop.Unattended)
		stop.Clear = w.time(0, 90_000)
		switch w.n(0, 2) {
		case 0:
			acts := w.n(1, 5000)
			stop.Chance = 1 / float64(acts)
			w.put(", every: %d cartons}, ", acts)
		case 1:
			stop.Trigger, stop.Repeat = stations.ByRunning, true
			stop.Afresh = w.n(0, 1) == 1
			w.put(", after: %s, every: ", map[bool]string{false: "repeat", true: "again"}[stop.Afresh])
			stop.Every = w.law(1000, 9_000_000)
			w.put("}, ")
		case 2:
			stop.Trigger = stations.ByClock
			w.put(", clock: calendar, every: ")
			stop.Every = w.law(1000, 9_000_000)
			w.put("}, ")
		}
		s.Stops = append(s.Stops, stop)
	}
	w.put("]\n")
}

func (w *lineWriter) material(s *stations.Station) {
	if !w.yes() {
		return
	}
	m := stations.Material{Name: "glue", Holds: w.n(2, 900), Reload: w.n(1, 900), Unattended: w.yes()}
	m.Low = w.n(0, m.Holds-1)
	w.put("    materials: [{name: glue, holds: %d, low: %d, reload: %d, attendant: %t, takes: ", m.Holds, m.Low, m.Reload, !m.Unattended)
	m.Takes = w.time(0, 90_000)
	w.put("}]\n")
	s.Materials = append(s.Materials, m)
}

// time writes a time that is fixed or drawn.
func (w *lineWriter) time(low, high int) random.Sampler {
	if w.yes() {
		return w.law(max(low, 1), high)
	}
	d, text := w.ms(low, high)
	w.put("%s", text)
	return random.Fixed(d)
}

// law writes a law whose mean is in a range of milliseconds.
func (w *lineWriter) law(low, high int) random.Sampler {
	d, mean := w.ms(low, high)
	cv := w.n(1, 9)
	must := sure[random.Distribution](w.t)
	s, spread := float64(d.Milliseconds())/1000, float64(cv)/10
	switch w.n(0, 4) {
	case 0:
		w.put("{exponential: %s}", mean)
		return random.Drawn(must(random.Exponential(s)))
	case 1:
		w.put("{lognormal: {mean: %s, cv: 0.%d}}", mean, cv)
		return random.Drawn(must(random.Lognormal(s, spread)))
	case 2:
		w.put("{weibull: {mean: %s, cv: 0.%d}}", mean, cv)
		return random.Drawn(must(random.Weibull(s, spread)))
	case 3:
		w.put("{erlang: {mean: %s, stages: %d}}", mean, cv)
		return random.Drawn(must(random.Erlang(cv, s)))
	}
	other, text := w.ms(low, high)
	w.put("{recorded: [%s, %s]}", mean, text)
	return sure[random.Sampler](w.t)(random.Recorded([]time.Duration{d, other}))
}
