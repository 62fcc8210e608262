package decisions

import (
	"dwellcast/sim/random"
	"dwellcast/stations"
)

// isFixed says that nothing in a line is left to chance, so that one shift is as good as all.
func isFixed(line *stations.Line) bool {
	for i := range line.Stations {
		if !isFixedStation(&line.Stations[i]) {
			return false
		}
	}
	return line.Crew.Reaction.Fixed()
}

func isFixedStation(st *stations.Station) bool {
	for _, part := range st.Parts {
		if !part.Time.Fixed() {
			return false
		}
	}
	for i := range st.Stops {
		if !isFixedStop(&st.Stops[i]) {
			return false
		}
	}
	for i := range st.Materials {
		if !st.Materials[i].Takes.Fixed() {
			return false
		}
	}
	return isCertain(st.Miss.Chance) && isCertain(st.Reject) && (st.Miss.Stop == nil || st.Miss.Stop.Clear.Fixed())
}

func isFixedStop(stop *stations.Stop) bool {
	return isCertain(stop.Chance) && (stop.Acts == nil || isConstant(stop.Acts)) && stop.Every.Fixed() && stop.Clear.Fixed()
}

func isCertain(p float64) bool { return p == 0 || p == 1 }

func isConstant(law random.Distribution) bool { return law.Variance() == 0 }
