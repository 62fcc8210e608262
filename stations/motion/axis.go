package motion

// SegmentKind says what an axis does in a segment of the revolution.
type SegmentKind string

// The kinds of segment.
const (
	Rise   SegmentKind = "rise"   // away from home: the nozzle goes down, the piston draws
	Dwell  SegmentKind = "dwell"  // stands
	Return SegmentKind = "return" // towards home: the nozzle lifts, the piston dispenses
	Index  SegmentKind = "index"  // feeds on, never back: the conveyor moves one pitch, the arm turns a quarter
)

// Segment is what an axis does between two angles of the master.
type Segment struct {
	Name   string      // shown in messages; may be empty
	Kind   SegmentKind // rise, dwell, return or index
	From   Degrees     // 0 to less than 360
	To     Degrees     // up to From + 360; less than From when the segment runs through the zero of the master
	Travel float64     // m or rad, more than 0; 0 in a dwell
	Law    Law         // of a rise, return or index
}

// Axis describes one cam. Either it feeds (index segments: its position grows with every revolution) or it
// reciprocates (rises and returns that cancel). Angles that no segment names are stands; but if any dwell is named,
// all of the revolution must be.
type Axis struct {
	Name     string
	Segments []Segment
}

// Shifted is the axis with some of its segments moved on by an angle, their lengths kept. Named dwells are left out,
// so that the stands give way.
func (a Axis) Shifted(by Degrees, which func(Segment) bool) Axis {
	var segments []Segment
	for _, s := range a.Segments {
		if s.Kind == Dwell {
			continue
		}
		if which(s) {
			s.From, s.To = (s.From + by).Within(), (s.From+by).Within()+s.Span()
		}
		segments = append(segments, s)
	}
	a.Segments = segments
	return a
}

// Span is the angle from From to To, through the zero of the master if To is less than From.
func (s Segment) Span() Degrees {
	if s.To < s.From {
		return s.To + fullTurn - s.From
	}
	return s.To - s.From
}
