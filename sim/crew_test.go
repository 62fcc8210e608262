package sim_test

import (
	"fmt"
	"testing"
	"time"

	"pgregory.net/rapid"

	"dwellcast/sim"
)

// caller calls the crew at the given instants, each call with its own reaction and work, and notes what happens.
func caller(d *diary, crew *sim.Crew, at, reaction, work []time.Duration) {
	d.calendar.Start("caller", func(p *sim.Process) {
		for i := range at {
			p.WaitUntil(at[i])
			crew.Call(&sim.Call{Reaction: reaction[i], Work: work[i],
				Arrived: func() { d.note("at %d", i) }, Done: func() { d.note("done %d", i) }})
		}
	})
}

func TestCrewAnswersFirstComeFirstServed(t *testing.T) {
	d := newDiary()
	crew := sim.NewCrew(d.calendar, 1)
	crew.Open()
	at := []time.Duration{1, 2, 2}
	caller(d, crew, at, []time.Duration{3, 1, 0}, []time.Duration{10, 5, 0})
	d.run(t, 15, nil, "4ns at 0", "14ns done 0", "15ns at 1")
	if busy := crew.Busy(); busy != 14 {
		t.Errorf("busy for %v", busy)
	}
	d.run(t, 100, sim.ErrStuck, "20ns done 1", "20ns at 2", "20ns done 2")
	if busy := crew.Busy(); busy != 19 {
		t.Errorf("busy for %v", busy)
	}
}

func TestCrewWithoutLimitAnswersAtOnce(t *testing.T) {
	d := newDiary()
	crew := sim.NewCrew(d.calendar, 0)
	crew.Open()
	zero := make([]time.Duration, 3)
	caller(d, crew, []time.Duration{1, 1, 2}, zero, []time.Duration{5, 5, 2})
	d.run(t, 100, sim.ErrStuck, "1ns at 0", "1ns at 1", "2ns at 2", "4ns done 2", "6ns done 0", "6ns done 1")
}

// The recursion of a queue with several servers: each call, in order, goes to the attendant who is free first.
func TestCrewFollowsTheRecursion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 20).Draw(t, "calls")
		span := func(label string, low int) time.Duration { return time.Duration(rapid.IntRange(low, 9).Draw(t, label)) }
		attendants := rapid.IntRange(0, 4).Draw(t, "attendants")
		at, reaction, work := make([]time.Duration, n), make([]time.Duration, n), make([]time.Duration, n)
		free := make([]time.Duration, max(1, attendants))
		want := map[string]bool{}
		var busy time.Duration
		for i := range n {
			if i > 0 {
				at[i] = at[i-1] + span("gap", 0)
			}
			reaction[i], work[i] = span("reaction", 0), span("work", 0)
			begin := at[i]
			if attendants > 0 {
				first := 0
				for k := range free {
					if free[k] < free[first] {
						first = k
					}
				}
				begin = max(begin, free[first])
				free[first] = begin + reaction[i] + work[i]
			}
			busy += reaction[i] + work[i]
			want[fmt.Sprintf("%v at %d", begin+reaction[i], i)] = true
			want[fmt.Sprintf("%v done %d", begin+reaction[i]+work[i], i)] = true
		}
		d := newDiary()
		crew := sim.NewCrew(d.calendar, attendants)
		crew.Open()
		caller(d, crew, at, reaction, work)
		_ = d.calendar.Run(time.Second) // it ends when all is done
		if len(d.lines) != len(want) {
			t.Fatalf("%d things happened, not %d: %v", len(d.lines), len(want), d.lines)
		}
		for _, line := range d.lines {
			if !want[line] {
				t.Errorf("%q should not happen", line)
			}
		}
		if crew.Busy() != busy {
			t.Errorf("busy for %v, not %v", crew.Busy(), busy)
		}
	})
}
