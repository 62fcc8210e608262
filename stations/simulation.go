package stations

import (
	"fmt"
	"sync/atomic"
	"time"

	"dwellcast/sim"
	"dwellcast/sim/bottleneck"
)

const never = time.Duration(1<<63 - 1)

// Simulation runs shifts of one line, one after another, reusing its memory. It is for one goroutine.
type Simulation struct {
	Line *Line
	// Tally is the account of the shift run last.
	Tally *Tally
	// Trace, if set, is told every stretch of time that a station spends in one state.
	Trace func(Stretch)
	// NoRepeats makes every cycle be stepped through, even those that only repeat the one before.
	NoRepeats bool

	reasons             reasons
	calendar            *sim.Calendar
	crew                *sim.Crew // answers stops and reloads
	machines            *sim.Crew // stops that clear by themselves
	sections            []section
	units               []*unit
	buffers             []*sim.Buffer[carton] // before each section; nil for the first
	first               []int                 // station of each section
	pacedAt             int                   // the section that the setting paces
	pace                time.Duration         // period between its cycles, from the setting or its own mean cycle
	perCycle            int                   // places for a carton that it offers per cycle
	blame               blame
	setting, slowMaster Reason
	tracker             *bottleneck.Tracker

	seed        uint64
	replication int
	ids         int32
	clearedAt   time.Duration // when a stop was cleared last
}

// Stretch is a time that a unit of a station spent in one state.
type Stretch struct {
	Station  string
	Unit     int
	Carton   int // 0 for none
	State    State
	From, To time.Duration
}

// section is what moves on its own between two buffers: an indexing conveyor with its stations, or a free-running station.
type section interface {
	start()
	// reason says what the section does now, as seen by a neighbour that waits for it.
	reason(direction int) (State, Reason)
	// slowed is by how much longer a carton takes than when nothing of the section stands.
	slowed() float64
	// settle brings its account up to the present, as far as it is known; close up to the end of the shift.
	settle(now time.Duration)
	close(end time.Duration)
	// cartons calls visit for each carton on it.
	cartons(visit func(carton))
	reset()
	nominal() time.Duration
}

// New builds the simulation of a line that the caller has checked.
func New(line *Line) (*Simulation, error) {
	s := &Simulation{Line: line, reasons: reasonsOf(line), calendar: sim.NewCalendar()}
	groups := line.Sections()
	if err := line.movable(groups); err != nil {
		return nil, err
	}
	s.Tally = newAccount[int64](len(line.Stations), len(groups), len(s.reasons.list))
	s.crew = sim.NewCrew(s.calendar, line.Crew.Attendants)
	s.machines = sim.NewCrew(s.calendar, 0)
	s.buffers = make([]*sim.Buffer[carton], len(groups))
	s.pacedAt = line.pacedSection(groups)
	for k, g := range groups {
		s.first = append(s.first, g.First)
		if b := line.Stations[g.First].Feed.Buffer; b != nil && k > 0 {
			s.buffers[k] = sim.NewBuffer[carton](s.calendar, b.Capacity, b.Transit)
		}
	}
	for k, g := range groups {
		if g.Conveyor < 0 {
			s.sections = append(s.sections, newMachine(s, k, g.First))
		} else {
			s.sections = append(s.sections, newConveyor(s, k, g))
		}
	}
	s.setting = s.reasons.of(SettingPace, -1, 0)
	s.slowMaster = s.reasons.of(SlowMaster, -1, 0)
	s.pace, s.perCycle = line.Pace(), line.Lanes
	if groups[s.pacedAt].Conveyor < 0 {
		s.pace, s.perCycle = s.pace/time.Duration(line.Lanes), 1
	}
	if s.pace == 0 {
		s.pace = s.sections[s.pacedAt].nominal()
	}
	if s.pace <= 0 {
		return nil, fmt.Errorf("the line has neither a setting nor a station that takes time")
	}
	if len(groups) > 1 {
		s.tracker = bottleneck.NewTracker(len(groups))
	}
	s.blame.init(s)
	return s, nil
}

