package stations

// Tally is the account of one shift: whole nanoseconds and whole cartons, so that sums are exact in any order.
type Tally = Account[int64]

// Totals is the sum of the accounts of many shifts. Its cells are wide enough for any number of them; whole up to 2^53, they are added in
// the order of the shifts, so that the sum is the same however the work was shared out.
type Totals = Account[float64]

// Account is what became of time and cartons. All of it lies in one vector; the named parts are views into it.
type Account[N int64 | float64] struct {
	cells []N
	// Flow counts cartons of the line by FlowCount.
	Flow []N
	// Station holds per station, then StationCount.
	Station []N
	// States holds ns per station, then State; parallel units are summed.
	States []N
	// Lost holds, per reason, ns beyond the pace at the section that the setting paces.
	Lost []N
	// Gone holds, per reason, cartons (or places for one) lost there or downstream of it.
	Gone []N
	// Stops, Awaited and Cleared hold, per reason, the number of stops and reloads and their ns.
	Stops, Awaited, Cleared []N
	// Starved and Blocked hold ns per station, then the reason that caused the wait.
	Starved, Blocked []N
	// Cycles, PacedCycles and MasterCycles hold, per section, all cycles, those in which the pace timer was last, and
	// those in which the master was.
	Cycles, PacedCycles, MasterCycles []N
	// Sole and Shifting hold ns per section in which it alone was the bottleneck, or shared in a shift of it.
	Sole, Shifting []N
	// Buffers holds per section BufferCount cells of the buffer before it.
	Buffers []N
	// CrewBusy is the ns that attendants spent on calls.
	CrewBusy []N
}

// FlowCount names the cells of Tally.Flow.
type FlowCount int

// The counts of cartons through a line.
const (
	Slots    FlowCount = iota // places that the paced section offered for a carton
	Entered                   // cartons that came onto the line
	Good                      // good cartons out
	Bad                       // rejected cartons out
	Scrapped                  // cartons scrapped
	Left                      // cartons on the line at the end
	LeftPast                  // those of them at or past the paced section
	numFlow
)

// StationCount names the cells per station of Tally.Station.
type StationCount int

// The counts per station.
const (
	Acts      StationCount = iota // acts made, misses included
	Misses                        // acts missed for good
	Rejects                       // cartons rejected
	LastClear                     // cycles in which it was the last to report clear
	numStationCounts
)

// BufferCount names the cells per section of Tally.Buffers.
type BufferCount int

// The accounts of the buffer before a section.
const (
	ContentSeconds BufferCount = iota // carton x s
	ContentNanos                      // carton x ns beyond them
	Empty                             // ns without a carton
	Full                              // ns without room
	Through                           // cartons put in
	Waited                            // cartons that waited to be taken
	numBufferCounts
)

// newAccount lays out the vector for a line.
func newAccount[N int64 | float64](stations, sections, reasons int) *Account[N] {
	t := &Account[N]{}
	parts := []struct {
		view *[]N
		n    int
	}{
		{&t.Flow, int(numFlow)},
		{&t.Station, stations * int(numStationCounts)},
		{&t.States, stations * int(NumStates)},
		{&t.Lost, reasons}, {&t.Gone, reasons},
		{&t.Stops, reasons}, {&t.Awaited, reasons}, {&t.Cleared, reasons},
		{&t.Starved, stations * reasons}, {&t.Blocked, stations * reasons},
		{&t.Cycles, sections}, {&t.PacedCycles, sections}, {&t.MasterCycles, sections},
		{&t.Sole, sections}, {&t.Shifting, sections},
		{&t.Buffers, sections * int(numBufferCounts)},
		{&t.CrewBusy, 1},
	}
	total := 0
	for _, p := range parts {
		total += p.n
	}
	t.cells = make([]N, total)
	from := 0
	for _, p := range parts {
		*p.view = t.cells[from : from+p.n : from+p.n]
		from += p.n
	}
	return t
}

// Len is the number of cells.
func (t *Account[N]) Len() int { return len(t.cells) }

// Cells is the whole vector, for keeping an account and bringing it back.
func (t *Account[N]) Cells() []N { return t.cells }

// Clear sets every cell to zero.
func (t *Account[N]) Clear() { clear(t.cells) }

// Add adds another tally of the same line.
func (t *Account[N]) Add(other *Account[N]) {
	for i, v := range other.cells {
		t.cells[i] += v
	}
}

// Subtract takes off another tally of the same line, such as the account of a warm-up.
func (t *Account[N]) Subtract(other *Account[N]) {
	for i, v := range other.cells {
		t.cells[i] -= v
	}
}

// Copy sets t to the other's cells.
func (t *Account[N]) Copy(other *Account[N]) { copy(t.cells, other.cells) }

// At returns a count of station i.
func (t *Account[N]) At(i int, count StationCount) *N {
	return &t.Station[i*int(numStationCounts)+int(count)]
}

// State returns the ns of station i in a state.
func (t *Account[N]) State(i int, s State) *N { return &t.States[i*int(NumStates)+int(s)] }

// Buffer returns an account of the buffer before section k.
func (t *Account[N]) Buffer(k int, count BufferCount) *N {
	return &t.Buffers[k*int(numBufferCounts)+int(count)]
}

// Content is the content over time of the buffer before section k, in carton x ns.
func (t *Account[N]) Content(k int) float64 {
	return float64(float64(*t.Buffer(k, ContentSeconds))*1e9) + float64(*t.Buffer(k, ContentNanos))
}

// Sum adds the account of a shift to a sum of them.
func Sum(into *Totals, shift *Tally) {
	for i, v := range shift.cells {
		into.cells[i] += float64(v)
	}
}
