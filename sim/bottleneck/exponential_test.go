package bottleneck_test

import "math"

// serialLine is a line of exponential stations: the first never lacks a
// part, the last can always discharge, a finished part keeps its station
// until there is room behind it, and moving takes no time.
type serialLine struct {
	means []float64 // mean service times
	slots []int     // places between stations, not counting work places
}

// shares are exact long-run figures of a line.
type shares struct {
	throughput       float64
	blocked, starved []float64
}

// Station status in a state of the Markov chain; a state is the status of
// each station followed by the parts in each buffer.
const (
	starved = iota
	busy
	blocked
)

// solve finds the stationary distribution of the line's Markov chain by
// Gauss-Seidel sweeps over the balance equations.
func (l serialLine) solve() shares {
	n := len(l.means)
	states, inflow, outrate := l.chain()
	p := make([]float64, len(states))
	for i := range p {
		p[i] = 1 / float64(len(p))
	}
	for change := 1.0; change > 1e-13; {
		change = 0
		total := 0.0
		for s := range p {
			sum := 0.0
			for _, in := range inflow[s] {
				sum += p[in.from] * in.rate
			}
			sum /= outrate[s]
			change = math.Max(change, math.Abs(sum-p[s]))
			p[s] = sum
			total += sum
		}
		for s := range p {
			p[s] /= total
		}
	}
	result := shares{blocked: make([]float64, n), starved: make([]float64, n)}
	for s, state := range states {
		for i := range n {
			switch state[i] {
			case blocked:
				result.blocked[i] += p[s]
			case starved:
				result.starved[i] += p[s]
			}
		}
		if state[n-1] == busy {
			result.throughput += p[s] / l.means[n-1]
		}
	}
	return result
}

type transition struct {
	from int
	rate float64
}

// chain lists the states reachable from the empty line, the transitions into
// each and the total rate out of each.
func (l serialLine) chain() (states [][]byte, inflow [][]transition, outrate []float64) {
	n := len(l.means)
	known := map[string]int{}
	visit := func(state []byte) int {
		if s, ok := known[string(state)]; ok {
			return s
		}
		known[string(state)] = len(states)
		states = append(states, state)
		inflow, outrate = append(inflow, nil), append(outrate, 0)
		return len(states) - 1
	}
	empty := make([]byte, 2*n-1)
	l.move(empty)
	visit(empty)
	for s := 0; s < len(states); s++ {
		for i := range n {
			if states[s][i] != busy {
				continue
			}
			next := append([]byte(nil), states[s]...)
			next[i] = blocked
			l.move(next)
			to := visit(next)
			inflow[to] = append(inflow[to], transition{s, 1 / l.means[i]})
			outrate[s] += 1 / l.means[i]
		}
	}
	return states, inflow, outrate
}

// move moves parts on until none can.
func (l serialLine) move(state []byte) {
	n := len(l.means)
	status, buffer := state[:n], state[n:]
	for moved := true; moved; {
		moved = false
		for i := n - 1; i >= 0; i-- {
			switch {
			case status[i] == blocked && i == n-1:
				status[i] = starved
			case status[i] == blocked && int(buffer[i]) < l.slots[i]:
				buffer[i]++
				status[i] = starved
			case status[i] == blocked && status[i+1] == starved && buffer[i] == 0:
				status[i], status[i+1] = starved, busy
			case status[i] == starved && i == 0:
				status[i] = busy
			case status[i] == starved && buffer[i-1] > 0:
				buffer[i-1]--
				status[i] = busy
			default:
				continue
			}
			moved = true
		}
	}
}
