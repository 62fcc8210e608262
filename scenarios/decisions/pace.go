package decisions

import (
	"context"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
)

// PaceSpec says which settings to compare, and what counts as no difference.
type PaceSpec struct {
	// From and To bound the settings in cartons/h; 0 takes 70 % of what the line can follow, and the ceiling.
	From, To float64
	// Settings is how many to compare; 0 takes about 16 at a round step, and some more about the answer.
	Settings int
	// List gives the settings one by one instead, rising.
	List []float64
	// Zone is the share of the best output below which a difference does not matter; 0 takes 0.005.
	Zone float64
	// Target is the wanted number of good cartons per shift; 0 takes the file's.
	Target float64
	// Replications is the number of shifts at each setting; 0 takes 100. The selection adds more where it needs them, up to
	// MostReplications; 0 takes 20 times as many.
	Replications, MostReplications int
	// Confidence of the intervals and of the selection; 0 takes 0.95.
	Confidence float64
	// Exponents are the powers of the speed with which stops, misses and rejects may grow where the file does not say; nil takes
	// 1 and 2.
	Exponents []float64
	// Progress, if set, is told how many of how many shifts are done.
	Progress func(done, total int)
}

// Pace is the recommended setting, with the reason.
type Pace struct {
	Title        string
	Seed         uint64
	Replications int
	Confidence   float64
	Zone         float64
	// Today is the setting of the file.
	Today  float64
	Target float64
	// Ceiling is the highest setting that was looked at, and CeilingWhy where it comes from.
	Ceiling    float64
	CeilingWhy string
	// Mechanics is the highest setting that the mechanics of the line allow, and MechanicsWhy what binds there; 0 where the file
	// describes times alone.
	Mechanics    float64
	MechanicsWhy string
	// Skipped are settings in the range that the line may not be run at, and were not compared.
	Skipped []SkippedSetting
	// TodayRefused says which limit today's setting breaks; empty where it keeps all.
	TodayRefused string
	// Follows is the highest setting that the slowest station, or the master, can follow; +Inf where nothing takes time.
	Follows     float64
	FollowsName string
	Choice
	// Makes is the slowest row whose average surely makes the target, -1 for none; MayMake says that some average may.
	Makes   int
	MayMake bool
	// Next is what five percent more speed than recommended would bring or cost.
	Next *Faster
	// Now compares the recommended setting with today's; nil where they are the same.
	Now *Faster
	// Tables are the causes whose chance the file gives by setting, and Untabled those that it takes for independent of it.
	Tables, Untabled []string
	// Band is the answer if the untabled causes grew with a power of the speed.
	Band []Band
	// Ranges is what becomes of the recommendation at the ends of the file's ranges.
	Ranges
	Warnings []scenarios.Warning
}

// judgeTarget finds the slowest setting that makes the target.
func (a *Pace) judgeTarget() {
	a.Makes = -1
	for i := range a.Rows {
		if a.Makes < 0 && a.Rows[i].Good.Low >= a.Target {
			a.Makes = i
		}
		a.MayMake = a.MayMake || a.Rows[i].Good.High >= a.Target
	}
}

// SkippedSetting is one that a limit forbids.
type SkippedSetting struct {
	Setting float64
	Refused string
}

// Choice is the selection among settings.
type Choice struct {
	Rows []SettingRow
	// Best and Recommended are indices into Rows.
	Best, Recommended int
	// Delta is the indifference zone in good cartons per shift.
	Delta float64
	// Guaranteed says that the selection came to its end, so that its guarantee holds.
	Guaranteed bool
}

// SettingRow is what a setting gives.
type SettingRow struct {
	Setting      float64
	Replications int
	// Good is per shift, Rate cartons/h.
	Good, Rate stats.Interval
	// Behind is how far its output lies below the best one's, shift by shift.
	Behind stats.Interval
	// Chance of the target, where there is one.
	Chance stats.Interval
	// Rejects per shift, Stops an hour and Load of the attendants.
	Rejects     float64
	Stops, Load stats.Interval
	Holder      Holder
	HolderShare float64
	// Dropped says that the selection put it out of the running.
	Dropped bool
	// Within says that it was shown to be within the zone of the best.
	Within bool
}

