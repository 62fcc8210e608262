package chart_test

import (
	"fmt"
	"math"
	"time"

	"dwellcast/reports/chart"
)

// All figures in this file are invented.

// samples are one chart of each kind as a user would meet it, and crowded ones.
func samples() map[string]chart.Chart {
	return map[string]chart.Chart{
		"line":             paceLine(),
		"line-crowded":     crowdedLine(),
		"line-scales":      extremeLine(),
		"grid":             dwellGrid(),
		"grid-gaps":        gapGrid(),
		"tornado":          tornado(),
		"tornado-crowded":  crowdedTornado(),
		"shares":           stateShares(),
		"shares-crowded":   crowdedShares(),
		"waterfall":        lossSheet(),
		"waterfall-20":     longLossSheet(),
		"timing":           cartonTiming(),
		"timing-paused":    pausedTiming(),
		"timing-crowded":   crowdedTiming(),
		"ranges":           caseRanges(),
		"ranges-bars":      costRanges(),
		"plan":             cartonPlan(),
		"line-no-captions": chart.Line{Series: []chart.Series{{X: []float64{3}, Y: []float64{7}}}},
	}
}

func paceLine() chart.Line {
	s := chart.Series{Name: "good output"}
	for x := 1100.0; x <= 1700; x += 25 {
		y := math.Min(x, 1440-0.12*math.Max(0, x-1440))*0.93 - 8*math.Exp((x-1650)/60)
		s.X, s.Y = append(s.X, x), append(s.Y, y)
		s.Low, s.High = append(s.Low, y-12-x/150), append(s.High, y+12+x/150)
	}
	return chart.Line{
		Caption: chart.Caption{Title: "Output against the speed setting", Subtitle: "Oat drink, 64 fl oz cartons, one lane",
			Foot: "200 shifts a setting, seed 1; every setting met the same luck"},
		X: chart.Axis{Title: "setting", Unit: "cartons/h"}, Y: chart.Axis{Title: "good output", Unit: "cartons/h"},
		Series: []chart.Series{s}, Band: "95 % interval of the mean",
		References: []chart.Reference{
			{Label: "recommended 1425", At: 1425, Vertical: true}, {Label: "knee 1440", At: 1440, Vertical: true},
			{Label: "mechanical ceiling 1690 (dwell)", At: 1690, Vertical: true}, {Label: "demand", At: 1300},
		},
		Notes: []chart.Note{{Text: "above the knee the sealer is critical", X: 1500, Y: 1330}},
	}
}

func crowdedLine() chart.Line {
	l := chart.Line{
		Caption: chart.Caption{Title: "Nine sealers whose names and curves lie close together, with a title that is much longer than one line of the picture can hold"},
		X:       chart.Axis{Title: "seal dwell", Unit: "s"}, Y: chart.Axis{Title: "good output per scheduled hour of the whole line, mean over all shifts", Unit: "cartons/h"},
	}
	for k := range 9 {
		s := chart.Series{Name: fmt.Sprintf("case %d <A&B>", k+1)}
		for i := range 11 {
			x := 0.6 + 0.1*float64(i)
			s.X, s.Y = append(s.X, x), append(s.Y, math.Min(1400, 1600-float64(k*12)-300*x*x))
		}
		l.Series = append(l.Series, s)
	}
	for k := range 6 {
		l.References = append(l.References, chart.Reference{Label: fmt.Sprintf("vertical mark number %d", k), At: 0.9 + 0.05*float64(k), Vertical: true})
	}
	l.References = append(l.References, chart.Reference{Label: "demand in the first year", At: 1300}, chart.Reference{Label: "demand in the second year", At: 1310})
	return l
}

