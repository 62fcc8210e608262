package scenarios

import (
	"fmt"
	"slices"

	"dwellcast/scenarios/document"
	"dwellcast/stations"
)

// Variant returns the shifts of a line changed in a way that its file has no words for, such as all times of a station made one
// percent shorter. The change is made to a copy. The tag must say all that the change does: it stands for it in the digest under
// which results are kept and gone on from.
func (l *Lab) Variant(f *File, tag string, change func(*stations.Line)) (*Shifts, error) {
	text, err := document.Render(f.Document)
	if err != nil {
		return nil, err
	}
	varied := *f
	varied.Line = copyLine(f.Line)
	change(varied.Line)
	shifts, err := l.shifts(digest(text+"\n"+tag), &varied)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", tag, err)
	}
	return shifts, nil
}

// copyLine is a copy that shares nothing that can be changed.
func copyLine(line *stations.Line) *stations.Line {
	c := *line
	c.Shift.Planned = slices.Clone(line.Shift.Planned)
	c.Conveyors = slices.Clone(line.Conveyors)
	c.Stations = slices.Clone(line.Stations)
	for i := range c.Stations {
		st := &c.Stations[i]
		st.Parts, st.Stops, st.Materials = slices.Clone(st.Parts), slices.Clone(st.Stops), slices.Clone(st.Materials)
		if st.Feed.Buffer != nil {
			buffer := *st.Feed.Buffer
			st.Feed.Buffer = &buffer
		}
		if st.Miss.Stop != nil {
			stop := *st.Miss.Stop
			st.Miss.Stop = &stop
		}
		if st.Glue != nil {
			glue := *st.Glue
			st.Glue = &glue
		}
	}
	return &c
}
