package scenarios

import "slices"

// keyGroup is a map of a line file, with the keys that it may have.
type keyGroup struct {
	name  string // as other groups refer to it
	title string
	about string
	keys  []lineKey
}

// lineKey is one key of a line file.
type lineKey struct {
	key string
	// is says what may stand there: words separated by bars, each a name in keyValues or a group, "[group]" for a list of
	// its maps, "{name}" for a map of such under names of the writer's choice, or a word in quotes.
	is string
	// without is what holds when the key is left out; "required" where it must be there.
	without string
	// limits is the range, empty where the kind of value says it all.
	limits  string
	meaning string
}

// lineKeys is every key of a line file, by topic. The reference and the schema for editors are made of it.
var lineKeys = slices.Concat(wholeLineKeys, stationKeys, stopKeys, camKeys, fillingKeys, sealingKeys, robotKeys)

// lawForms shows each law as it is written. A law of cartons is written alike.
var lawForms = []struct{ form, meaning string }{
	{"{constant: 0.95 s}", "always the same"},
	{"{uniform: {from: 0.8 s, to: 1.1 s}}", "any value between two, alike"},
	{"{triangular: {low: 0.8 s, likely: 0.95 s, high: 1.2 s}}", "where only these are known"},
	{"{exponential: 20 s}", "by its mean; also {exponential: {mean: 20 s}}"},
	{"{erlang: {mean: 20 s, stages: 4}}", "a sum of so many exponential stages; cv is 1 / sqrt(stages)"},
	{"{gamma: {mean: 20 s, cv: 0.5}}", "also {gamma: {shape: 4, scale: 5 s}}"},
	{"{weibull: {shape: 1.5, scale: 5 h}}", "wear (shape above 1) or running-in (below); also by mean and cv"},
	{"{lognormal: {mean: 55 s, cv: 0.9}}", "the usual law of clearing times; also {lognormal: {median: 40 s, sigma: 0.8}}"},
	{"{normal: {mean: 2.05 s, sd: 0.1 s}}", "cut off at zero; also by mean and cv"},
	{"{geometric: {mean: 10 s, step: 1 s}}", "whole steps, each the last with the same chance"},
	{"{empirical: [31 s, 45 s, 120 s]}", "one of these; with chances: {empirical: {values: [31 s, 45 s], weights: [3, 1]}}"},
	{"{recorded: [2.1 s, 2.0 s, 2.4 s]}", "these in their order, and over again; for times only"},
}
