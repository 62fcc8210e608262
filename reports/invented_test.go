package reports_test

import (
	"math"
	"time"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// around is an interval of the given half-width; the figures below are invented.
func around(mean, half float64) stats.Interval {
	return stats.Interval{Mean: mean, Low: mean - half, High: mean + half, N: 200, Confidence: 0.95}
}

func unassessed(mean float64) stats.Interval {
	return stats.Interval{Mean: mean, Low: math.Inf(-1), High: math.Inf(1), N: 1, Confidence: 0.95}
}

// sharesOf fills the nine states in their order, in thousandths.
func sharesOf(thousandths ...float64) (shares [stations.NumStates]stats.Interval) {
	for i, share := range thousandths {
		shares[i] = around(share/1000, 0.002)
	}
	return shares
}

// invented is a forecast of no real line; ideal = good + losses holds in whole cartons over 200 shifts.
func invented() *scenarios.Forecast {
	f := &scenarios.Forecast{
		Title: "Oat drink, 64 fl oz cartons, one lane", Version: "test", Seed: 1, Replications: 200, Confidence: 0.95,
		Setting: 1450, Scheduled: 8 * time.Hour, IdealPerShift: 11600, Indicators: scenarios.Indicators{Availability: 0.96, Effectiveness: 0.98, Quality: 0.995, OEE: 0.936096}, SettingShare: around(0.712, 0.011), MasterShare: around(0, 0),
		CrewLoad: around(0.231, 0.009), Attendants: 1,
		Target: &scenarios.Target{PerShift: 10000, Chance: stats.Interval{Mean: 0.845, Low: 0.788, High: 0.889, N: 200, Confidence: 0.95}},
	}
	f.Losses = []scenarios.Loss{
		loss("plan", "start-up", stations.PlannedStop, 72500, 0),
		loss("plan", "break", stations.PlannedStop, 96667, 0),
		loss("erector", "blank jam", stations.Stoppage, 41234, 9.1),
		loss("sealer", "jaw jam", stations.Stoppage, 30333, 11.7),
		loss("erector", "missed", stations.Missed, 8333, 0.6),
		loss("sealer", "act longer than the pace", stations.SlowAct, 71, 0.02),
		loss("sealer", "rejected", stations.Rejected, 4101, 0.5),
		loss("robot", "waits for pallet | places", stations.Reload, 17777, 3.2),
		loss("line", "filling the line", stations.Filling, 1400, 0),
		loss("line", "left on the line at the end", stations.LeftOnLine, 2444, 1.1),
	}
	good := f.IdealPerShift * 200
	for _, l := range f.Losses {
		good -= float64(l.Total)
	}
	mean := good / 200
	f.GoodPerShift = scenarios.Spread{Interval: around(mean, 41), SD: 296, P10: 9870, P50: 10271, P90: 10597}
	f.GoodRate = around(mean/8, 41.0/8)
	f.Stations = []scenarios.StationForecast{
		{Name: "erector", Kind: "erect", Units: 1, Shares: sharesOf(540, 262, 31, 0, 12, 21, 62, 0, 72), BottleneckShare: around(0.074, 0.004),
			Waits: []scenarios.Wait{{State: stations.Blocked, Where: "robot", What: "waits for pallet | places", Minutes: 5.8}}},
		{Name: "filler", Kind: "fill", Units: 1, Shares: sharesOf(682, 148, 86, 0, 12, 0, 0, 0, 72), BottleneckShare: around(0, 0)},
		{Name: "sealer", Kind: "seal", Units: 1, Shares: sharesOf(811, 0, 56, 0, 12, 16, 33, 0, 72), BottleneckShare: around(0.182, 0.012)},
		{Name: "robot", Kind: "offload", Units: 2, Shares: sharesOf(640, 0, 0, 241, 0, 11, 36, 0, 72), BottleneckShare: around(0.032, 0.003),
			Waits: []scenarios.Wait{
				{State: stations.Starved, Where: "setting", What: "pace of the setting", Minutes: 71.3},
				{State: stations.Starved, Where: "erector", What: "blank jam", Minutes: 22.2},
				{State: stations.Starved, Where: "sealer", What: "jaw jam", Minutes: 14.3},
				{State: stations.Starved, Where: "erector", What: "missed", Minutes: 7.1},
				{State: stations.Starved, Where: "line", What: "filling the line", Minutes: 0.8},
			}},
	}
	f.Stops = []scenarios.StopForecast{
		{Where: "erector", Cause: "blank jam", PerShift: around(11.4, 0.5), Seen: 2281, AwaitingMinutes: 4.1, ClearingMinutes: 10.6, CartonsLost: 206.17},
		{Where: "sealer", Cause: "jaw jam", PerShift: around(6.9, 0.4), Seen: 1385, AwaitingMinutes: 2.6, ClearingMinutes: 13.9, CartonsLost: 151.665},
		{Where: "sealer", Cause: "drive fault", Seen: 0},
		{Where: "robot", Cause: "waits for pallet | places", Reload: true, PerShift: around(85.1, 0.4), Seen: 17020, AwaitingMinutes: 11.2, ClearingMinutes: 35.4, CartonsLost: 88.9},
	}
	f.Buffers = []scenarios.BufferForecast{{Before: "robot", Capacity: 24, MeanContent: around(6.31, 0.21), EmptyShare: 0.082, FullShare: 0.013,
		MeanWait: 17400 * time.Millisecond, WaitedShare: 0.644, Through: 10284}}
	f.Warnings = []scenarios.Warning{
		{About: "stop sealer/drive fault", Text: "never happened in 200 shifts; it is expected once in 640"},
		{About: "good_rate", Text: "the interval is wider than 0.5 % of the rate; run more shifts"},
		{About: "setting", Text: "no stop depends on the setting, so faster always looks better"},
	}
	return f
}

func loss(where, cause string, kind stations.ReasonKind, total int64, half float64) scenarios.Loss {
	return scenarios.Loss{Where: where, Cause: cause, Kind: kind, Cartons: around(float64(total)/200, half), Total: total}
}
