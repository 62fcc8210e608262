package main

import (
	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// basisOf lists what the answer to a sizing rests on: what carries a source or a range in the study and in the candidates' lines.
func basisOf(study *scenarios.Study, spec decisions.SizeSpec) reports.Basis {
	var basis reports.Basis
	for _, input := range decisions.SizeInputs(study, spec) {
		a := input.Assumption
		a.Path = input.Name()
		basis = append(basis, a)
	}
	return basis
}
