package decisions

import (
	"cmp"
	"math"
	"slices"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

// Move is a loss that grew or shrank between base and case.
type Move struct {
	Where, Cause string
	Kind         stations.ReasonKind
	// Cartons is what the move does for good output, in cartons per shift: negative where the loss grew.
	Cartons float64
}

// named is a row of the sheets of two lines: a case may have other stations, so the names of the file join them.
type named struct {
	kind         stations.ReasonKind
	where, cause string
}

// movesOf lists what moved between two loss sheets of n shifts each, the largest first. Sheets are exact, so with the change of
// the ideal the moves sum to the difference.
func movesOf(base, changed *scenarios.Forecast, n int) []Move {
	var moves []Move
	was := map[named]int64{}
	for _, l := range base.Losses {
		was[named{l.Kind, l.Where, l.Cause}] += l.Total
	}
	add := func(l scenarios.Loss, fewer int64) {
		if fewer != 0 {
			moves = append(moves, Move{l.Where, l.Cause, l.Kind, float64(fewer) / float64(n)})
		}
	}
	for _, l := range changed.Losses {
		key := named{l.Kind, l.Where, l.Cause}
		add(l, was[key]-l.Total)
		delete(was, key)
	}
	for _, l := range base.Losses {
		if _, gone := was[named{l.Kind, l.Where, l.Cause}]; gone {
			add(l, l.Total)
		}
	}
	slices.SortStableFunc(moves, func(a, b Move) int { return cmp.Compare(math.Abs(b.Cartons), math.Abs(a.Cartons)) })
	return moves
}