func extremeLine() chart.Line {
	return chart.Line{
		Caption: chart.Caption{Title: "Tiny and huge numbers, a gap and a legend"},
		X:       chart.Axis{Title: "diffusivity", Unit: "m2/s"}, Y: chart.Axis{Title: "output of ten plants", Unit: "cartons/year", Zero: true},
		Series: []chart.Series{
			{Name: "a series with a name that is far too long to stand beside its curve in the margin", X: []float64{1e-7, 2e-7, 3e-7, 4e-7, 5e-7}, Y: []float64{2e9, 2.5e9, math.NaN(), 2.8e9, 3e9}},
			{Name: "zażółć gęślą jaźń", X: []float64{1e-7, 3e-7, 5e-7}, Y: []float64{-1e9, 0.5e9, 1e9}},
		},
	}
}

func dwellGrid() chart.Grid {
	g := chart.Grid{
		Caption: chart.Caption{Title: "Output over seal dwell and setting", Subtitle: "mean of 100 shifts a point"},
		X:       chart.Axis{Title: "seal dwell", Unit: "s"}, Y: chart.Axis{Title: "setting", Unit: "cartons/h"}, Z: chart.Axis{Title: "good output", Unit: "cartons/h"},
		Notes: []chart.Note{{Text: "today", X: 0.95, Y: 1450}, {Text: "recommended", X: 0.85, Y: 1500}},
	}
	for i := range 21 {
		g.XS = append(g.XS, 0.6+0.05*float64(i))
	}
	for j := range 16 {
		y := 1200 + 25*float64(j)
		g.YS = append(g.YS, y)
		var row []float64
		for _, x := range g.XS {
			row = append(row, 0.95*math.Min(y, 3600/(1.3+x))-0.0008*(y-1200)*(y-1200))
		}
		g.Values = append(g.Values, row)
	}
	return g
}

func gapGrid() chart.Grid {
	nan := math.NaN()
	return chart.Grid{
		Caption: chart.Caption{Title: "A small grid with a saddle and gaps"},
		X:       chart.Axis{Title: "buffer", Unit: "cartons"}, Y: chart.Axis{Title: "attendants"}, Z: chart.Axis{Title: "share of shifts that make the target"},
		XS: []float64{0, 10, 20, 40}, YS: []float64{1, 2, 3},
		Values: [][]float64{{0.2, 0.9, 0.3, nan}, {0.8, 0.25, 0.7, 0.9}, {nan, 0.8, 0.4, 0.95}},
	}
}

func tornado() chart.Tornado {
	return chart.Tornado{
		Caption: chart.Caption{Title: "What moves the forecast", Subtitle: "good output with each input at its low and its high value, the others likely"},
		Output:  chart.Axis{Title: "good output", Unit: "cartons/h"}, Base: 1312,
		Target: &chart.Reference{Label: "demand 1300", At: 1300},
		Swings: []chart.Swing{
			{Name: "seal dwell", LowInput: "0.85 s", HighInput: "1.15 s", Low: 1329, High: 1241},
			{Name: "blank jams", LowInput: "every 1500 cartons", HighInput: "every 600 cartons", Low: 1334, High: 1274},
			{Name: "attendants", LowInput: "1", HighInput: "2", Low: 1312, High: 1338},
			{Name: "buffer ahead of the robot", LowInput: "12 cartons", HighInput: "48 cartons", Low: 1303, High: 1316},
			{Name: "setting", LowInput: "1350/h", HighInput: "1550/h", Low: 1284, High: 1301},
			{Name: "pallet change", LowInput: "20 s", HighInput: "30 s", Low: 1312, High: 1312},
		},
	}
}

func crowdedTornado() chart.Tornado {
	t := chart.Tornado{Caption: chart.Caption{Title: "Twenty inputs"}, Output: chart.Axis{Title: "cost", Unit: "EUR per thousand good cartons"}, Base: 0.00215}
	for k := range 20 {
		w := 0.0004 / float64(k+1)
		t.Swings = append(t.Swings, chart.Swing{
			Name:     fmt.Sprintf("input number %d of the study, whose long name tells what was assumed and who said so", k+1),
			LowInput: fmt.Sprintf("%d.5 fl oz per revolution", k), HighInput: fmt.Sprintf("%d.75 fl oz per revolution", k), Low: 0.00215 - w, High: 0.00215 + 1.4*w,
		})
	}
	return t
}

