package reports

import (
	"io"

	"dwellcast/scenarios"
)

// jsonTiming is a timing in JSON: SI units, angles in degrees, rates in cartons/h, null for a figure that is not known.
type jsonTiming struct {
	Schema        int                  `json:"schema"`
	Title         string               `json:"title"`
	Setting       float64              `json:"setting_per_hour"`
	PaceSeconds   float64              `json:"pace_seconds"`
	Ceiling       *number              `json:"ceiling_per_hour"` // null where nothing binds, 0 where no setting is allowed
	Kept          bool                 `json:"keeps_every_limit"`
	Unassessed    []jsonUnassessed     `json:"not_assessed"`
	Binding       *jsonBinding         `json:"binding"`
	Next          *jsonBinding         `json:"next"`
	Limits        []jsonSpeedLimit     `json:"limits"`
	Margins       []jsonInterlock      `json:"margins"`
	Conveyors     []jsonConveyorTiming `json:"conveyors"`
	Stations      []jsonStationTiming  `json:"stations"`
	Solved        []jsonSolved         `json:"solved"`
	Warnings      []jsonWarning        `json:"warnings"`
	SafetyCaution string               `json:"caution"`
}

type jsonUnassessed struct {
	Where string `json:"where"`
	Limit string `json:"limit"`
	Why   string `json:"why"`
}

type jsonBinding struct {
	Where   string `json:"where"`
	Limit   string `json:"limit"`
	Kind    string `json:"kind"`
	Setting number `json:"setting_per_hour"`
	Lift    string `json:"lift"`
}

type jsonSpeedLimit struct {
	Where   string          `json:"where"`
	Name    string          `json:"name"`
	Kind    string          `json:"kind"`
	Highest *number         `json:"highest_per_hour"` // null: any; 0: none
	Lowest  *number         `json:"lowest_per_hour"`  // null: any
	Margin  number          `json:"margin"`
	Unit    string          `json:"unit"`
	Bands   []jsonForbidden `json:"forbidden_bands"`
	Lift    string          `json:"lift"`
}

type jsonForbidden struct {
	From number `json:"from_per_hour"`
	To   number `json:"to_per_hour"`
}

type jsonInterlock struct {
	Where      string `json:"where"`
	Name       string `json:"name"`
	Degrees    number `json:"degrees"`
	Seconds    number `json:"seconds"`
	Distance   number `json:"distance"` // m, or rad of one that turns
	Turns      bool   `json:"turns"`
	AtDegrees  number `json:"at_degrees"`
	Kept       bool   `json:"kept"`
	DistanceAt number `json:"distance_at_degrees"`
}

type jsonConveyorTiming struct {
	Name              string           `json:"name"`
	CycleSeconds      number           `json:"cycle_seconds"`
	Turns             *int             `json:"turns"` // of a master that never stops in a cycle; null of another
	TurnsFrom         []jsonTurnsFrom  `json:"turns_from"`
	RevolutionSeconds number           `json:"revolution_seconds"`
	IndexSeconds      number           `json:"index_seconds"`
	StandSeconds      number           `json:"stand_seconds"`
	Axes              []jsonAxisTiming `json:"axes"`
	Slosh             *jsonSlosh       `json:"slosh"`
}

type jsonAxisTiming struct {
	Station      string    `json:"station"`
	Name         string    `json:"name"`
	Turns        bool      `json:"turns"` // rad instead of m
	Stroke       number    `json:"stroke"`
	Speed        number    `json:"peak_speed"`
	Acceleration number    `json:"peak_acceleration"`
	Jerk         number    `json:"peak_jerk"`
	Motor        *jsonLoad `json:"motor"`
	Degrees      []number  `json:"degrees"`
	Position     []number  `json:"position"`
	Velocity     []number  `json:"velocity"`
}

type jsonLoad struct {
	SpeedRPM       number `json:"speed_rpm"`
	SpeedShare     number `json:"speed_share"`
	Torque         number `json:"peak_torque"`
	TorqueShare    number `json:"peak_torque_share"`
	TorqueRMS      number `json:"rms_torque"`
	TorqueRMSShare number `json:"rms_torque_share"`
	PulsesPerSec   number `json:"pulses_per_second"`
}

type jsonSlosh struct {
	Peak         number   `json:"peak"`
	Standing     number   `json:"standing"`
	Indexes      int      `json:"indexes"`
	SteadyPeak   number   `json:"steady_peak"`
	Freeboard    number   `json:"freeboard"`
	Residual     number   `json:"residual"`
	WorstPhase   number   `json:"worst_phase"`
	QuasiStatic  number   `json:"quasi_static"`
	FrequencyHz  number   `json:"first_mode_hz"`
	BeyondLinear []string `json:"beyond_linear_theory"`
}