// StopWhen lets another goroutine end a shift: soon after flag is true, it returns sim.ErrStopped.
func (s *Simulation) StopWhen(flag *atomic.Bool) { s.calendar.StopWhen(flag) }

// NewTally returns an empty account for this line.
func (s *Simulation) NewTally() *Tally {
	return newAccount[int64](len(s.Line.Stations), len(s.sections), len(s.reasons.list))
}

// NewTotals returns an empty sum of accounts for this line.
func (s *Simulation) NewTotals() *Totals {
	return newAccount[float64](len(s.Line.Stations), len(s.sections), len(s.reasons.list))
}

// Causes is the table that a Reason is an index into.
func (s *Simulation) Causes() []Cause { return s.reasons.list }

// Reason finds the number of a cause, by kind, station (-1 for the line) and item; -1 where the line has none such.
func (s *Simulation) Reason(kind ReasonKind, station, item int) Reason {
	return s.reasons.ifAny(kind, station, item)
}

// Group is a run of stations, First to Last, that form one section.
type Group struct {
	First, Last int
	Conveyor    int // -1 for a free-running station
}

// Sections divides the line into its sections, in flow order.
func (l *Line) Sections() []Group {
	var groups []Group
	for i := range l.Stations {
		f := &l.Stations[i].Feed
		if n := len(groups); n > 0 && f.Conveyor >= 0 && f.Buffer == nil {
			groups[n-1].Last = i
			continue
		}
		groups = append(groups, Group{i, i, f.Conveyor})
	}
	return groups
}

// pacedSection is the first indexing conveyor, or else the head of the line.
func (l *Line) pacedSection(groups []Group) int {
	for k, g := range groups {
		if g.Conveyor >= 0 {
			return k
		}
	}
	return 0
}

// Shift runs one shift from an empty line; the account is in Tally until the next call. The same seed and replication give
// the same shift.
func (s *Simulation) Shift(seed uint64, replication int) error {
	s.open(seed, replication)
	return s.run(s.Line.Shift.Length)
}

// Watched runs one shift and calls watch with the account so far after every interval, until watch says to end it.
func (s *Simulation) Watched(seed uint64, replication int, interval time.Duration, watch func(*Tally) (end bool)) error {
	s.open(seed, replication)
	s.calendar.Start("watch", func(p *sim.Process) {
		for {
			p.Wait(interval)
			s.settleSections(s.calendar.Now())
			s.settle(s.calendar.Now())
			if watch(s.Tally) {
				s.calendar.End()
			}
		}
	})
	return s.run(s.Line.Shift.Length)
}

func (s *Simulation) open(seed uint64, replication int) {
	s.calendar.Reset()
	s.Tally.Clear()
	s.seed, s.replication, s.ids, s.clearedAt = seed, replication, 0, 0
	s.blame.reset()
	for _, b := range s.buffers {
		if b != nil {
			b.Reset()
		}
	}
	if s.tracker != nil {
		s.tracker.Reset()
		for k := range s.sections {
			s.tracker.Start(k, 0)
		}
	}
	s.crew.Open()
	s.machines.Open()
	for _, sec := range s.sections {
		sec.reset()
	}
	for _, sec := range s.sections {
		sec.start()
	}
	for _, u := range s.units {
		u.startClocks()
	}
}

func (s *Simulation) run(length time.Duration) error {
	defer s.calendar.Reset() // so that no process outlives its shift
	if err := s.calendar.Run(length); err != nil {
		return s.explain(err)
	}
	end := s.calendar.Now()
	if s.stuck(end) {
		return s.standstill()
	}
	for _, sec := range s.sections {
		sec.close(end)
	}
	for _, u := range s.units {
		u.closeStands(end)
	}
	s.settle(end)
	s.countLeft()
	s.closeTracker(end)
	return nil
}

// settleSections brings the account of the sections up to the present.
func (s *Simulation) settleSections(now time.Duration) {
	for _, sec := range s.sections {
		sec.settle(now)
	}
}