func states() []string {
	return []string{"working", "paced", "interlocked", "starved", "blocked", "stopped, awaiting an attendant", "stopped, being cleared", "reloading", "planned stop"}
}

func stateShares() chart.Shares {
	return chart.Shares{
		Caption: chart.Caption{Title: "What the stations do", Subtitle: "shares of scheduled time"}, States: states(),
		Rows: []chart.ShareRow{
			{Name: "erector", Shares: []float64{0.41, 0.08, 0.38, 0, 0.02, 0.012, 0.018, 0.04, 0.04}},
			{Name: "filler", Shares: []float64{0.62, 0.08, 0.20, 0.03, 0.02, 0.004, 0.006, 0, 0.04}},
			{Name: "sealer", Shares: []float64{0.81, 0.08, 0, 0.03, 0.02, 0.006, 0.014, 0, 0.04}, Mark: "bottleneck"},
			{Name: "robot", Shares: []float64{0.75, 0, 0, 0.15, 0, 0.02, 0.03, 0.01, 0.04}},
		},
	}
}

func crowdedShares() chart.Shares {
	s := chart.Shares{Caption: chart.Caption{Title: "Twenty stations"}, States: append(states(), "a state with quite a long name", "another state with a name as long", "last")}
	for k := range 20 {
		row := chart.ShareRow{Name: fmt.Sprintf("station %d", k+1), Shares: make([]float64, 12)}
		if k%7 == 3 {
			row.Name += " of the second packaging hall, next to the palletising robots"
		}
		for n := range row.Shares {
			row.Shares[n] = 1.0 / 12
		}
		row.Shares[k%12] += 0.05
		row.Shares[(k+5)%12] -= 0.05
		s.Rows = append(s.Rows, row)
	}
	return s
}

func lossSheet() chart.Waterfall {
	return chart.Waterfall{
		Caption: chart.Caption{Title: "Where the cartons go", Foot: "mean of 400 shifts of 8 h"}, Unit: "cartons per shift",
		From: "ideal: 1450/h for 8 h", To: "good", Ideal: 11600, Good: 10234,
		Losses: []chart.Loss{{"planned stops", 483}, {"cycle longer than the pace", 121}, {"erector: blank jam", 262}, {"erector: missed blank", 46},
			{"filler: nozzle drip", 35}, {"sealer: film jam", 198}, {"sealer: reject", 87}, {"robot: failed pick", 134}},
	}
}

func longLossSheet() chart.Waterfall {
	w := chart.Waterfall{Caption: chart.Caption{Title: "Twenty rows"}, Unit: "cartons per year", From: "ideal", To: "good", Ideal: 48e6}
	left := w.Ideal
	for k := range 18 {
		v := math.Round(4e6 / float64(k*k+1))
		if k == 9 {
			v = -120000
		}
		left -= v
		w.Losses = append(w.Losses, chart.Loss{Name: fmt.Sprintf("station %d: a cause of stops with a long name", k+1), Value: v})
	}
	w.Good = left
	return w
}

// rise is a cycloidal rise and return between degrees, as points of one revolution with velocities.
func rise(from, top, down, to, stroke float64, secondsPerDegree float64) (deg, pos, vel []float64) {
	for v := 0.0; v <= 360; v += 3 {
		p, q := 0.0, 0.0
		switch {
		case v > from && v < top:
			u := (v - from) / (top - from)
			p, q = u-math.Sin(2*math.Pi*u)/(2*math.Pi), (1-math.Cos(2*math.Pi*u))/(top-from)
		case v >= top && v <= down:
			p = 1
		case v > down && v < to:
			u := (v - down) / (to - down)
			p, q = 1-u+math.Sin(2*math.Pi*u)/(2*math.Pi), -(1-math.Cos(2*math.Pi*u))/(to-down)
		}
		deg, pos, vel = append(deg, v), append(pos, stroke*p), append(vel, stroke*q/secondsPerDegree/1000)
	}
	return deg, pos, vel
}

