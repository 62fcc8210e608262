package reports

import (
	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/stations"
)

// bufferSection says how full the buffers were.
func bufferSection(f *scenarios.Forecast, n *notes) layout.Section {
	s := layout.Section{Key: "buffer", Heading: "Buffers"}
	t := &layout.Table{Columns: []layout.Column{layout.Words("before"), layout.Figures("room for", "capacity"), layout.Figures("holds", "mean_content"), layout.Aside("±"),
		layout.Figures("empty,\n%", "empty_share"), layout.Figures("full,\n%", "full_share"), layout.Figures("stay", "mean_wait"),
		layout.Figures("waited,\n%", "waited_share"), layout.Figures("cartons\na shift", "through")}}
	for _, b := range f.Buffers {
		room := layout.Count(b.Capacity).In("cartons")
		if b.Capacity == stations.Unlimited {
			room = layout.Word("no limit")
		}
		holds := layout.Value(layout.Fixed(b.MeanContent.Mean, max(1, layout.Decimals(b.MeanContent.HalfWidth()))), b.MeanContent).In("cartons")
		t.Add(layout.Word(b.Before).Marked(n.mark("buffer "+b.Before)), room, holds, layout.HalfWidth(b.MeanContent), layout.Share(b.EmptyShare),
			layout.Share(b.FullShare), layout.Measure(b.MeanWait.Seconds(), 1, "s"), layout.Share(b.WaitedShare), layout.Number(b.Through, 0).In(cartonsAShift))
	}
	s.Table, s.Notes = t, n.take()
	return s
}
