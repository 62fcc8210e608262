// Package stations knows what each kind of station of a carton line does in a cycle: the indexing conveyor and the
// free-running machine, stops and who clears them, materials, and the account of every nanosecond and carton.
package stations

import (
	"time"

	"dwellcast/sim/random"
)

// Line describes a carton line as the simulation needs it: every quantity resolved at the operator's setting.
type Line struct {
	Title string
	// Setting is the operator's speed setting in cartons/h; 0 means that nothing paces the line.
	Setting float64
	// Lanes is the number of cartons side by side on a pitch, at least 1.
	Lanes     int
	Shift     Shift
	Crew      Crew
	Conveyors []Conveyor
	// Stations stand in flow order.
	Stations []Station
}

// Pace returns the pace period, 3600 s x lanes / setting, rounded to the nanosecond; 0 without a setting.
func (l *Line) Pace() time.Duration {
	if l.Setting == 0 {
		return 0
	}
	return time.Duration(float64(l.Lanes)*3600e9/l.Setting + 0.5)
}

// Shift is the time that production is scheduled for, and the parts of it in which the line is planned to stand.
type Shift struct {
	Length time.Duration
	// Planned windows are in order and do not overlap.
	Planned []Window
}

// Window is a planned stop: start-up, a break, cleaning. No station begins a cycle in it.
type Window struct {
	Name     string
	From, To time.Duration
}

// Crew clears stops and reloads materials, first come first served. Zero attendants means that there is always one free.
type Crew struct {
	Attendants int
	// Reaction is the time from being free and called to standing at the station.
	Reaction random.Sampler
}

// Release says when the next cycle of an indexing conveyor may begin once all are clear.
type Release uint8

// The two ways of releasing a cycle, both met in the trade.
const (
	// WhenClear lets the master start on demand, as soon as all are clear.
	WhenClear Release = iota
	// AtCamZero waits for the next zero of a master that never stops; clear at the zero itself counts as clear.
	AtCamZero
)

// Conveyor is an indexing conveyor: all stations on it move their cartons together.
type Conveyor struct {
	// Index is the moving part of a cycle.
	Index time.Duration
	// Revolution is how long the master takes for 360 degrees; 0 means that no master is timed.
	Revolution time.Duration
	Release    Release
	// RunOut is how many pitches lie behind the last station.
	RunOut int
	// RunsEmpty lets a conveyor fed from a buffer index an empty pitch when no carton has come.
	RunsEmpty bool
}

// MasterLimits says whether the master's revolution can outlast all that the stations of a conveyor do: it is timed, turns on
// demand, and no filler that turns with it fills the rest of the revolution.
func (l *Line) MasterLimits(g Group) bool {
	if g.Conveyor < 0 {
		return false
	}
	c := &l.Conveyors[g.Conveyor]
	for i := g.First; i <= g.Last; i++ {
		st := &l.Stations[i]
		var act time.Duration
		for _, part := range st.Parts {
			act += part.Time.Min()
		}
		if st.Kind == Fill && st.ActsEmpty && act >= c.Revolution-c.Index {
			return false
		}
	}
	return c.Revolution > 0 && c.Release == WhenClear
}

// Kind is what a station does to a carton.
type Kind uint8

// The kinds of station.
const (
	Erect Kind = iota
	Fill
	Seal
	Offload
	Machine
	numKinds
)

var kindNames = [numKinds]string{Erect: "erect", Fill: "fill", Seal: "seal", Offload: "offload", Machine: "machine"}

// String returns the word that a line file uses.
func (k Kind) String() string { return kindNames[k] }

// KindNames lists the words that a line file may use for a station's kind.
func KindNames() []string { return kindNames[:] }

