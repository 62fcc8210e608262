package sim_test

import (
	"errors"
	"fmt"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"dwellcast/sim"
)

// diary notes what happens and when.
type diary struct {
	calendar *sim.Calendar
	lines    []string
}

func newDiary() *diary { return &diary{calendar: sim.NewCalendar()} }

func (d *diary) note(format string, values ...any) {
	d.lines = append(d.lines, fmt.Sprintf("%v ", d.calendar.Now())+fmt.Sprintf(format, values...))
}

// run runs to the horizon and compares the diary.
func (d *diary) run(t *testing.T, horizon time.Duration, wantErr error, want ...string) {
	t.Helper()
	if err := d.calendar.Run(horizon); !errors.Is(err, wantErr) {
		t.Errorf("got error %v, want %v", err, wantErr)
	}
	if diff := cmp.Diff(d.lines, want); diff != "" {
		t.Errorf("diary (-got +want):\n%s", diff)
	}
	d.lines = nil
}

func TestEventsComeInOrderOfTimeThenOfScheduling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		waits := rapid.SliceOfN(rapid.SliceOfN(rapid.IntRange(0, 4), 1, 6), 1, 8).Draw(t, "waits")
		c := sim.NewCalendar()
		type event struct {
			at       time.Duration
			process  int
			schedule int
		}
		var got []event
		scheduled := 0
		for i, list := range waits {
			c.Start(fmt.Sprint(i), func(p *sim.Process) {
				for _, w := range list {
					scheduled++
					mine := scheduled
					p.Wait(time.Duration(w) * time.Second)
					if w > 0 { // no wait is no event
						got = append(got, event{c.Now(), i, mine})
					}
				}
			})
		}
		if err := c.Run(time.Hour); !errors.Is(err, sim.ErrStuck) {
			t.Fatal(err)
		}
		for k := 1; k < len(got); k++ {
			a, b := got[k-1], got[k]
			if a.at > b.at || a.at == b.at && a.schedule > b.schedule {
				t.Fatalf("%+v before %+v", a, b)
			}
		}
		for i, list := range waits {
			var at time.Duration
			var want, have []time.Duration
			for _, w := range list {
				if at += time.Duration(w) * time.Second; w > 0 {
					want = append(want, at)
				}
			}
			for _, e := range got {
				if e.process == i {
					have = append(have, e.at)
				}
			}
			if !cmp.Equal(have, want) {
				t.Fatalf("process %d waited until %v, want %v", i, have, want)
			}
		}
	})
}

func TestTiesGoByOrderOfScheduling(t *testing.T) {
	d := newDiary()
	d.calendar.Start("a", func(p *sim.Process) { p.Wait(2); d.note("a"); p.Wait(1); d.note("a again") })
	d.calendar.Start("b", func(p *sim.Process) { p.Wait(1); p.Wait(1); d.note("b"); p.Wait(1); d.note("b again") })
	d.calendar.Start("c", func(p *sim.Process) { p.WaitUntil(2); d.note("c") })
	d.run(t, 10, sim.ErrStuck, "2ns a", "2ns c", "2ns b", "3ns a again", "3ns b again")
}

func TestWaitAloneMovesTheClockInPlace(t *testing.T) {
	d := newDiary()
	other := d.calendar.Start("other", func(p *sim.Process) { p.Park(); d.note("other") })
	d.calendar.Start("a", func(p *sim.Process) {
		p.Wait(5)
		d.note("quiet until %v", d.calendar.Quiet())
		other.Wake()
		d.note("quiet until %v", d.calendar.Quiet())
		p.Wait(5)
		d.note("a")
		p.WaitUntil(3)
		d.note("the past is now")
		p.Wait(100)
		d.note("never")
	})
	d.run(t, 20, nil, "5ns quiet until 21ns", "5ns quiet until 5ns", "5ns other", "10ns a", "10ns the past is now")
	if now := d.calendar.Now(); now != 20 {
		t.Errorf("the run ends at %v", now)
	}
}

func TestRunGoesOnWhereItEnded(t *testing.T) {
	d := newDiary()
	d.calendar.Start("a", func(p *sim.Process) {
		for {
			p.Wait(4)
			d.note("a")
		}
	})
	d.run(t, 8, nil, "4ns a", "8ns a") // what falls due at the horizon still happens
	d.run(t, 11, nil)
	d.run(t, 12, nil, "12ns a")
}

func TestEndMakesNowTheHorizon(t *testing.T) {
	d := newDiary()
	d.calendar.Start("a", func(p *sim.Process) { p.Wait(5); d.calendar.End(); p.Wait(1); d.note("too late") })
	d.calendar.Start("b", func(p *sim.Process) { p.Wait(5); d.note("still at this instant") })
	d.run(t, 20, nil, "5ns still at this instant")
	if now := d.calendar.Now(); now != 5 {
		t.Errorf("the run ends at %v", now)
	}
}

func TestStuckOnlyBeforeTheHorizon(t *testing.T) {
	d := newDiary()
	d.calendar.Start("a", func(p *sim.Process) { p.Wait(5); p.Park() })
	d.run(t, 5, nil)
	d.run(t, 6, sim.ErrStuck)
}

