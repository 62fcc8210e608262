// Package decisions answers what a run alone does not: which of two lines, how fast, how far, and at what price. All of it
// rests on shifts that share their luck, and says when there is no difference to see.
package decisions