// Station is one station of a line.
type Station struct {
	Name string
	Kind Kind
	Feed Feed
	// Units is the number of identical parallel units, at least 1.
	Units int
	// Turns is how many cycles an erector's arm needs from the pick to the drop.
	Turns int
	// Parts make up the act in order, for example lag, close, dwell and open.
	Parts []Part
	// Away is the share of an offload act after which the gripper no longer holds up the conveyor; 0 means all of it.
	Away time.Duration
	// ActsEmpty says that the station moves on an empty pitch too, as a nozzle on the master does.
	ActsEmpty bool
	Miss      Miss
	// Reject is the probability that an act leaves a carton that is made but not good.
	Reject float64
	// Ejects says that cartons already rejected leave the line here.
	Ejects    bool
	Stops     []Stop
	Materials []Material
	// StandLimit is how long a carton may stand in the station before it is scrapped; 0 means for ever.
	StandLimit time.Duration
	// Glue is what the station closes in time; nil where it closes none. Only on a conveyor.
	Glue *Glue
}

// Feed is what links a station to the one before it.
type Feed struct {
	// Conveyor is the index of the conveyor that the station stands on, or -1 when it runs on its own.
	Conveyor int
	// Pitches is the distance to the station before on the same conveyor; 0 for the first on it.
	Pitches int
	// Buffer lies before the station; nil on a conveyor behind another station, and at the head of the line.
	Buffer *Buffer
}

// Unlimited is the capacity of a buffer that is never full.
const Unlimited = -1

// Buffer is an accumulating conveyor. A capacity of 0 hands each carton straight from station to station.
type Buffer struct {
	Capacity int
	Transit  time.Duration
}

// Part is a named part of an act.
type Part struct {
	Name string
	// Does says what it is to the motion of the station; its name is for readers, and keys its luck.
	Does PartKind
	Time random.Sampler
}

// PartKind is what a part of an act does.
type PartKind uint8

// The kinds of part.
const (
	OtherPart PartKind = iota // anything else
	LagPart                   // the photo-eye sees the carton
	ClosePart                 // the jaws close
	DwellPart                 // they stay closed
	OpenPart                  // they open
	ArmPart                   // an erector's arm comes to a stand, by the master
	DropPart                  // its carton falls, by the master
)

// Miss says how often an act fails to do its work, and what happens then.
type Miss struct {
	Chance float64
	// Tries is how many times the act is made in all before it counts as missed; 1 or less means once, Endless until it succeeds.
	Tries int
	// Stop, if given, follows when every try failed; after it the carton is good. Without it the act is missed.
	Stop *Stop
}

// Endless tries an act again until it succeeds.
const Endless = -1

// Trigger is what a stop's clock counts.
type Trigger uint8

// The clocks of a stop.
const (
	// ByCartons counts acts on a carton.
	ByCartons Trigger = iota
	// ByRunning counts time in which the station works.
	ByRunning
	// ByClock counts all time from one clearing to the next stop.
	ByClock
)

// Stop is a cause that makes a station stand until it is cleared.
type Stop struct {
	Cause   string
	Trigger Trigger
	// Chance is the probability per act of a memoryless stop by cartons; 0 when Acts is used.
	Chance float64
	// Acts draws the number of acts between stops, when it is not memoryless.
	Acts random.Distribution
	// Every draws the running or clock time between stops.
	Every random.Sampler
	// Clear is the time to clear, without the reaction of the crew.
	Clear random.Sampler
	// Unattended stops clear by themselves.
	Unattended bool
	// Scrap is how many cartons are lost in the stop.
	Scrap int
	// Repeat makes the interrupted act start again from its beginning; otherwise work goes on where it stopped.
	Repeat bool
	// Afresh draws the time of an act that starts again anew; otherwise it is the time drawn before.
	Afresh bool
}

// Material runs down by one per carton and is reloaded: blanks, glue, film, or the free places of a pallet.
type Material struct {
	Name string
	// Holds is the full amount, Low the amount at which a reload is called for, Reload what one reload brings.
	Holds, Low, Reload int
	Takes              random.Sampler
	Unattended         bool
}
