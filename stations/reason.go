package stations

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
	SlowMaster                      // the master's revolution outlasts all else
	CamGate                         // waits for the next cam zero
	InTransit                       // cartons are on their way through the buffer before the station
	Filling                         // the line is not yet full
	NominalPace                     // without a setting: act times against their mean
	LeftOnLine                      // on the line when the shift ends
	ContentChange                   // of a long run: on the line at its end more than at its beginning
)

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
		r.add(Cause{PlannedStop, -1, i, "plan", w.Name})
	}
	r.add(Cause{SettingPace, -1, 0, "setting", "pace of the setting"})
	for i := range line.Stations {
		r.addStation(i, &line.Stations[i])
	}
	r.add(Cause{SlowMaster, -1, 0, "conveyor", "master revolution longer than the pace"})
	r.add(Cause{CamGate, -1, 0, "conveyor", "waits for the next cam zero"})
	r.add(Cause{Filling, -1, 0, "line", "filling the line"})
	r.add(Cause{NominalPace, -1, 0, "line", "act times against their mean"})
	r.add(Cause{LeftOnLine, -1, 0, "line", "left on the line at the end"})
	r.add(Cause{ContentChange, -1, 0, "line", "more on the line than before"})
	return r
}

func (r *reasons) addStation(i int, st *Station) {
	r.add(Cause{SlowAct, i, 0, st.Name, slowWords(st)})
	for k, stop := range st.Stops {
		r.add(Cause{Stoppage, i, k, st.Name, stop.Cause})
	}
	if st.Miss.Stop != nil {
		r.add(Cause{MissStop, i, 0, st.Name, st.Miss.Stop.Cause})
	}
	for k, m := range st.Materials {
		r.add(Cause{Reload, i, k, st.Name, "waits for " + m.Name})
	}
	if st.Miss.Chance > 0 {
		r.add(Cause{Missed, i, 0, st.Name, "missed"})
	}
	if st.Reject > 0 {
		r.add(Cause{Rejected, i, 0, st.Name, "rejected"})
	}
	if st.StandLimit > 0 {
		r.add(Cause{Stood, i, 0, st.Name, "stood too long"})
	}
	if st.Feed.Buffer != nil {
		r.add(Cause{InTransit, i, 0, st.Name, "cartons under way in the buffer before it"})
	}
}

func slowWords(st *Station) string {
	if st.Feed.Conveyor < 0 {
		return "own cycle"
	}
	return "act longer than the pace"
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

// of returns the number of a reason that the line has; -1 where it has none such.
func (r *reasons) of(kind ReasonKind, station, item int) Reason {
	if reason, known := r.by[[3]int{int(kind), station, item}]; known {
		return reason
	}
	return -1
}
