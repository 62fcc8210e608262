package stations

// Tally is the account of one shift, or of many: whole nanoseconds and whole cartons, so that sums are exact in any order.
// All of it lies in one vector; the named parts are views into it.
type Tally struct {
	cells []int64
	// Flow counts cartons of the line by FlowCount.
	Flow []int64
	// Station holds per station, then StationCount.
	Station []int64
	// States holds ns per station, then State; parallel units are summed.
	States []int64
	// Lost holds, per reason, ns beyond the pace at the section that the setting paces.
	Lost []int64
	// Gone holds, per reason, cartons (or places for one) lost there or downstream of it.
	Gone []int64
	// Stops, Awaited and Cleared hold, per reason, the number of stops and reloads and their ns.
	Stops, Awaited, Cleared []int64
	// Starved and Blocked hold ns per station, then the reason that caused the wait.
	Starved, Blocked []int64
	// Cycles, PacedCycles and MasterCycles hold, per section, all cycles, those in which the pace timer was last, and
	// those in which the master was.
	Cycles, PacedCycles, MasterCycles []int64
	// Sole and Shifting hold ns per section in which it alone was the bottleneck, or shared in a shift of it.
	Sole, Shifting []int64
	// Buffers holds per section BufferCount cells of the buffer before it.
	Buffers []int64
	// CrewBusy is the ns that attendants spent on calls.
	CrewBusy []int64
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
	Content BufferCount = iota // carton x ns
	Empty                      // ns without a carton
	Full                       // ns without room
	Through                    // cartons put in
	Waited                     // cartons that waited to be taken
	numBufferCounts
)

// newTally lays out the vector for a line.
func newTally(stations, sections, reasons int) *Tally {
	t := &Tally{}
	parts := []struct {
		view *[]int64
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
	t.cells = make([]int64, total)
	from := 0
	for _, p := range parts {
		*p.view = t.cells[from : from+p.n : from+p.n]
		from += p.n
	}
	return t
}

// Len is the number of cells.
func (t *Tally) Len() int { return len(t.cells) }

// Cells is the whole vector, for keeping an account and bringing it back.
func (t *Tally) Cells() []int64 { return t.cells }

// Clear sets every cell to zero.
func (t *Tally) Clear() { clear(t.cells) }

// Add adds another tally of the same line.
func (t *Tally) Add(other *Tally) {
	for i, v := range other.cells {
		t.cells[i] += v
	}
}

// Subtract takes off another tally of the same line, such as the account of a warm-up.
func (t *Tally) Subtract(other *Tally) {
	for i, v := range other.cells {
		t.cells[i] -= v
	}
}

// Copy sets t to the other's cells.
func (t *Tally) Copy(other *Tally) { copy(t.cells, other.cells) }

// At returns a count of station i.
func (t *Tally) At(i int, count StationCount) *int64 {
	return &t.Station[i*int(numStationCounts)+int(count)]
}

// State returns the ns of station i in a state.
func (t *Tally) State(i int, s State) *int64 { return &t.States[i*int(NumStates)+int(s)] }

// Buffer returns an account of the buffer before section k.
func (t *Tally) Buffer(k int, count BufferCount) *int64 {
	return &t.Buffers[k*int(numBufferCounts)+int(count)]
}
