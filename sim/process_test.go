package sim_test

import (
	"testing"

	"dwellcast/sim"
)

func TestWaitOrWake(t *testing.T) {
	d := newDiary()
	sleeper := d.calendar.Start("sleeper", func(p *sim.Process) {
		d.note("woken %v", p.WaitOrWake(10))
		d.note("woken %v", p.WaitOrWake(20))
		d.note("woken %v", p.WaitOrWake(5)) // already past
		p.Wait(30)
		d.note("waited")
	})
	d.calendar.Start("waker", func(p *sim.Process) {
		p.Wait(4)
		sleeper.Wake()
		sleeper.Wake() // once is enough
		p.Wait(46)
	})
	d.run(t, 100, sim.ErrStuck, "4ns woken true", "20ns woken false", "20ns woken false", "50ns waited")
}

// The wake-up of a wait that was cut short is stale: it must not end a later wait.
func TestStaleWakeUpIsSkipped(t *testing.T) {
	d := newDiary()
	sleeper := d.calendar.Start("sleeper", func(p *sim.Process) {
		p.WaitOrWake(10)
		d.note("first")
		p.Wait(20)
		d.note("second")
		p.Park()
		d.note("third")
	})
	d.calendar.Start("waker", func(p *sim.Process) {
		p.Wait(3)
		sleeper.Wake()
		p.Wait(1)
		sleeper.Wake() // it waits for a time of its own: not heard
		p.Wait(40)
		sleeper.Wake()
	})
	d.run(t, 100, sim.ErrStuck, "3ns first", "23ns second", "44ns third")
}

func TestWakeBeforeParkIsLost(t *testing.T) {
	d := newDiary()
	late := d.calendar.Start("late", func(p *sim.Process) { p.Wait(2); p.Park(); d.note("never") })
	d.calendar.Start("waker", func(p *sim.Process) { p.Wait(1); late.Wake() })
	d.run(t, 100, sim.ErrStuck)
}

// A process that is woken at the very instant at which its time is up resumes once.
func TestWokenAtItsOwnTime(t *testing.T) {
	d := newDiary()
	var sleeper *sim.Process
	d.calendar.Start("waker", func(p *sim.Process) { p.Wait(5); sleeper.Wake() })
	sleeper = d.calendar.Start("sleeper", func(p *sim.Process) {
		d.note("woken %v", p.WaitOrWake(5))
		p.Park()
		d.note("never")
	})
	d.run(t, 100, sim.ErrStuck, "5ns woken false")
}

func TestWakeComesAfterWhatIsDueNow(t *testing.T) {
	d := newDiary()
	parked := d.calendar.Start("parked", func(p *sim.Process) { p.Park(); d.note("parked") })
	d.calendar.Start("waker", func(p *sim.Process) { p.Wait(5); parked.Wake(); d.note("waker") })
	d.calendar.Start("due", func(p *sim.Process) { p.Wait(5); d.note("due") })
	d.run(t, 100, sim.ErrStuck, "5ns waker", "5ns due", "5ns parked")
}
