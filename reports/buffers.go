package reports

import (
	"strconv"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/stations"
)

// bufferSection says how full the buffers were.
func bufferSection(f *scenarios.Forecast, n *notes) layout.Section {
	s := layout.Section{Heading: "Buffers"}
	t := &table{columns: []column{left("before"), right("room for"), right("holds"), right("±"), right("empty,\n%"), right("full,\n%"),
		right("stay"), right("waited,\n%"), right("cartons\na shift")}}
	for _, b := range f.Buffers {
		room := strconv.Itoa(b.Capacity)
		if b.Capacity == stations.Unlimited {
			room = "no limit"
		}
		t.add(b.Before+n.mark("buffer "+b.Before), room, layout.Fixed(b.MeanContent.Mean, max(1, layout.Decimals(b.MeanContent.HalfWidth()))),
			exactWidth(b.MeanContent), percent(b.EmptyShare), percent(b.FullShare), layout.Fixed(b.MeanWait.Seconds(), 1)+" s",
			percent(b.WaitedShare), layout.Fixed(b.Through, 0))
	}
	s.Table, s.Notes = t.laidOut(), n.take()
	return s
}
