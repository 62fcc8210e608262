package bottleneck_test

import (
	"cmp"
	"slices"
	"testing"
	"time"

	"dwellcast/sim/bottleneck"

	gocmp "github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// event is a station becoming active or ceasing to be.
type event struct {
	at      time.Duration
	station int
	starts  bool
}

// eventsOf is the log as calls to a tracker, each station's own calls in
// their order.
func eventsOf(log bottleneck.Log) []event {
	var events []event
	for i, periods := range log {
		for _, p := range periods {
			events = append(events, event{p.Start, i, true}, event{p.End, i, false})
		}
	}
	slices.SortStableFunc(events, func(a, b event) int { return cmp.Compare(a.at, b.at) })
	return events
}

func play(k *bottleneck.Tracker, events []event) {
	for _, e := range events {
		if e.starts {
			k.Start(e.station, e.at)
		} else {
			k.Stop(e.station, e.at)
		}
	}
}

func track(k *bottleneck.Tracker, log bottleneck.Log, to time.Duration) bottleneck.Shares {
	play(k, eventsOf(log))
	return k.Finish(to)
}

// randomLog draws a log on a coarse clock, so that ties, touching periods
// and empty ones are frequent.
func randomLog(t *rapid.T) (log bottleneck.Log, to time.Duration) {
	log = make(bottleneck.Log, rapid.IntRange(1, 6).Draw(t, "stations"))
	step := rapid.IntRange(1, 12)
	pause := rapid.IntRange(0, 5)
	for i := range log {
		now := 0
		for range rapid.IntRange(0, 12).Draw(t, "periods") {
			now += pause.Draw(t, "pause")
			length := step.Draw(t, "length")
			if rapid.IntRange(0, 7).Draw(t, "empty") == 0 {
				length = 0
			}
			log[i] = append(log[i], bottleneck.Period{Start: time.Duration(now), End: time.Duration(now + length)})
			now += length
		}
		to = max(to, time.Duration(now))
	}
	return log, to + time.Duration(pause.Draw(t, "rest"))
}

// The tracker gives what the rule gives for the whole log, again after a
// reset, and whatever the order of calls at one moment.
func TestTrackerAgreesWithLog(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		log, to := randomLog(t)
		want := bottleneck.Shifting(log, 0, to)
		k := bottleneck.NewTracker(len(log))
		if diff := gocmp.Diff(want, track(k, log, to)); diff != "" {
			t.Fatalf("tracker differs (-log +tracker):\n%s", diff)
		}
		events := shuffledWithinMoments(t, eventsOf(log))
		k.Reset()
		play(k, events)
		if diff := gocmp.Diff(want, k.Finish(to)); diff != "" {
			t.Fatalf("order of calls matters (-log +tracker):\n%s", diff)
		}
	})
}

// shuffledWithinMoments changes the order of stations, not that of one
// station's own calls, at each moment.
func shuffledWithinMoments(t *rapid.T, events []event) []event {
	rank := rapid.Permutation([]int{0, 1, 2, 3, 4, 5}).Draw(t, "rank")
	slices.SortStableFunc(events, func(a, b event) int {
		return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(rank[a.station], rank[b.station]))
	})
	return events
}

// A run cut short counts open periods up to the cut.
func TestTrackerCutsOpenPeriods(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		log, to := randomLog(t)
		cut := time.Duration(rapid.IntRange(0, int(to)).Draw(t, "cut"))
		k := bottleneck.NewTracker(len(log))
		events := eventsOf(log)
		play(k, slices.DeleteFunc(events, func(e event) bool { return e.at > cut }))
		if diff := gocmp.Diff(bottleneck.Shifting(log, 0, cut), k.Finish(cut)); diff != "" {
			t.Fatalf("(-log +tracker):\n%s", diff)
		}
	})
}

// After Restart only what follows counts, as if the log were cut there.
func TestTrackerRestart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		log, to := randomLog(t)
		warm := time.Duration(rapid.IntRange(0, int(to)).Draw(t, "warm-up"))
		k := bottleneck.NewTracker(len(log))
		events := eventsOf(log)
		later := slices.IndexFunc(events, func(e event) bool { return e.at > warm })
		if later < 0 {
			later = len(events)
		}
		play(k, events[:later])
		k.Restart(warm)
		play(k, events[later:])
		if diff := gocmp.Diff(bottleneck.Shifting(log, warm, to), k.Finish(to)); diff != "" {
			t.Fatalf("(-log +tracker):\n%s", diff)
		}
	})
}

func TestTrackerRefusesToGoBack(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("time ran backwards unnoticed")
		}
	}()
	k := bottleneck.NewTracker(1)
	k.Start(0, 5)
	k.Stop(0, 4)
}

func TestTrackerRepeatedCallsChangeNothing(t *testing.T) {
	k := bottleneck.NewTracker(2)
	k.Stop(1, 0)
	k.Start(0, 1)
	k.Start(0, 3)
	k.Stop(0, 5)
	k.Stop(0, 6)
	want := bottleneck.Shares{Sole: []time.Duration{4, 0}, Shifting: []time.Duration{0, 0}, None: 5}
	if diff := gocmp.Diff(want, k.Finish(9)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// A tracker in use, and one used again, allocates nothing, even while one
// station stays active all along and others come and go within.
func TestTrackerDoesNotAllocate(t *testing.T) {
	k := bottleneck.NewTracker(5)
	run := func() {
		k.Reset()
		for now := time.Duration(0); now < 20_000; now++ {
			i := int(now) % 5
			k.Start(i, now)
			k.Start((i+1)%5, now)
			k.Stop((i+3)%5, now)
			k.Start((i+3)%5, now)
			k.Stop((i+3)%5, now)
		}
		k.Finish(20_000)
	}
	if n := testing.AllocsPerRun(3, run); n != 0 {
		t.Errorf("%g allocations a run", n)
	}
}

// One station after another starves or is blocked for a moment, as in a line
// in full flow.
func BenchmarkTracker(b *testing.B) {
	const stations = 5
	k := bottleneck.NewTracker(stations)
	for i := range stations {
		k.Start(i, 0)
	}
	now := time.Duration(0)
	for j := 0; b.Loop(); j++ {
		i := j * 2 % stations
		now += 3
		k.Stop(i, now)
		now++
		k.Start(i, now)
	}
}
