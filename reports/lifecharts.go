package reports

import (
	"fmt"
	"math"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/sim/acceptance"
	"dwellcast/sim/lifedata"
)

// FitChart draws the share of times that have ended, as seen (Kaplan and Meier 1958) and by the best laws.
func FitChart(f *Fits) chart.Chart {
	steps := lifedata.KaplanMeier(f.Sample)
	seen := chart.Series{Name: "as seen"}
	last := 0.0
	for _, s := range steps {
		seen.X, seen.Y = append(seen.X, s.Time/f.UnitSeconds), append(seen.Y, 100*(1-s.Survival))
		last = s.Time
	}
	out := chart.Line{X: chart.Axis{Title: "time", Unit: f.Unit}, Y: chart.Axis{Title: "ended by then", Unit: "%", From: 0, To: 100}, Series: []chart.Series{seen},
		Caption: chart.Caption{Title: fmt.Sprintf("The %s distribution describes these times best", f.Laws[0].Law), Subtitle: f.File,
			Foot: fmt.Sprintf("%d times, of which %d ended; as seen by Kaplan and Meier's estimate", len(f.Sample), lifedata.Events(f.Sample))}}
	for _, law := range f.Laws[:min(2, len(f.Laws))] {
		s := chart.Series{Name: law.Law.String()}
		for i := 0; i <= 100; i++ {
			t := 1.05 * last * float64(i) / 100
			ended := 0.0
			if t > 0 {
				ended = 100 * (1 - law.Law.Survival(t, law.Values()))
			}
			s.X, s.Y = append(s.X, t/f.UnitSeconds), append(s.Y, math.Min(ended, 100))
		}
		out.Series = append(out.Series, s)
	}
	return out
}

// AcceptChart draws how likely a machine passes, by how available it is; of a run that was made, what it has shown.
func AcceptChart(a *Acceptance) chart.Chart {
	if s := a.Shown; s != nil {
		return chart.Ranges{Caption: chart.Caption{Title: shownWords(s)[0], Subtitle: "Acceptance run", Foot: acceptanceCaution}, X: chart.Axis{Title: "availability", Unit: "%"},
			Rows: []chart.RangeRow{{Name: layout.Confidence(s.Confidence) + " interval", At: 100 * s.Availability.Mean, Low: 100 * s.Availability.Low, High: 100 * s.Availability.High}}}
	}
	curve := chart.Series{Name: "passes"}
	low, high := math.Max(a.Refuse-(a.Promise-a.Refuse), 0.01), math.Min(a.Promise+(a.Promise-a.Refuse), 0.999)
	for i := 0; i <= 80; i++ {
		share := low + (high-low)*float64(i)/80
		curve.X, curve.Y = append(curve.X, 100*share), append(curve.Y, 100*acceptance.WithAvailability(a.Between, share).Pass(a.Plan.Length, a.Plan.Line))
	}
	return chart.Line{Caption: chart.Caption{Title: planWords(a)[0], Subtitle: "Acceptance run", Foot: acceptanceCaution}, X: chart.Axis{Title: "availability of the machine", Unit: "%"},
		Y: chart.Axis{Title: "chance that it passes", Unit: "%", From: 0, To: 100}, Series: []chart.Series{curve},
		References: []chart.Reference{{Label: "to be refused " + share4(a.Refuse), At: 100 * a.Refuse, Vertical: true}, {Label: "promised " + share4(a.Promise), At: 100 * a.Promise, Vertical: true},
			{Label: "line " + share4(a.Plan.Line), At: 100 * a.Plan.Line, Vertical: true}}}
}
