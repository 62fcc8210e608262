package decisions

import (
	"context"

	"dwellcast/scenarios"
)

// demandPath is the one input whose range is in every chance of a sizing already.
const demandPath = "size.demand"

// SizeStudy is Size for the section of a study, and what becomes of the choice at the ends of the ranges in it and its lines.
func SizeStudy(ctx context.Context, lab *scenarios.Lab, s *scenarios.Study, seed uint64, spec SizeSpec) (*Sizing, error) {
	spec = spec.WithDefaults()
	tell, sized := spec.Progress, 0
	ends, _ := endsOf(SizeInputs(s, spec), demandPath)
	later := len(ends) * len(spec.Candidates) * spec.Replications
	if tell != nil {
		spec.Progress = func(done, total int) {
			sized = total
			tell(done, total+later)
		}
	}
	z, err := Size(ctx, lab, seed, spec)
	if err != nil {
		return nil, err
	}
	z.Title = s.Title
	return z, z.FindOverturns(ctx, lab, s, func(done, total int) {
		if tell != nil {
			tell(sized+later*done/total, sized+later)
		}
	})
}

// FindOverturns looks at which candidate would be taken at the ends of the ranges in the study and its lines, every one at the setting at
// which it is sized, over the same shifts. The range of the demand is in the chances already. Told is how many of how many ends are done.
func (z *Sizing) FindOverturns(ctx context.Context, lab *scenarios.Lab, s *scenarios.Study, told func(done, total int)) error {
	spec := z.Spec
	spec.AsSet, spec.Progress = true, nil
	t := &sizeTornado{ctx: ctx, lab: lab, study: s, size: spec, seed: z.Seed, base: z}
	ends, ranged := endsOf(SizeInputs(s, spec), demandPath)
	z.Ranges = Ranges{Inputs: ranged, Replications: spec.Replications}
	for k, e := range ends {
		there, err := t.sized(e.input, e.value)
		if err != nil {
			return err
		}
		if o := z.upset(e, there); o != nil {
			z.Overturns = append(z.Overturns, *o)
		}
		told(k+1, len(ends))
	}
	return nil
}

// upset is how a choice at an end overturns the one made; nil where it is the same.
func (z *Sizing) upset(e end, there *Sizing) *Overturn {
	if there.Best == z.Best {
		return nil
	}
	var o *Overturn
	switch {
	case z.Best < 0:
		o = e.overturn(Reaches)
	case len(there.Candidates[z.Best].Beyond) > 0:
		o = e.overturn(Forbidden)
		o.Why = scenarios.Refusal(there.Candidates[z.Best].File)
	case !there.Candidates[z.Best].Demanded():
		o = e.overturn(Fails)
	default:
		o = e.overturn(Outdone)
	}
	if there.Best >= 0 {
		o.Candidate = there.Candidates[there.Best].Name
	}
	return o
}
