package reports

import (
	"strconv"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

// bufferSection says how full the buffers were.
func bufferSection(f *scenarios.Forecast, n *notes) section {
	s := section{heading: "Buffers"}
	t := &table{columns: []column{left("before"), right("room for"), right("holds"), right("±"), right("empty,\n%"), right("full,\n%"),
		right("stay"), right("waited,\n%"), right("cartons\na shift")}}
	for _, b := range f.Buffers {
		room := strconv.Itoa(b.Capacity)
		if b.Capacity == stations.Unlimited {
			room = "no limit"
		}
		t.add(b.Before+n.mark("buffer "+b.Before), room, fixed(b.MeanContent.Mean, max(1, decimals(b.MeanContent.HalfWidth()))),
			exactWidth(b.MeanContent), percent(b.EmptyShare), percent(b.FullShare), fixed(b.MeanWait.Seconds(), 1)+" s",
			percent(b.WaitedShare), fixed(b.Through, 0))
	}
	s.table, s.notes = t, n.take()
	return s
}
