package stats

import (
	"fmt"
	"math"
	"slices"
)

// KNConstants are eta and h^2 of the procedure KN with c = 1 (Kim & Nelson
// 2001) for k >= 2 systems, n0 >= 2 first-stage replications and error
// probability alpha:
// eta = ((2 alpha/(k-1))^(-2/(n0-1)) - 1)/2 and h^2 = 2 eta (n0-1).
func KNConstants(k, n0 int, alpha float64) (eta, h2 float64) {
	eta = (math.Pow(2*alpha/float64(k-1), -2/float64(n0-1)) - 1) / 2
	return eta, 2 * eta * float64(n0-1)
}

// KN is the fully sequential selection procedure of Kim & Nelson (2001),
// with c = 1, as a thing to be fed: after n0 replications of every system it
// drops systems that are clearly beaten, one replication at a time, until
// one is left. If the best mean is at least the indifference zone above all
// others, it is selected with probability at least 1 - alpha, for normal
// outputs independent between replications; systems may share random
// numbers. Larger outputs are better.
type KN struct {
	n0       int
	delta    float64
	h2       float64
	alive    []int       // surviving systems, ascending
	n        int         // replications fed
	first    [][]float64 // first-stage outputs by system
	sums     []float64   // output totals by system
	variance [][]float64 // of paired differences, from the first stage
	last     int         // replications after which the best mean is taken
	selected int         // -1 while open
}

// NewKN starts a selection among k >= 1 systems with n0 >= 2 first-stage
// replications, error probability alpha (0 < alpha < 1 - 1/k) and an
// indifference zone delta > 0 in the unit of the outputs.
func NewKN(k, n0 int, alpha, delta float64) (*KN, error) {
	if err := checkSelection(k, n0, 1-alpha); err != nil {
		return nil, err
	}
	if !(delta > 0) || !isFinite(delta) {
		return nil, fmt.Errorf("indifference zone %g is not positive", delta)
	}
	p := &KN{n0: n0, delta: delta, selected: -1, first: make([][]float64, k), sums: make([]float64, k)}
	for i := range k {
		p.alive = append(p.alive, i)
	}
	if k == 1 {
		p.selected = 0
		return p, nil
	}
	_, p.h2 = KNConstants(k, n0, alpha)
	return p, nil
}

// Surviving lists the systems still in the running, ascending. The slice is
// valid until the next Add and must not be changed.
func (p *KN) Surviving() []int { return p.alive }

// Selected is the chosen system, once there is one.
func (p *KN) Selected() (system int, ok bool) { return p.selected, p.selected >= 0 }

// Replications is the number fed so far to each surviving system.
func (p *KN) Replications() int { return p.n }

// Add feeds one replication: the outputs of the surviving systems, in the
// order of Surviving. It returns the systems that this eliminates. When it
// ends the procedure with several survivors, the best mean among them (of
// equal ones the first) is selected and the others are not called
// eliminated.
func (p *KN) Add(outputs []float64) (eliminated []int, err error) {
	if p.selected >= 0 {
		return nil, fmt.Errorf("system %d is already selected", p.selected)
	}
	if len(outputs) != len(p.alive) {
		return nil, fmt.Errorf("%d outputs for %d surviving systems", len(outputs), len(p.alive))
	}
	for j, y := range outputs {
		if !isFinite(y) {
			return nil, fmt.Errorf("output %g of system %d is not a number", y, p.alive[j])
		}
	}
	p.record(outputs)
	if p.n < p.n0 {
		return nil, nil
	}
	if p.n == p.n0 {
		p.endFirstStage()
	}
	if p.n > p.last {
		p.selected = p.bestMean()
		return nil, nil
	}
	return p.screen(), nil
}

func (p *KN) record(outputs []float64) {
	for j, i := range p.alive {
		p.sums[i] += outputs[j]
		if p.n < p.n0 {
			p.first[i] = append(p.first[i], outputs[j])
		}
	}
	p.n++
}

// endFirstStage sets the variances of the paired differences and the number
// of replications at which the last of the continuation regions closes.
func (p *KN) endFirstStage() {
	p.variance = make([][]float64, len(p.first))
	widest := 0.0
	for i := range p.first {
		p.variance[i] = make([]float64, len(p.first))
		for l := range i {
			m := differences(p.first[i], p.first[l])
			p.variance[i][l], p.variance[l][i] = m.Variance(), m.Variance()
			widest = math.Max(widest, m.Variance())
		}
	}
	p.last = int(math.Min(p.h2*widest/(p.delta*p.delta), math.MaxInt32))
	p.first = nil
}

// screen drops every system whose total lies below another's by more than
// the continuation region allows. Totals stand for means times the number of
// replications.
func (p *KN) screen() (eliminated []int) {
	for _, i := range p.alive {
		if slices.ContainsFunc(p.alive, func(l int) bool { return l != i && p.beats(l, i) }) {
			eliminated = append(eliminated, i)
		}
	}
	p.alive = slices.DeleteFunc(p.alive, func(i int) bool { return slices.Contains(eliminated, i) })
	if len(p.alive) == 1 {
		p.selected = p.alive[0]
	}
	return eliminated
}

// beats reports whether system l puts system i out of the running.
func (p *KN) beats(l, i int) bool {
	region := p.delta / 2 * (p.h2*p.variance[i][l]/(p.delta*p.delta) - float64(p.n))
	return p.sums[i] < p.sums[l]-math.Max(0, region)
}

// bestMean is the surviving system of largest mean, of equal ones the first.
func (p *KN) bestMean() int {
	best := p.alive[0]
	for _, i := range p.alive[1:] {
		if p.sums[i] > p.sums[best] {
			best = i
		}
	}
	return best
}

// checkSelection checks what all selection procedures ask of their
// arguments.
func checkSelection(k, n0 int, pStar float64) error {
	switch {
	case k < 1:
		return fmt.Errorf("%d systems to select from", k)
	case n0 < 2:
		return fmt.Errorf("first stage of %d replications; at least 2 are needed", n0)
	case !(pStar > 1/float64(k) && pStar < 1) && k > 1, k == 1 && !isProbability(pStar):
		return fmt.Errorf("probability of correct selection %g is not between 1/%d and 1", pStar, k)
	}
	return nil
}
