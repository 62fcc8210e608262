package decisions

import (
	"cmp"
	"slices"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// faster is how much more speed is looked at beyond the recommendation.
const faster = 1.05

// neighbours compares the recommended setting with one five percent above it, and with today's.
func (p *pacing) neighbours(a *Pace) error {
	chosen := a.Rows[a.Recommended].Setting
	next, err := p.compareSettings(chosen, tenth(chosen*faster))
	if err != nil {
		return err
	}
	a.Next = next
	if a.Today != chosen {
		a.Now, err = p.compareSettings(a.Today, chosen)
	}
	return err
}

// compareSettings compares two settings over the same shifts.
func (p *pacing) compareSettings(from, to float64) (*Faster, error) {
	before, err := p.shiftsAt(from)
	if err != nil {
		return nil, err
	}
	after, err := p.shiftsAt(to)
	if err != nil {
		return nil, err
	}
	n := min(before.Done(), after.Done())
	there, err := atSetting(p.file, to)
	if err != nil {
		return nil, err
	}
	return &Faster{
		Refused: scenarios.Refusal(there),
		From:    p.row(from, before), To: p.row(to, after),
		Gain:  stats.PairedInterval(after.Good()[:n], before.Good()[:n], p.spec.Confidence),
		Grown: grown(before.Forecast(), after.Forecast()),
	}, nil
}

func (p *pacing) shiftsAt(setting float64) (*scenarios.Shifts, error) {
	f, err := atSetting(p.file, setting)
	if err != nil {
		return nil, err
	}
	return extend(p.ctx, p.lab, f, p.spec.Replications)
}

// grown lists the losses that grow by half a carton or more.
func grown(before, after *scenarios.Forecast) []LossChange {
	const least, most = 0.5, 5
	was := map[[2]string]float64{}
	for _, loss := range before.Losses {
		was[[2]string{loss.Where, loss.Cause}] = loss.Cartons.Mean
	}
	var list []LossChange
	for _, loss := range after.Losses {
		b := was[[2]string{loss.Where, loss.Cause}]
		if loss.Kind != stations.PlannedStop && loss.Cartons.Mean-b >= least {
			list = append(list, LossChange{loss.Where, loss.Cause, b, loss.Cartons.Mean})
		}
	}
	slices.SortStableFunc(list, func(a, b LossChange) int { return cmp.Compare(b.After-b.Before, a.After-a.Before) })
	return list[:min(len(list), most)]
}