// settle brings the parts of the account that are kept elsewhere up to the present.
func (s *Simulation) settle(now time.Duration) {
	s.blame.settle(now)
	for k, b := range s.buffers {
		if b == nil {
			continue
		}
		b.Close()
		*s.Tally.Buffer(k, ContentSeconds), *s.Tally.Buffer(k, ContentNanos) = b.Content.Integral.Seconds, b.Content.Integral.Nanos
		*s.Tally.Buffer(k, Empty) = int64(b.Content.Empty)
		*s.Tally.Buffer(k, Full) = int64(b.Content.Full)
		*s.Tally.Buffer(k, Through) = b.Content.Entered
		*s.Tally.Buffer(k, Waited) = b.Content.Waited
	}
	s.Tally.CrewBusy[0] = int64(s.crew.Busy())
}

func (s *Simulation) countLeft() {
	for k, sec := range s.sections {
		count := func(c carton) {
			if !c.present() {
				return
			}
			if c.id != 0 { // a blank is not yet a carton, but has its place
				s.Tally.Flow[Left]++
			}
			if k >= s.pacedAt {
				s.Tally.Flow[LeftPast]++
			}
		}
		sec.cartons(count)
		if b := s.buffers[k]; b != nil && k > s.pacedAt {
			b.Items(count)
		} else if b != nil {
			b.Items(func(carton) { s.Tally.Flow[Left]++ })
		}
	}
}

func (s *Simulation) closeTracker(end time.Duration) {
	if s.tracker == nil {
		return
	}
	first, last, since := s.unbroken(end)
	shares := s.tracker.Finish(end)
	for k := range s.sections {
		s.Tally.Sole[k], s.Tally.Shifting[k] = int64(shares.Sole[k]), int64(shares.Shifting[k])
	}
	if first != last {
		moved := min(int64(end-since), s.Tally.Sole[first])
		s.Tally.Sole[first] -= moved
		s.Tally.Sole[last] += moved
	}
}

// unbroken finds the sections whose active period is cut off by the end and covers more than half of the run: none of them has waited for
// long, and the last of them in flow order, active since then, is what lets no more out. The rule of active periods would name the one
// that began first, though it only fills the buffer before the other.
func (s *Simulation) unbroken(end time.Duration) (first, last int, since time.Duration) {
	first, last = -1, -1
	var began time.Duration
	for k := range s.sections {
		at, active := s.tracker.Since(k, end)
		if !active || end-at <= end/2 {
			continue
		}
		if first < 0 || at < began {
			first, began = k, at
		}
		last, since = k, at
	}
	return first, last, since
}

// flow adds n to a count of cartons.
func (s *Simulation) flow(c FlowCount, n int64) { s.Tally.Flow[c] += n }

// gone accounts for n cartons, or empty places, that will not leave the line as good cartons.
func (s *Simulation) gone(section int, why Reason, n int64) {
	if section >= s.pacedAt {
		s.Tally.Gone[why] += n
	}
}

// leave counts a carton out of the line, or out of a station that ejects rejects.
func (s *Simulation) leave(section int, c carton) {
	if c.kind == good {
		s.flow(Good, 1)
		return
	}
	s.flow(Bad, 1)
	s.gone(section, c.why, 1)
}

// newCarton numbers a carton that comes onto the line.
func (s *Simulation) newCarton() carton {
	s.ids++
	s.flow(Entered, 1)
	return carton{id: s.ids, kind: good}
}

// transitBefore is the reason of a wait for cartons under way in the buffer before a section.
func (s *Simulation) transitBefore(section int) Reason {
	return s.reasons.of(InTransit, s.first[section], 0)
}

// stands says that the shift is over or in a planned stop.
func (s *Simulation) stands() bool {
	return s.calendar.Now() >= s.Line.Shift.Length || s.window() >= 0
}

// window is the planned stop that the present lies in, or -1.
func (s *Simulation) window() int { return s.Line.Shift.window(s.calendar.Now()) }

// awaitProduction lets a planned stop pass, and never returns once the shift is over.
func (s *Simulation) awaitProduction(p *sim.Process) {
	for {
		now := s.calendar.Now()
		if now >= s.Line.Shift.Length {
			for {
				p.Park()
			}
		}
		w := s.Line.Shift.window(now)
		if w < 0 {
			return
		}
		p.WaitUntil(s.Line.Shift.Planned[w].To)
	}
}
