package scenarios

import (
	"time"

	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// Forecast is the answer of a run: what the line makes, where the rest goes, and how sure that is. Rates are cartons/h over
// scheduled time, counts are cartons per shift, shares are of scheduled time.
type Forecast struct {
	Title   string
	Version string
	// File is what was read, and Changes what was changed in it, in words. Repeat is the command that gives the same figures again; it is
	// for the caller to fill in.
	File         string
	Changes      []string
	Repeat       string
	Seed         uint64
	Replications int
	Confidence   float64
	// Setting is the operator's setting in cartons/h, 0 when there is none.
	Setting   float64
	Scheduled time.Duration
	// IdealPerShift is the setting times scheduled time in whole cartons of a shift; ideal = good + sum of losses.
	IdealPerShift float64
	GoodRate      stats.Interval
	GoodPerShift  Spread
	// Target is nil when the file names none.
	Target       *Target
	Stations     []StationForecast
	SettingShare stats.Interval // share of the bottleneck held by the setting itself
	MasterShare  stats.Interval // and by a master that is slower than everything on it
	// ByCycles says that shares of the bottleneck are of cycles, as on a line of one conveyor, and not of time.
	ByCycles bool
	Losses   []Loss
	Stops    []StopForecast
	Buffers  []BufferForecast
	// CrewLoad is the share of the attendants' time spent on calls; Attendants is 0 for a crew without limit.
	CrewLoad   stats.Interval
	Attendants int
	// Indicators by ISO 22400-2, from the loss sheet.
	Indicators Indicators
	// Steady is set when the file asks for long-run figures instead of shifts.
	Steady   *Steady
	Warnings []Warning
	// Interrupted says that the run was ended before it was complete.
	Interrupted bool
}

// Spread is a figure per shift: its mean with interval, and the spread of single shifts.
type Spread struct {
	stats.Interval
	SD, P10, P50, P90 float64
}

// Target is a wanted number of good cartons per shift and the chance that a shift makes it.
type Target struct {
	PerShift float64
	Chance   stats.Interval
}

// StationForecast is what a run says of one station.
type StationForecast struct {
	Name, Kind string
	Units      int
	// Shares of scheduled time by state; they sum to 1.
	Shares [stations.NumStates]stats.Interval
	// BottleneckShare is the share of the line's bottleneck that this station holds.
	BottleneckShare stats.Interval
	// Acts, Misses and Rejects are per shift.
	Acts, Misses, Rejects float64
	// Waits lists who made this station wait, longest first.
	Waits []Wait
}

// Wait is time starved or blocked, charged to the reason that caused it.
type Wait struct {
	State       stations.State // Starved or Blocked
	Where, What string
	Minutes     float64 // per shift
}

// Loss is a row of the loss sheet, cartons per shift.
type Loss struct {
	Where, Cause string
	Kind         stations.ReasonKind
	Of           stations.Cause // which row it is, whatever its words
	Cartons      stats.Interval
	Total        int64 // cartons over all replications
}

// StopForecast is a cause of stops: how often, how long, and what it costs per shift.
type StopForecast struct {
	Where, Cause    string
	Of              stations.Cause // which cause it is, whatever its words
	Reload          bool           // a material that ran dry rather than a stop
	PerShift        stats.Interval
	Seen            int64   // in all replications
	AwaitingMinutes float64 // per shift
	ClearingMinutes float64
	CartonsLost     float64
}

// BufferForecast is what a run says of the buffer before a station.
type BufferForecast struct {
	Before      string
	Capacity    int // stations.Unlimited for no limit
	MeanContent stats.Interval
	EmptyShare  float64
	FullShare   float64
	MeanWait    time.Duration // from entry to exit, transit included
	WaitedShare float64       // of the cartons, those not taken at the instant at which they could have been
	Through     float64       // cartons per shift
}

// Steady describes a long-run estimate.
type Steady struct {
	Length, WarmUp time.Duration
	WarmUpGiven    bool
	Batches        int
	BatchLength    time.Duration
}

// Warning travels with the figure that it concerns.
type Warning struct {
	About string // the figure, for example "good_rate" or "stop sealer/jam"
	Text  string
}