type jsonStationTiming struct {
	Name         string       `json:"name"`
	Kind         string       `json:"kind"`
	NeedsSeconds number       `json:"needs_seconds"`
	NeedsTurns   *int         `json:"needs_turns"` // of a master that never stops; null of another
	SlackSeconds number       `json:"slack_seconds"`
	Critical     bool         `json:"critical"`
	Windows      []jsonWindow `json:"windows"`
	Dosing       *jsonDosing  `json:"dosing,omitempty"`
	Sealing      *jsonSealing `json:"sealing,omitempty"`
}

type jsonWindow struct {
	Name     string `json:"name"`
	From     number `json:"from_seconds"`
	To       number `json:"to_seconds"`
	ByMaster bool   `json:"by_master"`
}

// jsonDosing is null where the file does not say: a cam of the piston for the flow, the nozzle's bore for the exit, the content.
type jsonDosing struct {
	Dose       number `json:"dose"` // m3, as the volumes below
	Stroke     number `json:"stroke"`
	Flow       number `json:"peak_flow"`
	Exit       number `json:"exit_velocity"`
	Declared   number `json:"declared"`
	Giveaway   number `json:"giveaway"`
	Tolerable  number `json:"tolerable_deficiency"`
	ShareShort number `json:"share_short"`
}

type jsonSealing struct {
	Dwell     number `json:"dwell_seconds"`
	Least     number `json:"least_dwell_seconds"` // null, as the two below: not known
	Short     number `json:"short_dwell_seconds"` // all but one act in a thousand have it; the margin is its
	Margin    number `json:"margin_seconds"`
	Interface number `json:"interface_celsius"`
	Reject    number `json:"reject"`
}

// jsonTurnsFrom is a setting from which on a cycle lasts so many turns.
type jsonTurnsFrom struct {
	Setting number `json:"setting_per_hour"`
	Turns   int    `json:"turns"`
}

type jsonSolved struct {
	Where string `json:"where"`
	What  string `json:"what"`
	Unit  string `json:"unit"`
	Now   number `json:"now"`
	Could number `json:"could"`
	Fault string `json:"fault,omitempty"`
}

func timingJSON(w io.Writer, t *scenarios.Timing) error {
	out := jsonTiming{Schema: 1, Title: t.Title, Setting: float64(t.Setting), PaceSeconds: float64(t.Pace), Ceiling: ceilingJSON(&t.Ceiling), Kept: t.Ceiling.Kept(), Unassessed: []jsonUnassessed{},
		Binding: bindingJSON(t.Ceiling.Binding()), Next: bindingJSON(t.Ceiling.Next()), Limits: []jsonSpeedLimit{}, Margins: []jsonInterlock{},
		Conveyors: []jsonConveyorTiming{}, Stations: []jsonStationTiming{}, Solved: []jsonSolved{}, Warnings: jsonWarnings(t.Warnings), SafetyCaution: timingCaution}
	for i := range t.Ceiling.Limits {
		out.Limits = append(out.Limits, speedLimitJSON(&t.Ceiling.Limits[i]))
	}
	for _, u := range t.Ceiling.Unassessed {
		out.Unassessed = append(out.Unassessed, jsonUnassessed{u.Where, u.Name, u.Why})
	}
	for _, m := range t.Margins {
		out.Margins = append(out.Margins, jsonInterlock{m.Where, m.Name, number(m.Angle), number(m.Time), number(m.Distance), m.Turns, number(m.AngleAt), m.Kept(), number(m.DistanceAt)})
	}
	for i := range t.Conveyors {
		out.Conveyors = append(out.Conveyors, conveyorJSON(&t.Conveyors[i]))
	}
	for i := range t.Stations {
		out.Stations = append(out.Stations, stationTimingJSON(&t.Stations[i]))
	}
	for _, p := range t.Solved {
		out.Solved = append(out.Solved, jsonSolved{p.Where, p.What, map[bool]string{false: "deg", true: "s"}[p.Seconds], number(p.Now), number(p.Could), p.Fault})
	}
	return writeJSON(w, out)
}

// ceilingJSON is null where nothing binds.
func ceilingJSON(c *scenarios.SpeedCeiling) *number {
	if c.Binding() == nil {
		return nil
	}
	return pointer(number(c.Setting))
}

