package reports

import (
	"encoding/csv"
	"io"
	"strconv"
	"time"

	"dwellcast/stations"
)

// Trace writes what every unit did in a shift as CSV: one row for each stretch of time in one state, times in seconds to the
// nanosecond. The carton is the running number of the one it was busy with, empty for none.
func Trace(w io.Writer, list []stations.Stretch) error {
	out := csv.NewWriter(w)
	out.Write([]string{"station", "unit", "carton", "state", "from_s", "to_s"})
	for _, s := range list {
		carton := ""
		if s.Carton > 0 {
			carton = strconv.Itoa(s.Carton)
		}
		out.Write([]string{s.Station, strconv.Itoa(s.Unit + 1), carton, s.State.String(), nanoseconds(s.From), nanoseconds(s.To)})
	}
	out.Flush()
	return out.Error()
}

func nanoseconds(d time.Duration) string { return strconv.FormatFloat(d.Seconds(), 'f', 9, 64) }
