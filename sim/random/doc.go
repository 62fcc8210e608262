// Package random draws the chance of a line: times, counts and yes-or-no
// outcomes, from streams that belong to one station and one purpose.
//
// Three rules hold throughout.
//
// Every variate is the inversion of one uniform, so that the n-th draw of a
// purpose uses the n-th uniform of its stream whatever the law. A what-if that
// changes a mean, or a law, or another station, keeps its luck (common random
// numbers).
//
// Every result is the same on every processor. The elementary functions are
// written here with + - * / and square root only, and every product is rounded
// by an explicit conversion, which the Go specification says prevents a fused
// multiply-add. The standard library's Log, Exp and Pow are not used, because
// some processors have their own.
//
// All laws are non-negative. Values are seconds where a time is drawn, and
// plain counts where a count is.
package random
