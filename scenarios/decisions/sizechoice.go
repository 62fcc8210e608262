package decisions

import "dwellcast/sim/stats"

// ByWorth says that candidates are ranked by their annual worth: every carton can be sold, and what one brings is known.
// Otherwise they are ranked by their annual cost, since whoever makes the demand sells as much.
func (z *Sizing) ByWorth() bool {
	for i := range z.Candidates {
		if !z.Candidates[i].Sells {
			return false
		}
	}
	return z.Spec.SellsAll
}

// price is what a candidate is ranked by, the least first.
func (z *Sizing) price(i int) float64 {
	if z.ByWorth() {
		return -z.Candidates[i].AnnualWorth.Mean
	}
	return z.Candidates[i].AnnualCost.Mean
}

// choose finds the cheapest candidate that is sure to make the demand as often as wanted, the next one, and the best in reach.
func (z *Sizing) choose() {
	z.Best, z.Next, z.Reachable, z.Undecided = -1, -1, 0, -1
	for i := range z.Candidates {
		if z.recommendable(i) && (z.Best < 0 || z.price(i) < z.price(z.Best)) {
			z.Best = i
		}
		if z.bestChance(i) > z.bestChance(z.Reachable) || z.bestChance(i) == z.bestChance(z.Reachable) && z.mostOutput(i) > z.mostOutput(z.Reachable) {
			z.Reachable = i
		}
	}
	for i := range z.Candidates {
		if i != z.Best && z.recommendable(i) && (z.Next < 0 || z.price(i) < z.price(z.Next)) {
			z.Next = i
		}
		if z.open(i) && (z.Best < 0 || z.price(i) < z.price(z.Best)) && (z.Undecided < 0 || z.price(i) < z.price(z.Undecided)) {
			z.Undecided = i
		}
	}
}

// recommendable says that a candidate makes the demand as surely as wanted, within the limits of its line.
func (z *Sizing) recommendable(i int) bool {
	c := &z.Candidates[i]
	return c.Demanded() && len(c.Beyond) == 0
}

// open says that the shifts run leave it open whether a candidate makes the demand, at its own setting or another.
func (z *Sizing) open(i int) bool {
	c := &z.Candidates[i]
	return !c.Demanded() && (c.Verdict == Open && len(c.Beyond) == 0 || c.Needed != nil && c.Needed.Open)
}

// bestChance is the best chance of a candidate at any setting looked at.
func (z *Sizing) bestChance(i int) float64 { return z.reachOf(i).Chance.Mean }

func (z *Sizing) mostOutput(i int) float64 { return z.reachOf(i).Year.Mean }

// Reach is what can be done for the demand at the most.
type Reach struct {
	Of *Sized
	// Setting in cartons/h, 0 for a line without one.
	Setting      float64
	Chance, Year stats.Interval
}

// Reach is the best that any candidate can do, at any setting looked at.
func (z *Sizing) Reach() Reach { return z.reachOf(z.Reachable) }

func (z *Sizing) reachOf(i int) Reach {
	c := &z.Candidates[i]
	r := Reach{c, c.Setting, c.Chance, c.Year}
	if n := c.Needed; n != nil && (n.Chance.Mean > r.Chance.Mean || n.Chance.Mean == r.Chance.Mean && n.Year.Mean > r.Year.Mean) {
		r.Setting, r.Chance, r.Year = n.Setting, n.Chance, n.Year
	}
	return r
}

// findDominated marks every candidate to which another is superior: that makes no less and costs no more, and is better in one of
// the two. Outputs between which no difference shows, on the same shifts, count as equal.
func (z *Sizing) findDominated() {
	for i := range z.Candidates {
		for j := range z.Candidates {
			if i != j && z.superior(j, i) {
				z.Candidates[i].DominatedBy = z.Candidates[j].Name
				break
			}
		}
	}
}

func (z *Sizing) superior(a, b int) bool {
	x, y := &z.Candidates[a], &z.Candidates[b]
	cheaper, dearer := x.AnnualCost.Mean < y.AnnualCost.Mean, x.AnnualCost.Mean > y.AnnualCost.Mean
	more := difference(x.years, y.years, z.Spec.Confidence)
	return !dearer && more >= 0 && (cheaper || more > 0)
}

// difference is the sign of a paired difference, 0 where none shows.
func difference(a, b []float64, confidence float64) int {
	d := stats.PairedInterval(a, b, confidence)
	switch {
	case !d.Assessed():
		return 0
	case d.Low > 0:
		return 1
	case d.High < 0:
		return -1
	}
	return 0
}
