package scenarios

import (
	"fmt"

	"dwellcast/scenarios/document"
	"dwellcast/stations"
)

// mostTries keeps a try that never succeeds from making a run endless.
const mostTries = 100

// readMiss reads how often an act fails, and what happens then: a share alone, or a map.
func (r *lineReader) readMiss(n *document.Node) stations.Miss {
	always := document.Limit{Max: "99 %", Hint: "an act that always misses makes nothing"}
	if n == nil || n.Kind() == document.Scalar || n.IsAssumption() {
		return stations.Miss{Chance: n.Ratio(&r.p, always)}
	}
	f := n.Map(&r.p)
	chance := f.Require("chance", "2 %")
	miss := stations.Miss{Chance: chance.Ratio(&r.p, always)}
	if factor := r.factor(f.Take("by_setting")); factor != 1 {
		miss.Chance = r.scaledMiss(chance, miss.Chance, factor)
	}
	switch tries := f.Take("tries"); {
	case tries != nil && tries.Raw() == unlimited:
		miss.Tries = stations.Endless
	case tries != nil:
		miss.Tries = tries.Count(&r.p, document.Limit{Min: "1", Hint: "write how many tries in all, or unlimited"},
			document.Limit{Max: fmt.Sprint(mostTries), Hint: "write unlimited to try until it succeeds"})
	}
	if then := f.Take("then"); then != nil {
		g := then.Map(&r.p)
		stop := r.readClearing(g)
		g.Done()
		miss.Stop = &stop
		if miss.Tries == stations.Endless {
			r.p.Add(then, "never comes when tries are unlimited", "write a number of tries, or take then out")
		}
	}
	f.Done()
	return miss
}