func cartonTiming() chart.Timing {
	const s = 2.483 / 360
	cd, cp, cv := rise(0, 120, 360.1, 361, 152.4, s)
	nd, np, nv := rise(125, 180, 275, 350, 210, s)
	pd, pp, pv := rise(180, 290, 300, 480, 162.6, s)
	return chart.Timing{
		Caption:    chart.Caption{Title: "Timing chart: oat drink, 64 fl oz cartons", Subtitle: "1450 cartons/h, one revolution of the master 2.483 s, master never stops", Foot: "Caution: moving servos and hot jaws maim. This chart is no substitute for a risk assessment to ISO 12100."},
		Revolution: 2483 * time.Millisecond, Index: &chart.Span{From: 0, To: 120}, Velocity: true,
		Curves: []chart.Curve{
			{Name: "conveyor", Detail: "modified sine", Unit: "mm", Degrees: cd, Position: cp, Velocity: cv, VelocityUnit: "m/s"},
			{Name: "nozzle", Detail: "cycloidal", Unit: "mm", Degrees: nd, Position: np, Velocity: nv, VelocityUnit: "m/s"},
			{Name: "piston", Detail: "polynomial 3-4-5", Unit: "mm", Degrees: pd, Position: pp, Velocity: pv, VelocityUnit: "m/s"},
		},
		Rows: []chart.WindowRow{
			{Name: "erector", Windows: []chart.Window{{Name: "turn", Span: chart.Span{From: 0, To: 120}, Critical: true}, {Name: "drop", Span: chart.Span{From: 120, To: 165}}, {Name: "bottom seal", Span: chart.Span{From: 165, To: 288}, Slack: 380 * time.Millisecond}}},
			{Name: "filler", Windows: []chart.Window{{Name: "nozzle in carton", Span: chart.Span{From: 125, To: 338}, Slack: 150 * time.Millisecond}}},
			{Name: "sealer", Windows: []chart.Window{{Name: "lag", Span: chart.Span{From: 120, To: 126}, Critical: true}, {Name: "close", Span: chart.Span{From: 126, To: 166}, Critical: true}, {Name: "dwell", Span: chart.Span{From: 166, To: 316}, Critical: true}, {Name: "open", Span: chart.Span{From: 316, To: 356}, Critical: true}}},
			{Name: "robot", Windows: []chart.Window{{Name: "pick and place", Span: chart.Span{From: 130, To: 75}, Slack: 379 * time.Millisecond}}},
		},
		Margins: []chart.Margin{
			{On: "sealer", Span: chart.Span{From: 356, To: 360}, Text: "smallest margin: jaws open before the index, 4 deg, 28 ms"},
			{On: "nozzle", Span: chart.Span{From: 338, To: 350}, Text: "nozzle tip above the rim before the index, 12 deg, 83 ms"},
		},
	}
}

func pausedTiming() chart.Timing {
	t := cartonTiming()
	t.Caption.Subtitle = "1450 cartons/h, master turns on demand: one revolution in 2 s, then it stands"
	t.Revolution, t.Pause, t.Velocity = 2*time.Second, 483*time.Millisecond, false
	t.Rows[2].Windows[3].Span.To = 440
	t.Rows[3].Windows[0].Slack = 300 * time.Millisecond
	t.Margins[0] = chart.Margin{On: "sealer", Span: chart.Span{From: 440, To: 446.9}, Text: "smallest margin: jaws open before the index, 38 ms"}
	return t
}

