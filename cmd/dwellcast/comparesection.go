package main

import (
	"fmt"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/document"
)

// compareSection reads the section compare: of a study.
func compareSection(spec *decisions.CompareSpec) scenarios.SectionReader {
	return func(n *document.Node, _ *scenarios.Study, p *document.Problems) {
		f := n.Map(p)
		share := []document.Limit{{Above: "0 %"}, {Max: "50 %"}}
		most := document.Limit{Max: fmt.Sprint(scenarios.MaxReplications)}
		least := document.Limit{Min: "2"}
		spec.Smallest = f.Take("smallest").Ratio(p, share...)
		spec.Precision = f.Take("precision").Ratio(p, share...)
		if n := f.Take("shifts"); n != nil {
			spec.Replications = n.Count(p, least, most)
		}
		if n := f.Take("ceiling"); n != nil {
			spec.Ceiling = n.Count(p, least, most)
			if spec.Ceiling > 0 && spec.Replications > spec.Ceiling {
				p.Add(n, "is below the shifts", "give fewer shifts, or a higher ceiling")
			}
		}
		f.Done()
	}
}