func bindingJSON(l *scenarios.LimitFinding) *jsonBinding {
	if l == nil {
		return nil
	}
	return &jsonBinding{l.Where, l.Name, string(l.Kind), number(l.Highest.Setting), l.Lift}
}

func speedLimitJSON(l *scenarios.LimitFinding) jsonSpeedLimit {
	out := jsonSpeedLimit{Where: l.Where, Name: l.Name, Kind: string(l.Kind), Margin: number(l.Now), Unit: l.Unit, Bands: []jsonForbidden{}, Lift: l.Lift}
	if l.Highest.Binds || l.Err != nil {
		highest := number(l.Highest.Setting)
		out.Highest = &highest
	}
	if l.Lowest > 0 {
		out.Lowest = pointer(number(l.Lowest))
	}
	for _, b := range l.Bands {
		out.Bands = append(out.Bands, jsonForbidden{number(b.From), number(b.To)})
	}
	return out
}

func conveyorJSON(c *scenarios.ConveyorTiming) jsonConveyorTiming {
	out := jsonConveyorTiming{TurnsFrom: []jsonTurnsFrom{}, Name: c.Name, CycleSeconds: number(c.Cycle), RevolutionSeconds: known(c.Revolution > 0, c.Revolution), IndexSeconds: number(c.Index),
		StandSeconds: number(c.Stand), Axes: []jsonAxisTiming{}}
	if c.Turns > 0 {
		out.Turns = &c.Turns
	}
	for _, f := range c.TurnsFrom {
		out.TurnsFrom = append(out.TurnsFrom, jsonTurnsFrom{number(f.Setting), f.Turns})
	}
	curves := c.Curves()
	for i, a := range c.Axes {
		if a.Known {
			out.Axes = append(out.Axes, axisJSON(&a, &curves[i]))
		}
	}
	if w := c.Slosh; w != nil {
		out.Slosh = &jsonSlosh{number(w.Open.Peak), number(w.Open.Standing), w.Indexes, number(w.Steady.Peak), number(w.Tank.Freeboard), number(w.Residual), number(w.WorstPhase),
			number(w.QuasiStatic), number(w.First.Frequency), append([]string{}, w.BeyondLinear...)}
	}
	return out
}

func axisJSON(a *scenarios.AxisTiming, curve *scenarios.Curve) jsonAxisTiming {
	p := a.Peaks
	out := jsonAxisTiming{Station: a.Station, Name: a.Name, Turns: a.Turns, Stroke: number(a.Cam.Stroke()), Speed: number(p.Velocity.Value),
		Acceleration: number(p.Acceleration.Value), Jerk: number(p.Jerk.Value)}
	if l := a.Load; l != nil {
		out.Motor = &jsonLoad{number(l.Speed), number(l.SpeedShare), number(l.Torque), number(l.TorqueShare), number(l.TorqueRMS), number(l.TorqueRMSShare), number(l.PulsesPerSecond)}
	}
	for i, at := range curve.At {
		m := curve.Motion[i]
		out.Degrees, out.Position, out.Velocity = append(out.Degrees, number(at)), append(out.Position, number(m.Position)), append(out.Velocity, number(m.Velocity))
	}
	return out
}

func stationTimingJSON(st *scenarios.StationTiming) jsonStationTiming {
	out := jsonStationTiming{Name: st.Name, Kind: st.Kind.String(), NeedsSeconds: number(st.Needs), SlackSeconds: number(st.Slack), Critical: st.Critical, Windows: []jsonWindow{}}
	if st.Turns > 0 {
		out.NeedsTurns = &st.Turns
	}
	for _, w := range st.Windows {
		out.Windows = append(out.Windows, jsonWindow{w.Name, number(w.From), number(w.To), w.ByMaster})
	}
	if d := st.Dosing; d != nil {
		out.Dosing = &jsonDosing{number(d.Dose), number(d.Stroke), known(d.Flows.Dispense.Value > 0, d.Flows.Dispense.Value), known(d.Exit > 0, d.Exit), known(d.Declared > 0, d.Declared),
			known(d.Declared > 0, d.Giveaway), known(d.Tolerable > 0, d.Tolerable), known(d.Tolerable > 0, d.ShareShort)}
	}
	if s := st.Sealing; s != nil {
		out.Sealing = &jsonSealing{number(s.Dwell), known(s.Least > 0, s.Least), known(s.Least > 0, s.Short), known(s.Least > 0, s.Margin), number(s.Interface), number(s.Reject)}
	}
	return out
}
