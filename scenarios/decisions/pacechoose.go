package decisions

import (
	"context"
	"math"
	"slices"

	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/stats"
)

// pacing is a selection under way.
type pacing struct {
	ctx         context.Context
	lab         *scenarios.Lab
	file        *scenarios.File
	spec        PaceSpec
	inputs      []Input
	done, total int
}

// atSetting is the line at another setting.
func atSetting(f *scenarios.File, setting float64) (*scenarios.File, error) {
	return f.With("setting=" + quantity.FormatRate(setting))
}

// choose selects among settings; at makes the line at one of them.
func (p *pacing) choose(settings []float64, at func(*scenarios.File, float64) (*scenarios.File, error)) (*Choice, error) {
	c := &chooser{pacing: p}
	for _, setting := range settings {
		f, err := at(p.file, setting)
		if err != nil {
			return nil, err
		}
		shifts, err := extend(p.ctx, p.lab, f, p.spec.Replications)
		if err != nil {
			return nil, err
		}
		c.files, c.shifts = append(c.files, f), append(c.shifts, shifts)
		c.rows, c.used = append(c.rows, SettingRow{Setting: setting}), append(c.used, p.spec.Replications)
		p.tell()
	}
	best, guaranteed, err := c.best()
	if err != nil {
		return nil, err
	}
	return c.choice(best, guaranteed)
}

// expect foresees how many shifts there will be.
func (p *pacing) expect(settings int, band bool) {
	if p.isFine() {
		settings += fineSteps - 1
	}
	p.total = settings
	if band {
		p.total *= 1 + len(p.spec.Exponents)
	}
	ends, _ := endsOf(p.inputs, "setting")
	p.total += len(ends)
}

func (p *pacing) tell() {
	p.done++
	if p.spec.Progress != nil {
		p.spec.Progress(min(p.done, p.total)*p.spec.Replications, p.total*p.spec.Replications)
	}
}

// fineSteps is into how many steps the last one below the recommended setting is divided.
const fineSteps = 5

// isFine says that settings may be added about the answer.
func (p *pacing) isFine() bool { return p.spec.List == nil && p.spec.Settings == 0 }

// chooseFinely selects among settings, and then among these and some more just below the one recommended.
func (p *pacing) chooseFinely(settings []float64, at func(*scenarios.File, float64) (*scenarios.File, error)) (*Choice, error) {
	c, err := p.choose(settings, at)
	if err != nil || c.Recommended == 0 || !p.isFine() {
		return c, err
	}
	low, high := settings[c.Recommended-1], settings[c.Recommended]
	finer := slices.Clone(settings)
	for k := 1; k < fineSteps; k++ {
		setting := math.Round(low + (high-low)*float64(k)/fineSteps)
		f, err := atSetting(p.file, setting)
		if err != nil {
			return nil, err
		}
		if scenarios.Refusal(f) == "" {
			finer = append(finer, setting)
		}
	}
	slices.Sort(finer)
	p.done -= len(settings)
	return p.choose(slices.Compact(finer), at)
}

// row sums up the shifts at a setting.
func (p *pacing) row(setting float64, shifts *scenarios.Shifts) SettingRow {
	r := shifts.Forecast()
	top, share := topHolder(r)
	good := shifts.Good()[:p.spec.Replications] // the same shifts for every setting
	row := SettingRow{
		Setting: setting, Replications: len(good), Good: stats.MeanInterval(good, p.spec.Confidence),
		Rejects: RejectsPerShift(r), Stops: StopsPerHour(r), Load: r.CrewLoad, Holder: top, HolderShare: share,
	}
	row.Rate = scaled(row.Good, 1/r.Scheduled.Hours())
	if p.spec.Target > 0 {
		row.Chance = chanceOf(good, p.spec.Target, p.spec.Confidence)
	}
	return row
}

func chanceOf(good []float64, target, conf float64) stats.Interval {
	made := 0
	for _, g := range good {
		made += int(madeIt(g, target))
	}
	return stats.Wilson(made, len(good), conf)
}

// chooser holds the lines of a selection.
type chooser struct {
	*pacing
	files  []*scenarios.File
	shifts []*scenarios.Shifts
	rows   []SettingRow
	used   []int // shifts of each that this selection looks at; more may be known, from a run that is gone on from
	delta  float64
}

