package decisions_test

import (
	"math"
	"testing"

	"dwellcast/scenarios/decisions"
)

// The worth of a cause without chance is exact: the bench line whose sealer outlasts the pace by 0.38 s a cycle makes as many
// cartons without that as the setting allows. Only the sealer limits it, so that an act that fits the pace brings all.
func TestWorthWithoutChance(t *testing.T) {
	answer := explained(t, undisturbed(t, "sealer.dwell=1.6 s"), decisions.ExplainSpec{Replications: 3})
	if len(answer.Worths) != 1 {
		t.Fatalf("%+v", answer.Worths)
	}
	w := answer.Worths[0]
	cycles := func(period float64) float64 { return math.Floor(8 * 3600 / period) }
	if want := cycles(2.4) - cycles(2.78); w.Where != "sealer" || math.Abs(w.Brings.Mean-want) > 2 || w.Brings.HalfWidth() != 0 {
		t.Errorf("%+v, want about %v", w, want)
	}
	if answer.Together != w.Brings || answer.Interaction.Mean != 0 {
		t.Errorf("together %v, interaction %v", answer.Together, answer.Interaction)
	}
}

// Elasticities without chance: a cycle of 0.60 s index and 2.18 s seal is all of the time, so that one percent of the sealer's
// speed brings 2.18/2.78 = 0.784 %, the conveyor's the rest, and nobody else's anything. Counting whole cartons and filling the
// line at the start of the shift make it a little more.
func TestElasticityWithoutChance(t *testing.T) {
	answer := explained(t, undisturbed(t, "sealer.dwell=1.6 s"), decisions.ExplainSpec{Replications: 2})
	want := map[string]float64{"sealer": 2.18 / 2.78, "conveyor (index and revolution)": 0.60 / 2.78}
	for _, row := range answer.Elasticities {
		if math.Abs(row.Middle.Mean-want[row.Name]) > 0.003 {
			t.Errorf("%s: %v, want %.4f", row.Name, row.Middle.Mean, want[row.Name])
		}
	}
	if math.Abs(answer.Sum.Middle.Mean-answer.Shift.Middle.Mean) > 0.01 || named(answer.BySpeed) != "sealer" || answer.Agreement != decisions.Agree {
		t.Errorf("sum %v, shift %v, by speed %s, %v", answer.Sum.Middle, answer.Shift.Middle, named(answer.BySpeed), answer.Agreement)
	}
}

// All faster is the same as a longer shift: the elasticities sum to that of the shift's length, on a line with everything on it.
func TestElasticitiesSumToTheShift(t *testing.T) {
	answer := explained(t, example(t, "mixed-line", "shift={length: 2 h}"), decisions.ExplainSpec{Replications: 12, Step: 0.02, Confidence: 0.99})
	if gap := answer.Sum.Middle.Mean - answer.Shift.Middle.Mean; math.Abs(gap) > answer.Sum.Middle.HalfWidth()+answer.Shift.Middle.HalfWidth() || answer.Sum.Middle.HalfWidth() > 0.3 {
		t.Errorf("sum %v, shift %v", answer.Sum.Middle, answer.Shift.Middle)
	}
}

// Worths and what is left over sum to the whole, and all that the loss sheet charges a good deal for is looked at.
func TestWorthsSumToTheWhole(t *testing.T) {
	answer := explained(t, example(t, "oat-drink"), decisions.ExplainSpec{Replications: 10})
	sum := answer.Interaction.Mean
	for _, w := range answer.Worths {
		sum += w.Brings.Mean
	}
	if math.Abs(sum-answer.Together.Mean) > 1e-6 {
		t.Errorf("worths and interaction sum to %v, all together %v", sum, answer.Together.Mean)
	}
	looked := map[string]bool{}
	for _, w := range answer.Worths {
		looked[w.Where+"/"+w.Cause] = true
	}
	for _, l := range answer.Base.Losses {
		if name := l.Where + "/" + l.Cause; l.Cartons.Mean > 25 && !looked[name] {
			t.Errorf("%s costs %.1f cartons a shift, but nobody looked at its worth", name, l.Cartons.Mean)
		}
	}
}

// Who is last to report clear need not be whose speed counts most: with an index of 2.20 s the sealer ends every cycle, but its
// 1.73 s are less than half of it. Cartons are whole: one in 7300, over a step of 2 %, is 0.007 of an elasticity.
func TestDisagreement(t *testing.T) {
	answer := explained(t, undisturbed(t, "conveyor={index: 2.2 s}", "filler.fill=1 s"), decisions.ExplainSpec{Replications: 2})
	if named(answer.ByPeriods) != "sealer" || named(answer.BySpeed) != "conveyor (index)" || answer.Agreement != decisions.Disagree {
		t.Errorf("by periods %s, by speed %s, %v", named(answer.ByPeriods), named(answer.BySpeed), answer.Agreement)
	}
	if want := (2.20 - 1.73) / 3.93; math.Abs(answer.Ahead.Mean-want) > 0.014 {
		t.Errorf("ahead by %v, want %.4f", answer.Ahead, want)
	}
}

func named(row *decisions.Elasticity) string {
	if row == nil {
		return ""
	}
	return row.Name
}

// Words don't decide what is what: a stop named as misses are, and stations named as the shift and the crew are, get their own worth
// and speed. Without misses, stops cost all; without stops, misses cost the few cartons that they are.
func TestNamesThatMeanSomethingElse(t *testing.T) {
	text := "setting: 1500 cartons/h\nshift: {length: 8 h}\nconveyor: {index: 0.6 s}\nstations:\n" +
		"  - {name: crew (reaction), kind: erect, bottom_seal: 0.9 s, miss: 1 %, stops: [{cause: missed, every: 500 cartons, clear: 10 min}]}\n" +
		"  - {name: shift, kind: machine, cycle: 1 s, after: {pitches: 1}}\n"
	answer := explained(t, read(t, text), decisions.ExplainSpec{Replications: 4})
	if len(answer.Worths) != 2 || answer.Worths[0].Brings.Mean < 1000 || answer.Worths[1].Brings.Mean > 500 {
		t.Errorf("%+v", answer.Worths)
	}
	for _, row := range answer.Elasticities {
		if row.Name == "shift" && row.Faster.Mean != 0 {
			t.Errorf("a machine that never limits brings %v", row.Faster)
		}
	}
}

// A figure whose name is that of two is refused, and a station named as the setting is not the setting.
func TestFiguresOfOneNameAreRefused(t *testing.T) {
	f := read(t, "setting: 1500 cartons/h\nshift: {length: 1 h}\nconveyor: {index: 0.6 s}\nstations:\n"+
		"  - {name: the setting, kind: erect, bottom_seal: 3 s, miss: 1 %, stops: [{cause: missed, every: 500 cartons, clear: 1 min}]}\n"+
		"  - {name: robot, kind: offload, cycle: 1 s, after: {pitches: 1}}\n")
	if _, err := decisions.ParseFigure("the setting.missed", f); err == nil {
		t.Error("a name of two figures is taken for one")
	}
	answer := explained(t, f, decisions.ExplainSpec{Replications: 2})
	for _, row := range answer.Elasticities {
		if row.Name == "pace of the setting" && (row.Holder != decisions.SettingHolds || row.PeriodShare.Mean > 0.01) {
			t.Errorf("the setting holds %v, although a station of that name is slower", row.PeriodShare)
		}
	}
	if got := answer.ByPeriods; got == nil || got.Holder.Kind != decisions.AStation || got.Holder.Station != 0 {
		t.Errorf("%+v holds the bottleneck", got)
	}
}
