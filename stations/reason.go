package stations

import "fmt"

// Reason is an index into a simulation's table of reasons for which time or cartons are lost.
type Reason int16

// ReasonKind is what sort of loss a reason is.
type ReasonKind uint8

// The kinds of reason, in the order in which a loss sheet lists them.
const (
	PlannedStop   ReasonKind = iota // Item is the window
	SettingPace                     // waits for the pace timer: no loss against the setting
	SlowAct                         // the station's act outlasts the pace
	Stoppage                        // Item is the stop
	MissStop                        // stands after every try failed
	Reload                          // Item is the material that ran dry
	Missed                          // the act was missed
	Rejected                        // made but not good
	Stood                           // scrapped after standing too long
	Dried                           // closed after its glue lay open too long
	SlowMaster                      // the master's revolution outlasts all else
	CamGate                         // waits for the next cam zero
	InTransit                       // cartons are on their way through the buffer before the station
	Filling                         // the line is not yet full
	NominalPace                     // without a setting: act times against their mean
	LeftOnLine                      // on the line when the shift ends
	ContentChange                   // of a long run: on the line at its end more than at its beginning
	numReasons
)

// nature is what sort of thing a reason is.
type nature uint8

const (
	planned nature = iota + 1
	built          // the way the line is built and set
	event          // a stop or a reload: it comes and goes, and a unit stands for it
	outcome        // what becomes of a carton
	account        // what the account of a shift needs to add up
)

// reasonForms says of every kind of reason what it is, and how it reads; no words where they are the file's own.
var reasonForms = [...]struct {
	nature      nature
	where, what string
}{
	PlannedStop:   {planned, "plan", ""},
	SettingPace:   {built, "setting", "pace of the setting"},
	SlowAct:       {built, "", "act longer than the pace"},
	Stoppage:      {event, "", ""},
	MissStop:      {event, "", ""},
	Reload:        {event, "", "waits for "},
	Missed:        {outcome, "", "missed"},
	Rejected:      {outcome, "", "rejected"},
	Stood:         {outcome, "", "stood too long"},
	Dried:         {outcome, "", "glue open too long"},
	SlowMaster:    {built, "conveyor", "master revolution longer than the pace"},
	CamGate:       {built, "conveyor", "waits for the next cam zero"},
	InTransit:     {account, "", "cartons under way in the buffer before it"},
	Filling:       {account, "line", "filling the line"},
	NominalPace:   {account, "line", "act times against their mean"},
	LeftOnLine:    {account, "line", "left on the line at the end"},
	ContentChange: {account, "line", "more on the line than before"},
}

// Stands says that a unit stands for such a reason: a stop or a reload.
func (k ReasonKind) Stands() bool { return reasonForms[k].nature == event }

// Cause says where a loss arises and why.
type Cause struct {
	Kind ReasonKind
	// Station is the index of the station, or -1 for the line as a whole.
	Station int
	// Item is the index of the planned window, stop or material.
	Item int
	// Where and What name both for a reader.
	Where, What string
}

// reasons numbers every reason that a line can have, the line's own first, then station by station.
type reasons struct {
	list []Cause
	by   map[[3]int]Reason
}

func reasonsOf(line *Line) reasons {
	r := reasons{by: map[[3]int]Reason{}}
	for i, w := range line.Shift.Planned {
		r.add(Cause{PlannedStop, -1, i, reasonForms[PlannedStop].where, w.Name})
	}
	r.addLine(SettingPace)
	for i := range line.Stations {
		r.addStation(i, &line.Stations[i])
	}
	for _, kind := range []ReasonKind{SlowMaster, CamGate, Filling, NominalPace, LeftOnLine, ContentChange} {
		r.addLine(kind)
	}
	return r
}

// addLine adds a reason of the line as a whole.
func (r *reasons) addLine(kind ReasonKind) {
	r.add(Cause{kind, -1, 0, reasonForms[kind].where, reasonForms[kind].what})
}

func (r *reasons) addStation(i int, st *Station) {
	add := func(kind ReasonKind) { r.add(Cause{kind, i, 0, st.Name, reasonForms[kind].what}) }
	r.add(Cause{SlowAct, i, 0, st.Name, slowWords(st)})
	for k, stop := range st.Stops {
		r.add(Cause{Stoppage, i, k, st.Name, stop.Cause})
	}
	if st.Miss.Stop != nil {
		r.add(Cause{MissStop, i, 0, st.Name, st.Miss.Stop.Cause})
	}
	for k, m := range st.Materials {
		r.add(Cause{Reload, i, k, st.Name, reasonForms[Reload].what + m.Name})
	}
	if st.Miss.Chance > 0 {
		add(Missed)
	}
	if st.Reject > 0 {
		add(Rejected)
	}
	if st.StandLimit > 0 {
		add(Stood)
	}
	if st.Glue != nil {
		add(Dried)
	}
	if st.Feed.Buffer != nil {
		add(InTransit)
	}
}

func slowWords(st *Station) string {
	if st.Feed.Conveyor < 0 {
		return "own cycle"
	}
	return reasonForms[SlowAct].what
}

func (r *reasons) add(c Cause) {
	if c.Kind == PlannedStop {
		for i, known := range r.list {
			if known.Kind == PlannedStop && known.What == c.What {
				r.by[[3]int{int(c.Kind), -1, c.Item}] = Reason(i)
				return
			}
		}
	}
	r.by[[3]int{int(c.Kind), c.Station, c.Item}] = Reason(len(r.list))
	r.list = append(r.list, c)
}

// nothing stands where there is no reason.
const nothing Reason = -1

// ifAny returns the number of a reason that the line may have, and nothing where it has none such.
func (r *reasons) ifAny(kind ReasonKind, station, item int) Reason {
	if reason, known := r.by[[3]int{int(kind), station, item}]; known {
		return reason
	}
	return nothing
}

// of returns the number of a reason that the line is sure to have.
func (r *reasons) of(kind ReasonKind, station, item int) Reason {
	reason := r.ifAny(kind, station, item)
	if reason == nothing {
		panic(fmt.Sprintf("station %d has no reason %d of kind %d", station, item, kind))
	}
	return reason
}
