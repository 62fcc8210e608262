package motion

import "fmt"

// Linear theory takes the wave to be small. These are the bounds within which its figures are believed here; they are
// common practice, no source.
const (
	// LargestLinearSlope is the wave height at the wall, as a share of the length, above which the crest is clearly
	// higher than linear theory says.
	LargestLinearSlope = 0.10
	// LargestLinearDepth is the wave height at the wall as a share of the depth.
	LargestLinearDepth = 0.25
	// ShallowDepth is the depth as a share of the length below which a large wave travels as a bore rather than
	// standing.
	ShallowDepth = 0.15
)

// BeyondLinear says in words which limits of linear theory a wave of the given height at the wall (m) exceeds; none:
// the figures may be believed.
func (t Tank) BeyondLinear(wave float64) []string {
	var reasons []string
	if wave > LargestLinearSlope*t.Length {
		reasons = append(reasons, fmt.Sprintf("the wave is more than %.0f %% of the carton's length",
			100*LargestLinearSlope))
	}
	if wave > LargestLinearDepth*t.Depth {
		reasons = append(reasons, fmt.Sprintf("the wave is more than %.0f %% of the depth", 100*LargestLinearDepth))
	}
	if t.Depth < ShallowDepth*t.Length {
		reasons = append(reasons, fmt.Sprintf("depth is less than %.0f %% of the length: shallow liquid moves as a bore", 100*ShallowDepth))
	}
	return reasons
}
