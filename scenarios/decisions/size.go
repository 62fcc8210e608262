package decisions

import (
	"context"
	"fmt"

	"dwellcast/scenarios"
)

// Size judges candidates by what they make in a year and what they cost. All of them meet the same luck, shift by shift.
//
// The output of a year is the sum of as many independent shifts as the net hours come to; by the central limit theorem it is
// normal, with the mean of a shift times their number, and the standard deviation of a shift times its square root.
func Size(ctx context.Context, lab *scenarios.Lab, seed uint64, spec SizeSpec) (*Sizing, error) {
	spec = spec.WithDefaults()
	if len(spec.Candidates) == 0 {
		return nil, mistake("write candidates: in the section size: of the study", "no candidates to choose from")
	}
	if !spec.Demand.Given() {
		return nil, mistake("write demand: in the section size: of the study", "no demand to make")
	}
	a := &sizing{ctx: ctx, lab: lab, spec: spec, ceilings: map[*scenarios.File]ceiling{}, beyond: map[*scenarios.File][]scenarios.LimitFinding{}}
	a.total = spec.Replications * len(spec.Candidates)
	if !spec.AsSet {
		a.total *= 3 // with the settings that will be tried, about
	}
	for most := moreShifts * spec.Replications; ; a.spec.Replications = min(2*a.spec.Replications, most) {
		answer, err := a.sized(seed)
		if err != nil || answer.Undecided < 0 || spec.AsSet || a.spec.Replications >= most {
			return answer, err
		}
	}
}

// moreShifts is how many times as many shifts are run at the most, while the choice is open.
const moreShifts = 8

// sized judges all candidates by so many shifts.
func (a *sizing) sized(seed uint64) (*Sizing, error) {
	answer := &Sizing{Seed: seed, Spec: a.spec}
	for _, c := range a.spec.Candidates {
		s, err := a.judge(c)
		if err != nil {
			return nil, err
		}
		answer.Candidates = append(answer.Candidates, *s)
	}
	answer.costAll()
	answer.findDominated()
	answer.choose()
	answer.warn()
	return answer, nil
}

// sizing is a sizing under way.
type sizing struct {
	ctx         context.Context
	lab         *scenarios.Lab
	spec        SizeSpec
	done, total int
	ceilings    map[*scenarios.File]ceiling
	beyond      map[*scenarios.File][]scenarios.LimitFinding
}

// judge runs a candidate at its own setting, looks for the setting that the demand needs, and settles where it is to run.
func (a *sizing) judge(c SizeCandidate) (*Sized, error) {
	c.File = c.File.Shiftwise()
	if net := c.Calendar.Net(c.File.Line.Shift); !(net > 0) {
		return nil, mistake("take less off, or schedule more days or shifts", "%s: breaks, cleaning and changeovers leave no time to run", c.Name)
	}
	own, err := a.at(c, c.File)
	if err != nil {
		return nil, err
	}
	own.Own = own.Chance
	if !a.spec.AsSet && c.File.Line.Setting > 0 {
		if own.Needed, err = a.needed(own); err != nil {
			return nil, err
		}
		if own, err = a.raise(own); err != nil {
			return nil, err
		}
	}
	if own.Beyond, err = a.beyondCeiling(own.File); err != nil {
		return nil, err
	}
	own.LinesNeeded = a.linesNeeded(own)
	return own, nil
}

// beyondCeiling lists the limits that a line's setting breaks, once for all candidates that have it.
func (a *sizing) beyondCeiling(f *scenarios.File) ([]scenarios.LimitFinding, error) {
	if list, met := a.beyond[f]; met {
		return list, nil
	}
	list, err := awaited(a.ctx, func() []scenarios.LimitFinding { return scenarios.BeyondCeiling(f) })
	if err == nil {
		a.beyond[f] = list
	}
	return list, err
}

// raise takes a candidate to the setting needed where its own falls short of the demand and that one does not.
func (a *sizing) raise(own *Sized) (*Sized, error) {
	if own.Verdict == Makes || !own.Needed.Found {
		return own, nil
	}
	c := own.SizeCandidate
	raised, err := a.at(c, own.Needed.file)
	if err != nil {
		return nil, err
	}
	raised.File = own.Needed.file
	raised.Raised, raised.Own, raised.Needed = true, own.Own, own.Needed
	return raised, nil
}

// at runs a candidate's line, perhaps changed, and works out its year.
func (a *sizing) at(c SizeCandidate, f *scenarios.File) (*Sized, error) {
	n := a.spec.Replications
	shifts, err := a.lab.Shifts(f)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", c.Name, err)
	}
	interrupted, err := shifts.Extend(a.ctx, n)
	switch {
	case err != nil:
		return nil, fmt.Errorf("%s: %w", c.Name, err)
	case interrupted:
		return nil, ErrInterrupted
	}
	a.done += n
	if a.spec.Progress != nil {
		a.total = max(a.total, a.done)
		a.spec.Progress(a.done, a.total)
	}
	s := &Sized{SizeCandidate: c, Setting: f.Line.Setting, shifts: shifts}
	s.fillYear(a.spec, shifts.Good()[:n])
	return s, nil
}

// linesNeeded is the least number of such lines whose chance is sure to be as wanted.
func (a *sizing) linesNeeded(s *Sized) int {
	one := float64(s.YearShifts) * s.PerShift.Low
	spread := s.ShiftSD * s.ShiftSD * s.YearShifts
	for k := 1; k <= 100; k++ {
		if a.spec.Demand.Chance(float64(k)*one, sqrt(float64(k)*spread)) >= a.spec.Chance {
			return k
		}
	}
	return 0
}

// warn collects what the reader should know of the files, each once.
func (z *Sizing) warn() {
	seen := map[scenarios.Warning]bool{}
	for i := range z.Candidates {
		for _, w := range z.Candidates[i].File.Cautions() {
			if !seen[w] {
				seen[w] = true
				z.Warnings = append(z.Warnings, w)
			}
		}
	}
}
