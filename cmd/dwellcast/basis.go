package main

import (
	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/document"
)

// basisOf lists what the answer to a study rests on: what carries a source or a range in the study and in its line.
func basisOf(study *scenarios.Study) reports.Basis {
	return append(reports.Basis(study.Line.Assumptions), study.Document.Assumptions()...)
}

// studyDocument is the text of a study, without its line.
func studyDocument(study *scenarios.Study) string {
	text, err := document.Render(study.Document)
	if err != nil {
		return study.Name
	}
	return text
}
