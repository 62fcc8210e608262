// Package stats is the output analysis of the simulator: intervals, tests,
// warm-up truncation, batch means, numbers of replications, and procedures
// that select the best of several systems with a guarantee.
//
// Two rules hold throughout. Too little data gives no verdict: an interval
// from fewer than two observations is unbounded and reports itself as not
// assessed, and a p value that cannot be computed is NaN. And nothing here
// draws a random number or reads a clock, so the same data give the same
// answer.
package stats
