package reports

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/stations"
)

// holder is who held how much of the bottleneck.
type holder struct {
	name  string
	share interval
	// station is its place in the line; -1 for what is none.
	station int
}

// limitSection says what limits the line: who holds the bottleneck, and the largest losses.
func limitSection(f *scenarios.Forecast, n *notes, style Style) layout.Section {
	s := layout.Section{Key: "bottleneck", Limits: true, Heading: "What limits it"}
	holders := holdersOf(f)
	mark := n.mark("bottleneck")
	s.Text = append(s.Text, limitSentence(holders, f.ByCycles)+mark)
	if isDivided(f) {
		s.Text = append(s.Text, dividedWords)
	}
	if worst := largestLosses(f, 3); worst != "" {
		s.Text = append(s.Text, "Largest losses a shift: "+worst)
	}
	t := &layout.Table{Columns: []layout.Column{layout.Words("bottleneck"), layout.Figures("share", "share"), layout.Aside("±"), layout.Drawn("")}}
	for _, h := range holders {
		if share := layout.Percents(h.share, 1); h.share.Mean < 0.0005 {
			t.Spare(layout.Word(h.name), share)
		} else {
			bar := strings.Repeat("#", length(h.share.Mean, min(40, max(8, style.Columns()-40))))
			t.Add(layout.Word(h.name), share, layout.Word(halfWidth(layout.InPercent(h.share))), layout.Word(bar))
		}
	}
	s.Table, s.Notes = t, n.take()
	return s
}

// isDivided says that shares of time are divided further by cycles, between a section's stations, the setting and the master.
func isDivided(f *scenarios.Forecast) bool {
	return !f.ByCycles && f.SettingShare.Mean+f.MasterShare.Mean > 0
}

// dividedWords say what a share is of, where it is divided.
const dividedWords = "Shares are of the time in which a section is the bottleneck, divided by its cycles among the setting, the master and its stations"

// sharesOf says what a bottleneck share is of.
func sharesOf(f *scenarios.Forecast) string {
	switch {
	case f.ByCycles:
		return "of cycles"
	case isDivided(f):
		return "of time and cycles"
	}
	return "of the time"
}

func holdersOf(f *scenarios.Forecast) []holder {
	holders := []holder{{"the setting", f.SettingShare, -1}, {"the master", f.MasterShare, -1}}
	for i, st := range f.Stations {
		holders = append(holders, holder{st.Name, st.BottleneckShare, i})
	}
	slices.SortStableFunc(holders, func(a, b holder) int { return cmp.Compare(b.share.Mean, a.share.Mean) })
	return holders
}

func limitSentence(holders []holder, byCycles bool) string {
	if holders[0].share.Mean == 0 {
		return "No bottleneck was seen: nothing was ever active"
	}
	words := fmt.Sprintf("%s holds %s %% of the bottleneck", layout.StartWith(holders[0].name), layout.Fixed(100*holders[0].share.Mean, 1))
	if byCycles {
		words = fmt.Sprintf("%s is what %s %% of cycles wait for last", layout.StartWith(holders[0].name), layout.Fixed(100*holders[0].share.Mean, 1))
	}
	if next := holders[1]; next.share.Mean >= 0.005 {
		words += fmt.Sprintf(", then %s (%s %%)", next.name, layout.Fixed(100*next.share.Mean, 1))
	}
	return words
}

// largestLosses names the greatest losses that are not planned.
func largestLosses(f *scenarios.Forecast, count int) string {
	var unplanned []scenarios.Loss
	for _, loss := range f.Losses {
		if loss.Kind != stations.PlannedStop && loss.Cartons.Mean >= 0.5 {
			unplanned = append(unplanned, loss)
		}
	}
	slices.SortStableFunc(unplanned, bySize)
	var words []string
	for _, loss := range unplanned[:min(count, len(unplanned))] {
		words = append(words, fmt.Sprintf("%s %s (%s)", loss.Where, loss.Cause, layout.Fixed(loss.Cartons.Mean, 0)))
	}
	return strings.Join(words, "; ")
}

func bySize(a, b scenarios.Loss) int { return cmp.Compare(b.Cartons.Mean, a.Cartons.Mean) }

// halfWidth prints the half-width of an interval of percents with one decimal.
func halfWidth(iv interval) string {
	if !iv.Assessed() {
		return layout.None
	}
	return layout.Fixed(iv.HalfWidth(), 1)
}

// length is how many of width characters stand for a share; something is never shown as nothing.
func length(share float64, width int) int {
	n := int(share*float64(width) + 0.5)
	if n == 0 && share > 0 {
		return 1
	}
	return min(max(n, 0), width)
}
