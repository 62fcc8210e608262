package scenarios

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
	// its maps, or a word in quotes.
	is string
	// without is what holds when the key is left out; "required" where it must be there.
	without string
	// limits is the range, empty where the kind of value says it all.
	limits  string
	meaning string
}

// keyValues says how each kind of value is written.
var keyValues = map[string]string{
	"text":     "a name of up to 40 letters",
	"yes/no":   "yes or no",
	"number":   "a plain number",
	"count":    "24 cartons, or a plain 24",
	"cartons":  "24 cartons",
	"rate":     "1450 cartons/h",
	"time":     "0.95 s, 20 ms, 15 min, 8 h",
	"drawn":    "a time, or a law of times",
	"interval": "900 cartons, 40 min, or a law of either",
	"share":    "0.4 %",
	"length":   "6 in, 152 mm",
	"angle":    "110 deg",
}

// lineKeys is every key of a line file. The reference and the schema for editors are made of it.
var lineKeys = []keyGroup{
	{"line", "The line", "", []lineKey{
		{"title", "text", "the name of the file", "any length", "what the line is, for headings"},
		{"setting", "rate", "the line runs as fast as it can", "above 0, up to 1000000 cartons/h", "the operator's speed setting; the pace period is 3600 s x lanes / setting"},
		{"lanes", "count", "1", "1 to 50", "cartons side by side on a pitch of a conveyor"},
		{"target", "cartons|rate", "none", "above 0", "wanted good cartons per shift, or a rate over the whole shift; the answer is the chance of making it"},
		{"shift", "shift", "8 h without planned stops", "", "the scheduled time"},
		{"run", "run", "shifts are simulated", "", "asks for long-run figures instead of shifts"},
		{"crew", "crew", "there is always one free, and at once", "", "who clears stops and reloads"},
		{"conveyor", "conveyor", "none", "", "the indexing conveyor of every run of stations that are linked by pitches"},
		{"stations", "[station]", "required", "1 to 200", "the stations in flow order"},
	}},
	{"shift", "shift", "A shift begins with an empty line. No station begins a cycle in a planned stop.", []lineKey{
		{"length", "time", "8 h", "above 0, up to 744 h", "scheduled time"},
		{"start_up", "time", "0 s", "within the shift", "planned stop at the start"},
		{"breaks", "[break]", "none", "", "planned stops in between; they may not overlap"},
		{"cleaning", "time", "0 s", "within the shift", "planned stop at the end"},
	}},
	{"break", "shift.breaks", "", []lineKey{
		{"name", "text", "break", "", "what to call it"},
		{"after", "time", "required", "within the shift", "its start, counted from the start of the shift"},
		{"length", "time", "required", "above 0", "how long it lasts"},
	}},
	{"run", "run", "One long run, cut into batches. The length of a shift, which may then have no planned stops, remains the unit of " +
		"figures per shift.", []lineKey{
		{"length", "time", "required", "above 0", "simulated time, warm-up included"},
		{"warm_up", `time|"auto"`, "auto", "shorter than the run", "left out of all figures; auto finds it (MSER-5, White 1997)"},
		{"batches", "count", "20", "2 to 1000", "batches that the intervals rest on"},
	}},
	{"crew", "crew", "First come, first served, for stops and reloads alike.", []lineKey{
		{"attendants", `count|"unlimited"`, "required", "1 to 1000", "how many there are"},
		{"reaction", "drawn", "0 s", "mean up to 8 h", "from being free and called to standing at the station"},
	}},
	{"conveyor", "conveyor", "At the top of the file it is for every run of stations linked by pitches. The first station of such a run may " +
		"have a conveyor of its own instead; so may a station that stands on a conveyor alone.", []lineKey{
		{"pitch", "length", "unknown", "above 0, up to 5 m", "how far an index moves the cartons; for the timing chart"},
		{"revolution", `time|"pace"`, "no master", "10 ms to 10 min", "one turn of the master; pace is the pace period of the setting"},
		{"index", "time|index", "required", "shorter than the revolution, up to 1 min", "the moving part of a cycle"},
		{"release", `"when clear"|"at cam zero"`, "when clear", "", "when the next cycle begins once all are clear: at once (the master turns on " +
			"demand), or at the next zero of a master that never stops"},
		{"run_out", "count", "1", "0 to 10000", "pitches behind the last station, if a buffer follows"},
		{"runs_empty", "yes/no", "no", "", "a conveyor fed from a buffer goes on with an empty pitch when no carton has come"},
	}},
	{"index", "conveyor.index", "An index as a share of the master's revolution.", []lineKey{
		{"from", "angle", "required", "0 deg to 360 deg", "where the index begins"},
		{"to", "angle", "required", "beyond from", "where it ends"},
		{"law", "text", "unknown", "a motion law", "how it moves, such as modified sine; for the timing chart"},
	}},
	{"station", "stations", "Keys that name a kind belong to stations of that kind only.", []lineKey{
		{"name", "text", "required", "no two alike", "what to call it"},
		{"kind", `"erect"|"fill"|"seal"|"offload"|"machine"`, "required", "", "what it does; offload must be the last, machine is anything else"},
		{"after", "after", "required, but for the first", "", "what links it to the station before; the first never lacks material"},
		{"conveyor", "conveyor", "the one at the top of the file", "", "the conveyor that begins at this station"},
		{"units", "count", "1", "1 to 100", "identical machines side by side; on a conveyor for offload only"},
		{"bottom_seal", "drawn", "required, or cycle", "mean 0 s, or 1 ms to 10 min", "erect: time from the stand of the conveyor to clear"},
		{"turns", "count", "3 on a conveyor", "0 to 20", "erect: cycles from the pick to the drop; each turns the arm by 90 degrees if there are three"},
		{"blanks", "material", "never run out", "", "erect: the magazine"},
		{"fill", "drawn", "the rest of the master's revolution", "mean 0 s, or 1 ms to 10 min", "fill: time from the stand of the conveyor to clear. " +
			"When left out, nozzle and piston ride on the master, on an empty pitch too"},
		{"lag", "drawn", "0 s", "mean up to 10 s", "seal: from the stand of the conveyor until the photo-eye has seen the carton"},
		{"close", "drawn", "required for seal", "mean 0 s, or 1 ms to 1 min", "seal: the jaws close"},
		{"dwell", "drawn", "required for seal", "mean 1 ms to 1 min", "seal: the jaws stay closed"},
		{"open", "drawn", "required for seal", "mean 0 s, or 1 ms to 1 min", "seal: the jaws open"},
		{"cycle", "drawn", "required for offload; for machine, or steps", "mean 0 s, or 1 ms to 1 h (machine: 24 h)", "offload, machine: time per carton, or per pitch on a conveyor. In place of " +
			"bottom_seal or fill it is for erect and fill too"},
		{"steps", "[step]", "cycle", "", "machine: the cycle in parts"},
		{"away", "time", "the whole cycle", "up to the cycle", "offload, on a conveyor: when the gripper no longer holds up the conveyor"},
		{"acts_empty", "yes/no", "no", "", "on a conveyor: it moves on an empty pitch too"},
		{"miss", "share|miss", "0 %", "0 % to 99 %", "chance that an act fails: no carton is erected, or the carton is not good; an offload loses it"},
		{"reject", "share|chance", "0 %", "0 % to 100 %", "chance that an act leaves a carton that is not good"},
		{"ejects", "yes/no", "no", "", "cartons that are not good leave the line here"},
		{"stand_limit", "time", "for ever", "above 0, up to 24 h", "a carton that stands in the station for longer is scrapped"},
		{"stops", "[stop]", "none", "", "what makes it stand until it is cleared"},
		{"materials", "[material]", "none", "", "what runs down by one for each carton and is reloaded"},
		{"pallet", "pallet", "never full", "", "offload, machine: what the cartons go onto"},
	}},
	{"after", "after", "Give pitches or a buffer.", []lineKey{
		{"pitches", "count", "", "1 to 10000", "it stands so many pitches on, on the same conveyor"},
		{"buffer", `count|"unlimited"`, "", "0 to 1000000", "an accumulating conveyor with so many places; 0 hands over directly"},
		{"transit", "time", "0 s", "up to 24 h", "time through an empty buffer"},
	}},
	{"step", "steps", "", []lineKey{
		{"name", "text", "required", "no two alike", "what to call it"},
		{"takes", "drawn", "required", "mean 0 s, or 1 ms to 24 h", "how long it takes"},
	}},
	{"miss", "miss", "A share alone is a chance with one try.", []lineKey{
		{"chance", "share", "required", "0 % to 99 %", "of a try to fail"},
		{"tries", `count|"unlimited"`, "1", "1 to 100", "tries in all; each takes the time of an act"},
		{"then", "then", "the act is missed", "", "the stop that follows when all tries fail; it is cleared, and the carton is good"},
		{"by_setting", "[row]", "the same at any setting", "", "factors of the chance"},
	}},
	{"chance", "reject", "", []lineKey{
		{"chance", "share", "required", "0 % to 100 %", "of a carton to be not good"},
		{"by_setting", "[row]", "the same at any setting", "", "factors of the chance"},
	}},
	{"then", "miss.then", "", []lineKey{
		{"cause", "text", "required", "", "what to call it"},
		{"clear", "drawn", "required", "mean up to 24 h", "time to clear, without the reaction of the crew"},
		{"scrap", "count", "0", "0 to 1000", "cartons lost: those in the station, then those behind"},
		{"attendant", "yes/no", "yes", "", "no for a stop that clears by itself"},
	}},
	{"stop", "stops", "Give every or chance. A quantity alone is an average: the stop comes by chance, as likely at any time. A law says how the " +
		"intervals are spread: {constant: 900 cartons} comes with every 900th.", []lineKey{
		{"cause", "text", "required", "no two alike", "what to call it"},
		{"every", "interval", "required, or chance", "a mean of 1 carton, or 0.1 s, or more", "how far apart stops are, in cartons handled or in time"},
		{"chance", "share", "every", "0 % to 100 %", "of a carton to bring the stop, in place of every"},
		{"clock", `"running"|"calendar"`, "running", "", "what a time counts: time in which the station works, or all time from one clearing to the next stop"},
		{"clear", "drawn", "required", "mean up to 24 h", "time to clear, without the reaction of the crew"},
		{"scrap", "count", "0", "0 to 1000", "cartons lost: those in the station, then those behind"},
		{"attendant", "yes/no", "yes", "", "no for a stop that clears by itself"},
		{"after", `"resume"|"repeat"`, "resume", "", "whether the interrupted act goes on or starts again; repeat is for running time"},
		{"by_setting", "[row]", "the same at any setting", "", "factors of the rate: 2 is twice as often"},
	}},
	{"row", "by_setting", "A table from setting to factor. Between its rows the factor lies on a straight line; beyond its ends it is that of the " +
		"nearest row. It needs a setting.", []lineKey{
		{"at", "rate", "required", "rising", "a setting"},
		{"factor", "number", "required", "0 to 1000", "the factor there"},
	}},
	{"material", "blanks, materials", "", []lineKey{
		{"name", "text", "required in materials", "no two alike", "what to call it; blanks have their name"},
		{"holds", "count", "required", "1 or more", "the full amount, with which a shift begins"},
		{"low", "count", "0", "below holds", "the amount at which a reload is called for"},
		{"reload", "count", "required", "1 or more", "what a reload brings; no more than fits"},
		{"takes", "drawn", "required", "mean up to 24 h", "time to reload, without the reaction of the crew; the station works on until it is out"},
		{"attendant", "yes/no", "yes", "", "no for a reload that comes by itself"},
	}},
	{"pallet", "pallet", "", []lineKey{
		{"every", "count", "required", "1 to 100000", "cartons on a pallet"},
		{"takes", "drawn", "required", "mean up to 24 h", "time to change it"},
		{"by", `"machine"|"attendant"`, "machine", "", "who changes it"},
		{"places", "count", "1", "1 to 100", "pallets side by side; with two, one is filled while the other is changed"},
	}},
}

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