func crowdedTiming() chart.Timing {
	t := cartonTiming()
	t.Width = 720
	t.Curves = append(t.Curves, chart.Curve{Name: "bottom folding ploughs of the second lane", Detail: "trapezoidal velocity, 1/3 1/3 1/3", Unit: "mm", Stroke: 1234.5, Degrees: []float64{0, 360}, Position: []float64{0, 0}})
	for k := range 12 {
		row := chart.WindowRow{Name: fmt.Sprintf("station %d", k+1)}
		if k == 4 {
			row.Name = "checkweigher and rejecter of the second lane"
		}
		for n := range 6 {
			from := float64((k*23 + n*55) % 360)
			row.Windows = append(row.Windows, chart.Window{Name: fmt.Sprintf("act %d with a long name", n+1), Span: chart.Span{From: from, To: math.Mod(from+20+float64(n*3), 360)}, Critical: n == k%6, Slack: time.Duration(n%3) * 40 * time.Millisecond})
		}
		t.Rows = append(t.Rows, row)
	}
	for k := range 5 {
		t.Margins = append(t.Margins, chart.Margin{On: "piston", Span: chart.Span{From: 280 + float64(k), To: 300 + float64(k)}, Text: fmt.Sprintf("margin %d", k)})
	}
	return t
}

func caseRanges() chart.Ranges {
	return chart.Ranges{
		Caption: chart.Caption{Title: "A second robot brings most: 162 cartons a shift", Subtitle: "Oat drink, one lane", Foot: "95 % intervals over all cases together; 200 shifts, seed 1"},
		X:       chart.Axis{Title: "difference from the base", Unit: "cartons a shift"},
		Rows: []chart.RangeRow{
			{Name: "longer dwell, and a name that takes rather more than one line of the column", At: -225, Low: -240, High: -210, Words: "-225 (-2.3 %)"},
			{Name: "second robot", At: 162, Low: 150, High: 175, Words: "+162 (+1.6 %)", Strong: true},
			{Name: "other glue", At: 3, Low: -12, High: 18, Words: "~", Hollow: true},
			{Name: "no spread", At: 40, Low: math.Inf(-1), High: math.Inf(1), Words: "+40"},
		},
		References: []chart.Reference{{Label: "no difference", At: 0, Vertical: true}},
		Idle:       chart.Idle{Label: "too small to matter", From: -50, To: 50},
	}
}

func costRanges() chart.Ranges {
	return chart.Ranges{
		Caption: chart.Caption{Title: "Hotter jaws cost least of those that make the demand"},
		X:       chart.Axis{Title: "cost a year", Unit: "EUR"}, Bars: true,
		Rows: []chart.RangeRow{{Name: "hotter jaws", At: 218743, Low: 217000, High: 220500, Words: "99 %", Strong: true}, {Name: "as it is", At: 190000, Low: math.NaN(), High: math.NaN(), Words: "2 %", Hollow: true}},
	}
}

func cartonPlan() chart.Plan {
	return chart.Plan{
		Caption: chart.Caption{Title: "The sealer limits: it needs a cycle of 2.44 s", Subtitle: "Oat drink, one lane"},
		Stations: []chart.PlanStation{
			{Name: "erector", Words: []string{"erect", "act 0.85 s", "slack 0.4 s"}},
			{Name: "filler", Words: []string{"fill", "act 1.4 s", "slack 0.1 s"}, Feed: chart.PlanFeed{Pitches: 2, Words: "2 pitches"}},
			{Name: "sealer with a name of some length", Words: []string{"seal", "act 1.61 s"}, Limits: true, Feed: chart.PlanFeed{Pitches: 9, Words: "9 pitches"}},
			{Name: "robot", Words: []string{"offload x 2", "act 2.1 s"}, Units: 2, Feed: chart.PlanFeed{Buffered: true, Room: 24, Words: "24 cartons, 4 s in transit"}},
			{Name: "packer", Words: []string{"machine"}, Feed: chart.PlanFeed{Buffered: true, Room: 4, Words: "4 cartons"}},
			{Name: "palletiser", Words: []string{"offload"}, Feed: chart.PlanFeed{Buffered: true, Unlimited: true, Words: "no limit"}},
			{Name: "wrapper", Words: []string{"machine"}, Feed: chart.PlanFeed{Buffered: true, Words: "hand to hand"}},
		},
		People: "1 operator, there in 20 s on average",
	}
}