func TestStaleWakeUpDoesNotHideAStandstill(t *testing.T) {
	d := newDiary()
	sleeper := d.calendar.Start("sleeper", func(p *sim.Process) { p.WaitOrWake(1000); p.Park() })
	d.calendar.Start("waker", func(p *sim.Process) { p.Wait(1); sleeper.Wake() })
	d.run(t, 100, sim.ErrStuck)
}

func TestEndlessInstantIsFoundOut(t *testing.T) {
	bodies := map[string]func(p *sim.Process){
		"waits for nothing": func(p *sim.Process) {
			for {
				p.Wait(0)
			}
		},
		"wakes up at once": func(p *sim.Process) {
			for {
				p.WaitOrWake(0)
			}
		},
	}
	for name, body := range bodies {
		d := newDiary()
		d.calendar.Start(name, func(p *sim.Process) { p.Wait(3); body(p) })
		fault := faultOf(t, d.calendar.Run(10))
		if !errors.Is(fault, sim.ErrEndless) || fault.Process != name || fault.At != 3 {
			t.Errorf("%s: got %q at %v: %v", name, fault.Process, fault.At, fault.Value)
		}
	}
	d := newDiary()
	var one, two *sim.Process
	one = d.calendar.Start("one", func(p *sim.Process) {
		for {
			two.Wake()
			p.Park()
		}
	})
	two = d.calendar.Start("two", func(p *sim.Process) {
		for {
			one.Wake()
			p.Park()
		}
	})
	if fault := faultOf(t, d.calendar.Run(10)); !errors.Is(fault, sim.ErrEndless) {
		t.Errorf("two that wake each other: got %v", fault)
	}
}

func faultOf(t *testing.T, err error) *sim.Fault {
	t.Helper()
	var fault *sim.Fault
	if !errors.As(err, &fault) {
		t.Fatalf("got %v, want a fault", err)
	}
	return fault
}

func TestManyEventsAtOneInstantAreNotEndless(t *testing.T) {
	d := newDiary()
	d.calendar.Start("a", func(p *sim.Process) {
		for range 3 {
			for range 900_000 {
				p.Wait(0)
			}
			p.Wait(1)
		}
	})
	d.run(t, 10, sim.ErrStuck)
}

//go:noinline
func breakDown() { panic("bearing broke") }

func TestPanicCarriesProcessTimeAndStack(t *testing.T) {
	d := newDiary()
	d.calendar.Start("sealer", func(p *sim.Process) { p.Wait(7 * time.Second); breakDown() })
	d.calendar.Start("other", func(p *sim.Process) { p.Wait(time.Hour) })
	fault := faultOf(t, d.calendar.Run(2*time.Hour))
	if fault.Process != "sealer" || fault.At != 7*time.Second || fault.Value != "bearing broke" {
		t.Errorf("got %q at %v: %v", fault.Process, fault.At, fault.Value)
	}
	for _, part := range []string{"sealer", "7s", "bearing broke", "breakDown"} {
		if !strings.Contains(fault.Error(), part) {
			t.Errorf("the message lacks %q", part)
		}
	}
	d.calendar.Reset()
	d.calendar.Start("again", func(p *sim.Process) { d.note("runs") })
	d.run(t, 1, sim.ErrStuck, "0s runs")
}

func TestResetEndsProcessesInEveryState(t *testing.T) {
	before := runtime.NumGoroutine()
	d := newDiary()
	buffer := sim.NewBuffer[int](d.calendar, 0, 0)
	for round := range 20 {
		undone := 0
		begin := func(name string, body func(p *sim.Process)) *sim.Process {
			return d.calendar.Start(name, func(p *sim.Process) {
				undone++
				defer func() { undone-- }()
				body(p)
			})
		}
		begin("waits", func(p *sim.Process) { p.Wait(time.Hour) })
		begin("parked", func(p *sim.Process) { p.Park() })
		begin("puts", func(p *sim.Process) { buffer.Put(p, 1); buffer.Put(p, 2) })
		begin("sleeps", func(p *sim.Process) { p.WaitOrWake(time.Hour) })
		begin("ends", func(p *sim.Process) {})
		sleeper := begin("woken", func(p *sim.Process) { p.WaitOrWake(time.Hour) })
		begin("wakes", func(p *sim.Process) { p.Wait(time.Minute); sleeper.Wake(); d.calendar.End() })
		if round%2 == 0 { // else no process has begun yet
			if err := d.calendar.Run(2 * time.Minute); err != nil {
				t.Fatal(err)
			}
		}
		d.calendar.Reset()
		buffer.Reset()
		if undone != 0 {
			t.Fatalf("%d processes did not unwind", undone)
		}
		if d.calendar.Now() != 0 {
			t.Fatalf("the clock is at %v after a reset", d.calendar.Now())
		}
	}
	if after := runtime.NumGoroutine(); after > before {
		t.Errorf("%d goroutines before, %d after", before, after)
	}
}
