package decisions

import (
	"context"
	"fmt"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
)

// LineQuestion asks for the good rate of a line, and whether an average shift makes the file's target.
func LineQuestion(ctx context.Context, lab *scenarios.Lab, f *scenarios.File, spec TornadoSpec) (*Question, TornadoSpec) {
	spec = spec.withDefaults()
	f = f.Shiftwise()
	q := &Question{Figure: "good rate", Unit: "cartons/h", Inputs: InputsOf([]string{""}, []*scenarios.File{f}, nil), Warnings: f.Cautions()}
	q.Ask = func(change *Input, value string) (Outcome, error) {
		changed, err := atEnd(f, change, value)
		if err != nil {
			return Outcome{}, err
		}
		shifts, err := extend(ctx, lab, changed, spec.Replications)
		if err != nil {
			return Outcome{}, err
		}
		good := shifts.Good()[:spec.Replications]
		var rates []float64
		for _, x := range good {
			rates = append(rates, x/changed.Line.Shift.Length.Hours())
		}
		out := Outcome{Figure: stats.MeanInterval(rates, spec.Confidence), shifts: rates, Refused: scenarios.Refusal(changed)}
		if f.Target > 0 {
			out.Decision = fmt.Sprintf("an average shift misses the target of %.0f", f.Target)
			if stats.MeanInterval(good, spec.Confidence).Mean >= f.Target {
				out.Decision = fmt.Sprintf("an average shift makes the target of %.0f", f.Target)
			}
		}
		return out, nil
	}
	return q, spec
}

// atEnd is a line with one quantity at an end of its range.
func atEnd(f *scenarios.File, change *Input, value string) (*scenarios.File, error) {
	if change == nil {
		return f, nil
	}
	changed, err := f.With(change.Path + "=" + value)
	if err != nil {
		return nil, err
	}
	return changed.Shiftwise(), nil
}

// CaseQuestion asks which case of a study makes most more than the base, and how much that is.
func CaseQuestion(ctx context.Context, lab *scenarios.Lab, s *scenarios.Study, spec TornadoSpec) (*Question, TornadoSpec, error) {
	spec = spec.withDefaults()
	if len(s.Cases) == 0 {
		return nil, spec, mistake("write cases: or size: in the study", "no cases and no candidates to decide between")
	}
	names, files := []string{"base"}, []*scenarios.File{s.Line.Shiftwise()}
	for _, c := range s.Cases {
		names, files = append(names, c.Name), append(files, c.File.Shiftwise())
	}
	run := func(change *Input, value string) (all [][]float64, refused []string, err error) {
		for k, f := range files {
			if change.belongsTo(k) {
				if f, err = atEnd(f, change, value); err != nil {
					return nil, nil, err
				}
			}
			shifts, err := extend(ctx, lab, f, spec.Replications)
			if err != nil {
				return nil, nil, err
			}
			all, refused = append(all, shifts.Good()[:spec.Replications]), append(refused, scenarios.Refusal(f))
		}
		return all, refused, nil
	}
	base, refused, err := run(nil, "")
	if err != nil {
		return nil, spec, err
	}
	about := max(bestOver(base, refused, spec.Confidence), 1)
	q := &Question{Figure: "difference from the base", About: names[about], Unit: "cartons/shift", Inputs: InputsOf(names, files, nil), Warnings: s.Line.Cautions()}
	q.Ask = func(change *Input, value string) (Outcome, error) {
		all, refused, err := run(change, value)
		if err != nil {
			return Outcome{}, err
		}
		out := Outcome{Figure: stats.PairedInterval(all[about], all[0], spec.Confidence), Decision: "keep the base", Refused: refused[about]}
		for i := range all[0] {
			out.shifts = append(out.shifts, all[about][i]-all[0][i])
		}
		if best := bestOver(all, refused, spec.Confidence); best > 0 {
			out.Decision = "most from " + names[best]
		}
		return out, nil
	}
	return q, spec, nil
}

// bestOver is the case that makes most more than the first, where that shows, of those that break no limit; 0 for none.
func bestOver(all [][]float64, refused []string, confidence float64) int {
	best, most := 0, 0.0
	for k := 1; k < len(all); k++ {
		if d := stats.PairedInterval(all[k], all[0], confidence); refused[k] == "" && d.Low > 0 && d.Mean > most {
			best, most = k, d.Mean
		}
	}
	return best
}