// Faster compares two settings on the same shifts.
type Faster struct {
	From, To SettingRow
	// Gain is the good cartons a shift that the second makes more than the first.
	Gain stats.Interval
	// Refused says which limit the second breaks; empty where it keeps all.
	Refused string
	// Grown are the losses that grow most, largest first, the pace itself left out.
	Grown []LossChange
}

// LossChange is a row of the loss sheet at two settings, cartons per shift.
type LossChange struct {
	Where, Cause  string
	Before, After float64
}

// Band is the answer where the untabled causes grow with a power of the speed.
type Band struct {
	Exponent float64
	Choice
	// Failed says why there is none.
	Failed string
}

// RunPace compares settings on common random numbers. The best is selected by the procedure KN (Kim and Nelson 2001), the shifts
// that every setting gets being its first stage; then the lowest setting is recommended that, going down from the best one
// setting at a time, is shown by a one-sided paired interval to lie within the indifference zone.
func RunPace(ctx context.Context, lab *scenarios.Lab, f *scenarios.File, seed uint64, spec PaceSpec) (*Pace, error) {
	spec = spec.withDefaults(f)
	if err := spec.check(f); err != nil {
		return nil, err
	}
	a := &Pace{
		Title: f.Line.Title, Seed: seed, Replications: spec.Replications, Confidence: spec.Confidence, Zone: spec.Zone,
		Today: f.Line.Setting, Target: spec.Target, Warnings: f.Cautions(), TodayRefused: scenarios.Refusal(f),
	}
	a.Tables, a.Untabled = speedCauses(f)
	settings, err := a.settings(ctx, f, spec)
	if err != nil {
		return nil, err
	}
	p := &pacing{ctx: ctx, lab: lab, file: f, spec: spec, inputs: InputsOf([]string{""}, []*scenarios.File{f}, nil)}
	if settings, err = p.allowed(settings, a); err != nil {
		return nil, err
	}
	p.expect(len(settings), len(a.Untabled) > 0)
	choice, err := p.chooseFinely(settings, atSetting)
	if err != nil {
		return nil, err
	}
	a.Choice = *choice
	a.judgeTarget()
	if err := p.neighbours(a); err != nil {
		return nil, err
	}
	if err := p.band(a, settings); err != nil {
		return nil, err
	}
	return a, p.ranges(a)
}

func (s PaceSpec) withDefaults(f *scenarios.File) PaceSpec {
	if s.Zone == 0 {
		s.Zone = 0.005
	}
	if s.Target == 0 {
		s.Target = f.Target
	}
	if s.Replications <= 0 {
		s.Replications = 100
	}
	if s.MostReplications <= 0 {
		s.MostReplications = min(20*s.Replications, scenarios.MaxReplications)
	}
	if s.Confidence == 0 {
		s.Confidence = 0.95
	}
	if s.Exponents == nil {
		s.Exponents = []float64{1, 2}
	}
	return s
}

func (s PaceSpec) check(f *scenarios.File) error {
	switch {
	case f.Line.Setting == 0:
		return mistake("add setting: 1450 cartons/h to it", "%s has no setting, so nothing paces the line", f.Name)
	case s.Replications < 2:
		return mistake("give 2 at least", "the selection needs more than one shift at each setting")
	case s.MostReplications < s.Replications:
		return mistake("give more", "at the most %d shifts are fewer than the %d of every setting", s.MostReplications, s.Replications)
	case s.From < 0 || s.To < 0 || s.To > 0 && s.From >= s.To:
		return mistake("write --from 1200cartons/h --to 1600cartons/h", "the settings run backwards")
	}
	return needShifts(f)
}
