package decisions

import (
	"dwellcast/scenarios"
)

// allowed are the settings at which the line may be run; the others are noted in the answer.
func (p *pacing) allowed(settings []float64, a *Pace) ([]float64, error) {
	var kept []float64
	for _, setting := range settings {
		f, err := atSetting(p.file, setting)
		if err != nil {
			return nil, err
		}
		if refused := scenarios.Refusal(f); refused != "" {
			a.Skipped = append(a.Skipped, SkippedSetting{setting, refused})
			continue
		}
		kept = append(kept, setting)
	}
	if len(kept) == 0 {
		return nil, mistake("dwellcast timing shows all limits", "the line may be run at none of %d settings: at %.6g cartons/h, %s", len(settings),
			a.Skipped[0].Setting, a.Skipped[0].Refused)
	}
	return kept, nil
}
