package scenarios

import (
	"fmt"
	"slices"

	"dwellcast/stations"
)

// Cautions are what to be careful of in any figure of the line, whatever is asked of it: what the file says, the limits that can't
// be told, and that nothing ever stops where no stop is declared.
func (f *File) Cautions() []Warning {
	list := slices.Clone(f.Warnings)
	if f.Mechanics.Described {
		_, unassessed := speedLimits(f)
		for _, u := range unassessed {
			list = append(list, Warning{"good_rate", fmt.Sprintf("not assessed: %s of %s, since %s", u.Name, u.Where, u.Why)})
		}
	}
	if !declaresStops(f.Line) {
		list = append(list, Warning{"good_rate", "the file declares no stop of any station: output, OEE and the chance of a target are those of a line that never stands still"})
	}
	return list
}

// declaresStops says that some station can stand for a cause of its own.
func declaresStops(l *stations.Line) bool {
	for i := range l.Stations {
		if st := &l.Stations[i]; len(st.Stops) > 0 || st.Miss.Stop != nil {
			return true
		}
	}
	return false
}