// best runs the procedure KN; it reports whether the procedure came to its end. Dropped rows are marked.
func (c *chooser) best() (best int, guaranteed bool, err error) {
	highest := 0.0
	for _, shifts := range c.shifts {
		highest = max(highest, average(shifts.Good()[:c.spec.Replications]))
	}
	c.delta = c.spec.Zone * highest
	if c.delta <= 0 {
		return 0, false, mistake("dwellcast run shows where the cartons go", "not one good carton comes out at any setting")
	}
	kn, err := stats.NewKN(len(c.rows), c.spec.Replications, 1-c.spec.Confidence, c.delta)
	if err != nil {
		return 0, false, err
	}
	for n := 0; ; n++ {
		if chosen, ok := kn.Selected(); ok {
			return chosen, true, nil
		}
		if n >= c.spec.MostReplications {
			return c.leader(kn.Surviving(), n), false, nil
		}
		if err := c.feed(kn, n); err != nil {
			return 0, false, err
		}
	}
}

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// addedAtOnce is how many shifts a survivor gets when the selection asks for more.
const addedAtOnce = 50

// feed gives the procedure shift n of the settings that survive.
func (c *chooser) feed(kn *stats.KN, n int) error {
	outputs := make([]float64, len(kn.Surviving()))
	for j, i := range kn.Surviving() {
		if c.used[i] <= n {
			c.used[i] = min(n+addedAtOnce, c.spec.MostReplications)
			if _, err := extend(c.ctx, c.lab, c.files[i], c.used[i]); err != nil {
				return err
			}
		}
		outputs[j] = c.shifts[i].Good()[n]
	}
	dropped, err := kn.Add(outputs)
	for _, i := range dropped {
		c.rows[i].Dropped = true
	}
	return err
}

// leader is the survivor of the highest mean over the first n shifts.
func (c *chooser) leader(alive []int, n int) int {
	return slices.MaxFunc(alive, func(a, b int) int {
		return compare(average(c.shifts[a].Good()[:n]), average(c.shifts[b].Good()[:n]))
	})
}

// choice compares every setting with the best, and finds the lowest that is within the zone.
func (c *chooser) choice(best int, guaranteed bool) (*Choice, error) {
	for i := range c.rows {
		dropped := c.rows[i].Dropped
		c.rows[i] = c.row(c.rows[i].Setting, c.shifts[i])
		c.rows[i].Dropped = dropped
		c.rows[i].Behind = c.together(best, i)
		c.rows[i].Within = i == best || c.within(i)
	}
	out := &Choice{Rows: c.rows, Best: best, Recommended: best, Delta: c.delta, Guaranteed: guaranteed}
	for out.Recommended > 0 && c.rows[out.Recommended-1].Within {
		out.Recommended--
	}
	for i, f := range c.files {
		if i == best || i == out.Recommended || c.rows[i].Setting == c.file.Line.Setting {
			continue
		}
		if err := c.lab.Release(f); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// paired is how far setting i lies below setting j, over the shifts looked at of both.
func (c *chooser) paired(j, i int, conf float64) stats.Interval {
	n := min(c.used[i], c.used[j])
	return stats.PairedInterval(c.shifts[j].Good()[:n], c.shifts[i].Good()[:n], conf)
}

// together is how far setting i lies below setting j over the shifts that all settings have.
func (c *chooser) together(j, i int) stats.Interval {
	n := c.spec.Replications
	return stats.PairedInterval(c.shifts[j].Good()[:n], c.shifts[i].Good()[:n], c.spec.Confidence)
}

// within says that no setting is shown to lie above this one by as much as the zone leaves open: by one-sided intervals against each of
// them, so that it holds against the best whichever that is. Going down from the best and ending at the first that fails, the tests hold
// together at the confidence of one (a fixed sequence).
func (c *chooser) within(i int) bool {
	twoSided := 2*c.spec.Confidence - 1
	for j := range c.rows {
		if j != i && c.paired(j, i, twoSided).High > c.delta {
			return false
		}
	}
	return true
}
