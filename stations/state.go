package stations

// State is what a station does or waits for; every nanosecond of a shift is in exactly one.
type State uint8

// The states of a station.
const (
	Working     State = iota // its conveyor indexes a carton to it, or it acts
	Paced                    // finished, waiting only for the pace timer or the master
	Interlocked              // finished, waiting for another station on the same conveyor
	Starved                  // nothing to work on
	Blocked                  // nowhere to put it
	Awaiting                 // stopped, awaiting an attendant
	Clearing                 // stopped, being cleared
	Reloading                // standing because a material ran dry
	Planned                  // planned stop
	NumStates
)

var stateNames = [NumStates]string{
	"working", "paced", "interlocked", "starved", "blocked", "awaiting", "clearing", "reloading", "planned",
}

// String returns the word used in reports.
func (s State) String() string { return stateNames[s] }

// idle says that the state is a wait between acts, which a planned stop takes over.
func (s State) idle() bool { return s >= Paced && s <= Blocked }
