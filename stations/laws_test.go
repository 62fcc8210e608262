package stations_test

import (
	"reflect"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"dwellcast/stations"
)

// newSimulation builds a line that must be sound.
func newSimulation(t rapid.TB, line *stations.Line) *stations.Simulation {
	t.Helper()
	s, err := stations.New(line)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// shift runs one shift that must not fail.
func shift(t rapid.TB, s *stations.Simulation, seed uint64, replication int) *stations.Tally {
	t.Helper()
	if err := s.Shift(seed, replication); err != nil {
		t.Fatal(err)
	}
	return s.Tally
}

// forAnyLine checks a law on random lines.
func forAnyLine(t *testing.T, law func(t *rapid.T, line *stations.Line)) {
	rapid.Check(t, func(t *rapid.T) { law(t, randomLine(t, false)) })
}

func sum(values []int64) int64 {
	var sum int64
	for _, v := range values {
		sum += v
	}
	return sum
}

func TestCartonsInAreCartonsOut(t *testing.T) {
	forAnyLine(t, func(t *rapid.T, line *stations.Line) {
		f := shift(t, newSimulation(t, line), 1, 0).Flow
		if out := f[stations.Good] + f[stations.Bad] + f[stations.Scrapped] + f[stations.Left]; f[stations.Entered] != out {
			t.Fatalf("%d entered, %d good + %d bad + %d scrapped + %d left = %d", f[stations.Entered], f[stations.Good],
				f[stations.Bad], f[stations.Scrapped], f[stations.Left], out)
		}
		for c, n := range f {
			if n < 0 {
				t.Fatalf("flow count %d is %d", c, n)
			}
		}
	})
}

func TestStatesFillTheShift(t *testing.T) {
	forAnyLine(t, func(t *rapid.T, line *stations.Line) {
		tally := shift(t, newSimulation(t, line), 1, 0)
		for i, st := range line.Stations {
			units := time.Duration(st.Units)
			if st.Feed.Conveyor >= 0 {
				units = 1 // robots at one pitch share the state of the pitch
			}
			var total time.Duration
			for state := range stations.NumStates {
				d := time.Duration(*tally.State(i, state))
				if d < 0 {
					t.Errorf("%s is %v for %v", st.Name, state, d)
				}
				total += d
			}
			if want := units * line.Shift.Length; total != want {
				t.Errorf("%s: states sum to %v, not %v", st.Name, total, want)
			}
		}
	})
}

func TestIdealIsGoodAndLosses(t *testing.T) {
	forAnyLine(t, func(t *rapid.T, line *stations.Line) {
		s := newSimulation(t, line)
		tally := shift(t, s, 1, 0)
		losses := s.Losses(tally, line.Shift.Length)
		ideal, good := s.Ideal(line.Shift.Length), tally.Flow[stations.Good]
		if ideal != good+sum(losses) {
			t.Fatalf("ideal %d, good %d + losses %d", ideal, good, sum(losses))
		}
		if line.Setting == 0 {
			return
		}
		for r, n := range losses {
			switch c := s.Causes()[r]; {
			case n >= 0:
			case c.Kind != stations.LeftOnLine || good <= ideal:
				t.Errorf("%v: %d cartons lost (ideal %d, good %d, slots %d)", c, n, ideal, good, tally.Flow[stations.Slots])
			case n < -int64(line.Lanes*line.Stations[0].Units):
				t.Errorf("%d cartons more than the ideal, more than a pitch", -n)
			}
		}
	})
}

func TestRepeatsAndTraceChangeNothing(t *testing.T) {
	forAnyLine(t, func(t *rapid.T, line *stations.Line) {
		s := newSimulation(t, line)
		want := s.NewTally()
		want.Copy(shift(t, s, 7, 3))
		shift(t, s, 8, 1)
		sameTally(t, "after another shift", shift(t, s, 7, 3), want)
		s.NoRepeats = true
		sameTally(t, "without repeats", shift(t, s, 7, 3), want)
		s.NoRepeats, s.Trace = false, func(stations.Stretch) {}
		sameTally(t, "traced", shift(t, s, 7, 3), want)
		sameTally(t, "in another simulation", shift(t, newSimulation(t, line), 7, 3), want)
	})
}

// Whoever looks at a shift on its way sees what stepping through every cycle shows.
func TestRepeatsChangeNothingOnTheWay(t *testing.T) {
	forAnyLine(t, func(t *rapid.T, line *stations.Line) {
		interval := time.Duration(rapid.IntRange(40, 4000).Draw(t, "interval")) * quantum / 2
		s := newSimulation(t, line)
		seen := func() []int64 {
			var seen []int64
			err := s.Watched(7, 3, interval, func(tally *stations.Tally) bool {
				seen = append(seen, tally.Cells()...)
				return false
			})
			if err != nil {
				t.Fatal(err)
			}
			return append(seen, s.Tally.Cells()...)
		}
		got := seen()
		s.NoRepeats = true
		if !slices.Equal(got, seen()) {
			t.Fatalf("seen every %v, the account differs", interval)
		}
	})
}

func sameTally(t rapid.TB, what string, got, want *stations.Tally) {
	t.Helper()
	if !reflect.DeepEqual(got, want) {
		t.Fatalf("%s (-got +want):\n%s", what, cmp.Diff(got, want, cmpopts.IgnoreUnexported(stations.Tally{})))
	}
}

func TestWaitsAreCharged(t *testing.T) {
	forAnyLine(t, func(t *rapid.T, line *stations.Line) {
		s := newSimulation(t, line)
		tally := shift(t, s, 1, 0)
		n := len(s.Causes())
		for i, st := range line.Stations {
			if got, want := sum(tally.Starved[i*n:(i+1)*n]), *tally.State(i, stations.Starved); got != want {
				t.Errorf("%s: %v charged as starved, %v starved", st.Name, time.Duration(got), time.Duration(want))
			}
			if got, want := sum(tally.Blocked[i*n:(i+1)*n]), *tally.State(i, stations.Blocked); got != want {
				t.Errorf("%s: %v charged as blocked, %v blocked", st.Name, time.Duration(got), time.Duration(want))
			}
		}
	})
}

// A station that does nothing in parallel stands for one cause at a time, unless a stop by the clock falls into another.
func TestStopAccountsAgreeWithStates(t *testing.T) {
	forAnyLine(t, func(t *rapid.T, line *stations.Line) {
		s := newSimulation(t, line)
		tally := shift(t, s, 1, 0)
		for i, st := range line.Stations {
			var awaited, cleared, reloaded int64
			for r, c := range s.Causes() {
				switch {
				case c.Station != i:
				case c.Kind == stations.Reload:
					reloaded += tally.Awaited[r] + tally.Cleared[r]
				default:
					awaited += tally.Awaited[r]
					cleared += tally.Cleared[r]
				}
			}
			got := [3]int64{*tally.State(i, stations.Awaiting), *tally.State(i, stations.Clearing), *tally.State(i, stations.Reloading)}
			want := [3]int64{awaited, cleared, reloaded}
			if stopsByClock(&st) {
				if sum(got[:]) > sum(want[:]) {
					t.Errorf("%s stands %v in its states, only %v in its stops", st.Name, got, want)
				}
			} else if got != want {
				t.Errorf("%s: awaiting, clearing, reloading %v in its states, %v in its stops", st.Name, got, want)
			}
		}
	})
}

func stopsByClock(st *stations.Station) bool {
	for _, s := range st.Stops {
		if s.Trigger == stations.ByClock {
			return true
		}
	}
	return false
}
